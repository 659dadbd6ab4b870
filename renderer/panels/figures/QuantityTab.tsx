import { useMemo, useState } from 'react'
import type { Job } from '../../../core/project/job.ts'
import { quantityTotals } from '../../../core/quantities/quantity-totals.ts'
import type { QuantityTotals, SurfaceQuantity, Takeoff } from '../../../core/quantities/takeoff-types.ts'
import {
  type Grouping,
  groupings,
  groupingWords,
  type QuantityGroup,
  quantityGroups,
} from '../../../core/specification/quantity-groups.ts'
import { surfaceClassWords } from '../../../core/specification/trade-words.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatArea } from '../../../core/units/area.ts'
import { formatLength, type LengthUnitSystem } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { shortLength } from '../../../core/work-order/room-sheet/sheet-words.ts'
import { placeInSentence, surfaceWords } from '../../../core/work-order/surface-words.ts'
import { optionsOf } from '../parts/Choice.tsx'
import { OneOf } from '../parts/OneOf.tsx'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { Policies, PoliciesSideBySide } from './Policies.tsx'

interface Row {
  readonly key: string
  readonly name: string
  readonly totals: QuantityTotals
  readonly group: QuantityGroup | null
  readonly surface: SurfaceQuantity | null
}

/** How much there is of everything, put together as asked, each figure with how it came about. */
export function QuantityTab(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
}) {
  const { job, takeoff, specification } = props
  const [grouping, setGrouping] = useState<Grouping>('room')
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  const [picked, setPicked] = useState<string | null>(null)
  const [isComparing, setComparing] = useState(false)
  const groups = useMemo(
    () => quantityGroups(job, takeoff, specification, grouping),
    [job, takeoff, specification, grouping],
  )
  const rows = rowsOf(job, groups, open)
  const system = job.header.unitSystem
  const pickedRow = rows.find((row) => row.key === picked) ?? null

  function pick(key: string, row: Row) {
    setPicked(key)
    if (row.group === null) return
    const next = new Set(open)
    if (!next.delete(key)) next.add(key)
    setOpen(next)
  }

  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        {isComparing ? (
          <PoliciesSideBySide job={job} />
        ) : (
          <>
            <OneOf
              label="Group by"
              options={optionsOf(groupings, groupingWords)}
              chosen={grouping}
              onChoose={setGrouping}
            />
            <div className="scroll">
              <PickTable
                label="Quantities"
                columns={columnsOf(system, takeoff.surfaces)}
                rows={rows}
                keyOf={(row) => row.key}
                picked={picked}
                onPick={pick}
                isHead={(row) => row.group !== null}
                isOpen={(row) => (row.group === null ? null : open.has(row.key))}
                depthOf={(row) => (row.group === null ? 1 : 0)}
              />
            </div>
          </>
        )}
      </div>
      <aside className="pane pane-side" aria-label="How the figure came about">
        <Policies job={job} isComparing={isComparing} onCompare={setComparing} />
        {isComparing ? null : pickedRow === null ? (
          <p className="quiet">
            Pick a line to see how its figures came about. A line with a triangle opens into its surfaces.
          </p>
        ) : pickedRow.surface === null ? (
          <GroupSums row={pickedRow} system={system} />
        ) : (
          <Derivation job={job} surface={pickedRow.surface} />
        )}
      </aside>
    </div>
  )
}

function rowsOf(job: Job, groups: readonly QuantityGroup[], open: ReadonlySet<string>): readonly Row[] {
  return groups.flatMap((group) => [
    { key: group.key, name: group.name, totals: group.totals, group, surface: null },
    ...(open.has(group.key)
      ? group.surfaces.map((surface) => ({
          key: `${group.key}/${surface.key}`,
          name: surfaceName(job, surface, group),
          totals: surface,
          group: null,
          surface,
        }))
      : []),
  ])
}

function surfaceName(job: Job, surface: SurfaceQuantity, group: QuantityGroup): string {
  const words = capital(surfaceWords(job, surface.surface))
  const room = job.rooms[surface.roomId]
  return room === undefined || group.key === room.id ? words : `${room.name}: ${placeInSentence(words)}`
}

/** One column of areas, and another only where a rule for measuring or the hours make something else of a surface. */
function columnsOf(system: LengthUnitSystem, surfaces: readonly SurfaceQuantity[]): readonly Column<Row>[] {
  const all = quantityTotals(surfaces)
  const differs = (id: 'policyArea' | 'equivalentArea') =>
    surfaces.some((surface) => surface[id] !== surface.netArea)
  const area = (id: 'netArea' | 'policyArea' | 'equivalentArea', head: string): Column<Row> => ({
    id,
    head,
    isNumber: true,
    cell: (row) => areaOrDash(row.totals[id], system),
    foot: areaOrDash(all[id], system),
  })
  const length = (id: 'length' | 'cuttingIn' | 'masking' | 'glassPerimeter', head: string): Column<Row> => ({
    id,
    head,
    isNumber: true,
    cell: (row) => lengthOrDash(row.totals[id], system),
    foot: lengthOrDash(all[id], system),
  })
  return [
    { id: 'name', head: 'What', cell: (row) => row.name, foot: 'The whole house' },
    area('netArea', 'Net area'),
    ...(differs('policyArea') ? [area('policyArea', 'By the rule')] : []),
    ...(differs('equivalentArea') ? [area('equivalentArea', 'For hours')] : []),
    length('length', 'Run'),
    length('cuttingIn', 'Cutting in'),
    length('masking', 'Masked'),
    length('glassPerimeter', 'Glass cut-in'),
    {
      id: 'count',
      head: 'Pieces',
      isNumber: true,
      cell: (row) => (row.totals.count === 0 ? '–' : row.totals.count),
      foot: all.count,
    },
  ]
}

function areaOrDash(area: number, system: LengthUnitSystem): string {
  return area === 0 ? '–' : formatArea(area, system)
}

function lengthOrDash(length: number, system: LengthUnitSystem): string {
  return length === 0 ? '–' : shortLength(length, system)
}

function GroupSums({ row, system }: { readonly row: Row; readonly system: LengthUnitSystem }) {
  return (
    <section className="block">
      <h3>{row.name}</h3>
      <p className="quiet">
        The sum of {row.group?.surfaces.length} surfaces; open the line and pick one to see its arithmetic.
      </p>
      <SideBySide totals={row.totals} system={system} />
    </section>
  )
}

function Derivation({ job, surface }: { readonly job: Job; readonly surface: SurfaceQuantity }) {
  const system = job.header.unitSystem
  return (
    <section className="block">
      <h3>
        {job.rooms[surface.roomId]?.name}: {surfaceWords(job, surface.surface)}
      </h3>
      <p className="quiet">{surfaceClassWords[surface.surfaceClass]}</p>
      <table className="sum-table">
        <tbody>
          {surface.derivation.map((line, index) => (
            // Lines have no id and never change places; the list is made anew with every takeoff.
            // biome-ignore lint/suspicious/noArrayIndexKey: see above
            <tr key={index}>
              <td>{line.text}</td>
              <td className="number">
                {line.area === null
                  ? ''
                  : signed(line.kind === 'deduction', formatArea(Math.abs(line.area), system))}
                {line.area === null && line.length !== null ? formatLength(line.length, system) : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <SideBySide totals={surface} system={system} />
    </section>
  )
}

function signed(isMinus: boolean, text: string): string {
  return isMinus ? `− ${text}` : text
}

/** The physical area drives paint; the area by the rule is what is written on paper, the equivalent area drives hours. Equal ones are one figure. */
function SideBySide({
  totals: { netArea, policyArea, equivalentArea },
  system,
}: {
  readonly totals: QuantityTotals
  readonly system: LengthUnitSystem
}) {
  const cells = [
    ['Net area, for paint', netArea],
    ...(policyArea === netArea ? [] : [['By the rule', policyArea] as const]),
    ...(equivalentArea === netArea ? [] : [['Equivalent, for hours', equivalentArea] as const]),
  ] as const
  return (
    <dl className="side-by-side">
      {cells.map(([name, area]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{formatArea(area, system)}</dd>
        </div>
      ))}
    </dl>
  )
}
