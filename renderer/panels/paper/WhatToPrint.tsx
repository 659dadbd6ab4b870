import { useState } from 'react'
import { records } from '../../../core/project/job.ts'
import { roomSetsOf } from '../../../core/project/room-sets.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import type { WorkOrder } from '../../../core/work-order/document-types.ts'
import { crewParts, type DocumentPart } from '../../../core/work-order/html.ts'
import { useJob } from '../../state/app.ts'
import { Choice } from '../parts/Choice.tsx'
import { Tick } from '../parts/Tick.tsx'
import { type PaperMemory, toggled } from './choice-memory.ts'

interface WhatToPrintProps {
  readonly order: WorkOrder
  readonly parts: readonly DocumentPart[]
  readonly isPack: boolean
  readonly memory: PaperMemory
  readonly onChange: (changes: Partial<PaperMemory>) => void
  /** The day of the half page; null is the first with work. */
  readonly day: string | null
  readonly onDay: (day: string) => void
}

const partNames: Readonly<Partial<Record<DocumentPart, string>>> = {
  cover: 'Cover',
  weeks: 'Week sheets',
  rooms: 'Room sheets',
  shopping: 'Shopping list',
}

/** Which pages, rooms, people and weeks; only what the chosen document has of them is asked. */
export function WhatToPrint({ order, parts, isPack, memory, onChange, day, onDay }: WhatToPrintProps) {
  const has = (part: DocumentPart) => parts.includes(part)
  return (
    <>
      {isPack ? (
        <Ticks
          label="Which pages"
          all={crewParts}
          chosen={memory.parts}
          nameOf={(part) => partNames[part] ?? part}
          onChange={(chosen) => onChange({ parts: chosen ?? crewParts })}
        />
      ) : null}
      {has('rooms') ? <WhichRooms memory={memory} onChange={onChange} /> : null}
      {has('weeks') ? <WhichWeeks order={order} memory={memory} onChange={onChange} /> : null}
      {has('today') ? (
        <Choice
          label="Day"
          options={order.days.map(({ date }) => ({ id: date, label: dateWords(date, order.unitSystem) }))}
          chosen={day}
          onChoose={onDay}
        />
      ) : null}
      {has('shopping') ? (
        <Choice
          label="Days between trips to the store"
          options={tripChoices}
          chosen={String(memory.daysBetweenTrips)}
          onChoose={(days) => onChange({ daysBetweenTrips: Number(days) })}
        />
      ) : null}
    </>
  )
}

const tripChoices = [
  { id: '3', label: '3 days' },
  { id: '7', label: '1 week' },
  { id: '14', label: '2 weeks' },
  { id: '28', label: '4 weeks' },
] as const

type Changing = Pick<WhatToPrintProps, 'memory' | 'onChange'>

function WhichRooms({ memory, onChange }: Changing) {
  const job = useJob()
  const sets = roomSetsOf(job)
  const names = new Map(sets.map(({ id, name }) => [id, name]))
  return (
    <Ticks
      label="Which rooms"
      all={sets.map(({ id }) => id)}
      chosen={memory.rooms}
      nameOf={(id) => names.get(id) ?? id}
      onChange={(rooms) => onChange({ rooms })}
    />
  )
}

function WhichWeeks({ order, memory, onChange }: Changing & { readonly order: WorkOrder }) {
  const job = useJob()
  const crew = records(job.crew)
  return (
    <>
      <Tick
        isOn={memory.people !== null}
        onChange={(isOn) => onChange({ people: isOn ? crew.map(({ id }) => id) : null })}
      >
        A week sheet for each person, not one for the crew
      </Tick>
      {memory.people === null ? null : (
        <Ticks
          label="Which people"
          all={crew.map(({ id }) => id)}
          chosen={memory.people}
          nameOf={(id) => job.crew[id]?.name ?? id}
          onChange={(people) => onChange({ people: people ?? crew.map(({ id }) => id) })}
        />
      )}
      <Ticks
        label="Which weeks"
        all={order.weeks.map(({ monday }) => monday)}
        chosen={memory.weeks}
        nameOf={(monday) => dateWords(monday, order.unitSystem)}
        onChange={(weeks) => onChange({ weeks })}
      />
    </>
  )
}

/** Some of all there are, folded away while it is all of them. */
function Ticks<Id extends string>(props: {
  readonly label: string
  readonly all: readonly Id[]
  readonly chosen: readonly Id[] | null
  readonly nameOf: (id: Id) => string
  readonly onChange: (chosen: readonly Id[] | null) => void
}) {
  const { label, all, chosen, nameOf, onChange } = props
  const ticked = chosen === null ? all : all.filter((id) => chosen.includes(id))
  const [isOpen, setOpen] = useState(false)
  return (
    <details className="paper-ticks" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {label}: {ticked.length === all.length ? 'all' : `${ticked.length} of ${all.length}`}
      </summary>
      {isOpen ? (
        <fieldset aria-label={label}>
          <Tick isOn={ticked.length === all.length} onChange={(isOn) => onChange(isOn ? null : [])}>
            All
          </Tick>
          {all.map((id) => (
            <Tick
              key={id}
              isOn={ticked.includes(id)}
              onChange={(isOn) => onChange(toggled(all, chosen, id, isOn))}
            >
              {nameOf(id)}
            </Tick>
          ))}
        </fieldset>
      ) : null}
    </details>
  )
}
