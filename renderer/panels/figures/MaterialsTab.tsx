import { useState } from 'react'
import type { Estimate } from '../../../core/price/estimate-types.ts'
import type { MaterialLine } from '../../../core/price/materials.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import {
  classBesideName,
  productClassWords,
  sheenWords,
  stepTitle,
} from '../../../core/specification/trade-words.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatCents } from '../../../core/units/money.ts'
import { formatVolume } from '../../../core/units/volume.ts'
import { placeInSentence, stepPlace } from '../../../core/work-order/surface-words.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { SourceDetails } from '../parts/SourceDetails.tsx'

interface MaterialsProps {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly estimate: Estimate
}

/** What the work takes, and the cans to buy for it. */
export function MaterialsTab(props: MaterialsProps) {
  const { job, estimate } = props
  const [picked, setPicked] = useState<string | null>(null)
  const line = estimate.materials.find((each) => each.key === picked)
  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        <div className="scroll">
          <PickTable
            label="Materials"
            columns={columnsOf(job, estimate)}
            rows={estimate.materials}
            keyOf={(each) => each.key}
            picked={picked}
            onPick={setPicked}
          />
          <h3 className="table-title">Sundries: what is used up besides paint</h3>
          <table className="pick-table">
            <thead>
              <tr>
                <th scope="col">What</th>
                <th scope="col">How it came about</th>
                <th scope="col" className="number">
                  Pieces
                </th>
                <th scope="col" className="number">
                  Cost
                </th>
              </tr>
            </thead>
            <tbody>
              {estimate.sundries.map((sundry) => (
                <tr key={sundry.key}>
                  <td>{sundry.name}</td>
                  <td className="quiet">{sundry.derivation}</td>
                  <td className="number">{sundry.pieces ?? '–'}</td>
                  <td className="number">{formatCents(sundry.priceCents)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </div>
      <aside className="pane pane-side" aria-label="How the amount came about">
        {line === undefined ? (
          <p className="quiet">Pick a material to see how its amount came about and which steps take it.</p>
        ) : (
          <MaterialDetail {...props} line={line} />
        )}
      </aside>
    </div>
  )
}

function columnsOf(job: Job, estimate: Estimate): readonly Column<MaterialLine>[] {
  const system = job.header.unitSystem
  return [
    {
      id: 'name',
      head: 'Product',
      cell: (line) => (
        <>
          {line.productName}
          <div className="quiet">
            {[line.brand, classBesideName(productClassWords[line.productClass], line.productName)]
              .filter((each) => each !== '')
              .join(', ')}
          </div>
        </>
      ),
      foot: 'All materials',
    },
    {
      id: 'colour',
      head: 'Color, sheen',
      cell: (line) => <ColourCell job={job} line={line} />,
      foot: '',
    },
    {
      id: 'needed',
      head: 'The work takes',
      isNumber: true,
      cell: (line) => formatVolume(line.gallons, system),
      foot: '',
    },
    {
      id: 'tins',
      head: 'To buy',
      cell: (line) => line.containers.map((each) => `${each.count} × ${each.name}`).join(', '),
      foot: '',
    },
    {
      id: 'cost',
      head: 'Cost',
      isNumber: true,
      cell: (line) => formatCents(line.priceCents),
      foot: formatCents(estimate.totals.materials),
    },
  ]
}

function ColourCell({ job, line }: { readonly job: Job; readonly line: MaterialLine }) {
  const colour = line.colourId === null ? undefined : job.colours[line.colourId]
  if (colour === undefined) return <span className="quiet">–</span>
  return (
    <span className="colour-name">
      <span className="colour-chip" style={{ background: colour.shown }} />
      {colour.name}
      {colour.code === '' ? '' : `, ${colour.code}`}
      {line.sheen === null ? '' : `, ${sheenWords[line.sheen]}`}
    </span>
  )
}

function MaterialDetail(props: MaterialsProps & { readonly line: MaterialLine }) {
  const { job, takeoff, specification, line } = props
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  return (
    <section className="block">
      <h3>{line.productName}</h3>
      <p>{line.derivation}</p>
      <SourceDetails source={line.source} />
      <table className="sum-table">
        <tbody>
          {line.steps.map((part) => {
            const step = steps.get(part.stepKey)
            if (step === undefined) return null
            return (
              <tr key={part.stepKey}>
                <td>
                  {job.rooms[step.roomId]?.name}: {placeInSentence(stepPlace(job, takeoff, step))}
                  <div className="quiet">{stepTitle(step)}</div>
                </td>
                <td className="number">{formatVolume(part.gallons, job.header.unitSystem)}</td>
              </tr>
            )
          })}
        </tbody>
      </table>
    </section>
  )
}
