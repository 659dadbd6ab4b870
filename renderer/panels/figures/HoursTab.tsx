import { useMemo, useState } from 'react'
import type { Estimate } from '../../../core/price/estimate-types.ts'
import type { StepLabour } from '../../../core/price/labour.ts'
import { basisAmount } from '../../../core/price/rate-names.ts'
import type { Job } from '../../../core/project/job.ts'
import type { Takeoff } from '../../../core/quantities/takeoff-types.ts'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import type { Specification, Step } from '../../../core/specification/types.ts'
import { partWords } from '../../../core/specification/woodwork.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { stepPlace } from '../../../core/work-order/surface-words.ts'
import { type Column, PickTable } from '../parts/PickTable.tsx'
import { skillWords } from '../parts/words.ts'

interface Row {
  readonly key: string
  readonly name: string
  readonly place: string
  readonly minutes: number
  readonly step: Step | null
  readonly labour: StepLabour | null
}

/** Person-hours by room and step; a step picked shows quantity, rate and difficulty. */
export function HoursTab(props: {
  readonly job: Job
  readonly takeoff: Takeoff
  readonly specification: Specification
  readonly estimate: Estimate
}) {
  const { job, specification, estimate } = props
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set())
  const [picked, setPicked] = useState<string | null>(null)
  const rooms = useMemo(() => minutesByRoom(specification, estimate), [specification, estimate])
  const rows = rowsOf(props, rooms, open)
  const row = rows.find((each) => each.key === picked)
  const isWholeJob = (key: string) => wholeJobDerivation(estimate, key) !== undefined
  const ofWholeJob = picked === null ? undefined : wholeJobDerivation(estimate, picked)

  function pick(key: string, row: Row) {
    setPicked(key)
    if (row.step !== null || isWholeJob(key)) return
    const next = new Set(open)
    if (!next.delete(key)) next.add(key)
    setOpen(next)
  }

  return (
    <div className="two-panes">
      <div className="pane pane-wide">
        <div className="scroll">
          <PickTable
            label="Hours"
            columns={columnsOf(estimate)}
            rows={rows}
            keyOf={(each) => each.key}
            picked={picked}
            onPick={pick}
            isHead={(each) => each.step === null}
            isOpen={(each) => (each.step === null && !isWholeJob(each.key) ? open.has(each.key) : null)}
            depthOf={(each) => (each.step === null ? 0 : 1)}
          />
        </div>
      </div>
      <aside className="pane pane-side" aria-label="How the hours came about">
        {row?.labour ? (
          <StepHours row={row} labour={row.labour} system={job.header.unitSystem} />
        ) : ofWholeJob !== undefined && row !== undefined ? (
          <section className="block">
            <h3>{row.name}</h3>
            <p>{ofWholeJob}</p>
          </section>
        ) : (
          <p className="quiet">
            Open a room and pick a step to see its quantity, its rate and what makes it slower. Rates are
            changed on the tab Rates.
          </p>
        )}
        {job.header.occupied ? (
          <p className="quiet">The house is lived in; that counts in the difficulty of the steps.</p>
        ) : null}
      </aside>
    </div>
  )
}

/** How hours came about that belong to no room; undefined for a room or a step. */
function wholeJobDerivation({ labour }: Estimate, key: string): string | undefined {
  if (key === 'chores') return labour.dailyChores.derivation
  return labour.houseWork.find((work) => work.key === key)?.derivation
}

function minutesByRoom(specification: Specification, estimate: Estimate) {
  const steps = new Map(specification.steps.map((step) => [step.key, step]))
  const rooms = new Map<string, { minutes: number; lines: { step: Step; labour: StepLabour }[] }>()
  for (const labour of estimate.labour.steps) {
    const step = steps.get(labour.stepKey)
    if (step === undefined) continue
    const room = rooms.get(labour.roomId) ?? { minutes: 0, lines: [] }
    room.minutes += labour.minutes
    room.lines.push({ step, labour })
    rooms.set(labour.roomId, room)
  }
  return rooms
}

function rowsOf(
  { job, takeoff, estimate }: { job: Job; takeoff: Takeoff; estimate: Estimate },
  rooms: ReturnType<typeof minutesByRoom>,
  open: ReadonlySet<string>,
): readonly Row[] {
  const ofRooms = [...rooms].flatMap(([roomId, room]) => {
    const head: Row = {
      key: roomId,
      name: job.rooms[roomId]?.name ?? roomId,
      place: '',
      minutes: room.minutes,
      step: null,
      labour: null,
    }
    if (!open.has(roomId)) return [head]
    const lines = room.lines.map(({ step, labour }) => ({
      key: step.key,
      name: stepTitle(step),
      place: stepPlace(job, takeoff, step),
      minutes: labour.minutes,
      step,
      labour,
    }))
    return [head, ...lines]
  })
  const { dailyChores, houseWork } = estimate.labour
  const ofHouse = houseWork.map(({ key, label, minutes }) => wholeJobRow(key, label, minutes))
  if (dailyChores.minutes === 0) return [...ofRooms, ...ofHouse]
  return [
    ...ofRooms,
    wholeJobRow('chores', 'Setting up and clearing away each day', dailyChores.minutes),
    ...ofHouse,
  ]
}

function wholeJobRow(key: string, name: string, minutes: number): Row {
  return { key, name, place: '', minutes, step: null, labour: null }
}

function columnsOf(estimate: Estimate): readonly Column<Row>[] {
  return [
    { id: 'name', head: 'Step', cell: (row) => row.name, foot: 'The whole job' },
    { id: 'place', head: 'Where', cell: (row) => row.place, foot: '' },
    {
      id: 'skill',
      head: 'Skill',
      cell: (row) => (row.step === null ? '' : skillWords[row.step.skill]),
      foot: '',
    },
    {
      id: 'difficulty',
      head: 'Difficulty',
      isNumber: true,
      cell: (row) => (row.step === null ? '' : row.step.difficulty.toFixed(2)),
      foot: '',
    },
    {
      id: 'minutes',
      head: 'Person-hours',
      isNumber: true,
      cell: (row) => formatMinutes(row.minutes),
      foot: formatMinutes(estimate.labour.minutes),
    },
  ]
}

function StepHours(props: {
  readonly row: Row
  readonly labour: StepLabour
  readonly system: LengthUnitSystem
}) {
  const { row, labour, system } = props
  return (
    <section className="block">
      <h3>{row.name}</h3>
      <p className="quiet">{row.place}</p>
      <p>{labour.derivation}</p>
      <table className="sum-table">
        <tbody>
          {labour.parts.map((part) => (
            <tr key={part.rate.id}>
              <td>
                {part.rate.basis === 'each'
                  ? 'each time'
                  : `${basisAmount(part.rate.basis, part.quantity, system)} at ${basisAmount(part.rate.basis, part.rate.perHour, system)} an hour`}
                <div className="quiet">{part.rate.source}</div>
              </td>
              <td className="number">{formatMinutes(part.minutes)}</td>
            </tr>
          ))}
          <tr>
            <td>
              times {row.step?.difficulty.toFixed(2)} for height, access and edges
              {labour.times === 1 ? '' : `, on ${labour.times} days`}
            </td>
            <td className="number">{formatMinutes(labour.minutes)}</td>
          </tr>
        </tbody>
      </table>
      {row.step?.surfaceClass === 'trim' ? <HoursByKind labour={labour} system={system} /> : null}
    </section>
  )
}

function HoursByKind(props: { readonly labour: StepLabour; readonly system: LengthUnitSystem }) {
  const { labour, system } = props
  if (labour.woodwork.length === 0) return null
  return (
    <>
      <h4>By kind of woodwork</h4>
      <table className="sum-table">
        <tbody>
          {labour.woodwork.map((part) => (
            <tr key={part.kind}>
              <td>{partWords(part, system)}</td>
              <td className="number">{formatMinutes(part.minutes)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  )
}
