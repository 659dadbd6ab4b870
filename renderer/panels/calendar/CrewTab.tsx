import { useState } from 'react'
import { Button } from 'react-aria-components'
import { type Job, records } from '../../../core/project/job.ts'
import type { CrewMember, Week } from '../../../core/project/shop-records.ts'
import { skills } from '../../../core/project/vocabulary.ts'
import { dateWordsWithYear } from '../../../core/time/date-words.ts'
import { withDaysOff } from '../../../core/time/usual-holidays.ts'
import { formatCents, roundToCents } from '../../../core/units/money.ts'
import { useJob } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { Empty } from '../parts/Empty.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { dateEntry, moneyEntry, words } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { skillWords } from '../parts/words.ts'
import { dropChange, tryChange } from './trial.ts'
import { usualWindow, WeekTable, WindowList } from './WorkingHours.tsx'

const usualWeek: Week = {
  monday: [usualWindow],
  tuesday: [usualWindow],
  wednesday: [usualWindow],
  thursday: [usualWindow],
  friday: [usualWindow],
  saturday: [],
  sunday: [],
}

export function CrewTab({ job, edits = triedEdits }: { readonly job: Job; readonly edits?: CrewEdits }) {
  const crew = records(job.crew)
  const [pickedId, setPickedId] = useState<string | null>(crew[0]?.id ?? null)
  const person = crew.find((each) => each.id === pickedId) ?? crew[0]

  function add() {
    const fresh: CrewMember = {
      id: newId('crew'),
      name: 'New painter',
      skills: ['preparation', 'painting'],
      week: usualWeek,
      breaks: [{ from: '12:00', to: '12:30' }],
      daysOff: [],
      partDays: [],
      wageCents: crew[0]?.wageCents ?? roundToCents(2500),
    }
    edits.put(fresh, null)
    setPickedId(fresh.id)
  }

  return (
    <div className="two-panes crew-panes">
      <div className="pane crew-list">
        <ul>
          {crew.map((each) => (
            <li key={each.id}>
              <Button
                className="plain-button"
                aria-pressed={each.id === person?.id}
                onPress={() => setPickedId(each.id)}
              >
                {each.name}
              </Button>
              <span className="quiet">{each.skills.map((skill) => skillWords[skill]).join(', ')}</span>
            </li>
          ))}
        </ul>
        {person === undefined ? null : (
          <Button className="plain-button" onPress={add}>
            Add a person
          </Button>
        )}
      </div>
      <div className="pane scroll">
        {person === undefined ? (
          <Empty title="Nobody is on the crew yet" next={{ label: 'Add a person', onPress: add }}>
            <p>
              The people who will work here, with their hours and what they can do: the plan is made for them.
            </p>
          </Empty>
        ) : (
          <PersonPaper key={person.id} job={job} person={person} edits={edits} />
        )}
      </div>
    </div>
  )
}

/** What becomes of a change on the crew list; `stored` is null for whoever is not stored yet. */
export interface CrewEdits {
  readonly put: (person: CrewMember, stored: CrewMember | null) => void
  readonly takeOff: (person: CrewMember, stored: CrewMember | null) => void
}

/** Whoever is not stored yet is added, whatever was changed of them since. */
function tryPut(person: CrewMember, stored: CrewMember | null): void {
  tryChange({
    key: `crew/${person.id}`,
    name: stored === null ? `Add ${person.name}` : `Change ${stored.name}’s entry`,
    commands: [{ kind: 'putRecord', collection: 'crew', record: person }],
  })
}

function tryTakeOff(person: CrewMember, stored: CrewMember | null): void {
  if (stored === null) {
    dropChange(`crew/${person.id}`)
    return
  }
  tryChange({
    key: `crew/${person.id}`,
    name: `Take ${stored.name} off the crew`,
    commands: [{ kind: 'removeRecord', collection: 'crew', id: person.id }],
  })
}

/** At the Calendar every change is tried against the plan before it is taken. */
const triedEdits: CrewEdits = { put: tryPut, takeOff: tryTakeOff }

function PersonPaper({
  job,
  person,
  edits,
}: {
  readonly job: Job
  readonly person: CrewMember
  readonly edits: CrewEdits
}) {
  const stored = useJob().crew[person.id] ?? null
  const change = (changes: Partial<CrewMember>) => edits.put({ ...person, ...changes }, stored)
  return (
    <section className="block" aria-label={person.name}>
      <div className="field-grid">
        <EntryField
          label="Name"
          shown={person.name}
          read={words(200, true)}
          onCommit={(name) => change({ name })}
        />
        <EntryField
          label="Wage before burden"
          shown={formatCents(person.wageCents).slice(1)}
          read={moneyEntry}
          unit="$ / h"
          width="short"
          onCommit={(wageCents) => change({ wageCents })}
        />
      </div>
      <fieldset className="people">
        <legend>Can do</legend>
        {skills.map((skill) => (
          <Tick
            key={skill}
            isOn={person.skills.includes(skill)}
            isDisabled={person.skills.length === 1 && person.skills[0] === skill}
            onChange={(isOn) =>
              change({
                skills: isOn ? [...person.skills, skill] : person.skills.filter((each) => each !== skill),
              })
            }
          >
            {skillWords[skill]}
          </Tick>
        ))}
      </fieldset>
      <WeekTable person={person} onChange={(week) => change({ week })} />
      <WindowList
        title="Breaks, every working day"
        windows={person.breaks}
        fresh={{ from: '12:00', to: '12:30' }}
        onChange={(breaks) => change({ breaks })}
      />
      <DaysOff job={job} person={person} onChange={change} />
      <div className="button-row">
        <Button className="plain-button remove" onPress={() => edits.takeOff(person, stored)}>
          Take {person.name} off the crew
        </Button>
      </div>
    </section>
  )
}

function DaysOff(props: {
  readonly job: Job
  readonly person: CrewMember
  readonly onChange: (changes: Partial<CrewMember>) => void
}) {
  const { job, person, onChange } = props
  const { startsOn, unitSystem } = job.header
  const part = (date: string) => ({ date, from: '08:00', to: '12:00' })
  return (
    <div className="day-lists">
      <section>
        <h3>Days off</h3>
        <ul className="dates">
          {person.daysOff.map((date) => (
            <li key={date}>
              {dateWordsWithYear(date, unitSystem)}
              <Button
                className="plain-button remove"
                aria-label={`Remove the day off of ${date}`}
                onPress={() => onChange({ daysOff: person.daysOff.filter((each) => each !== date) })}
              >
                Remove
              </Button>
            </li>
          ))}
        </ul>
        <EntryField
          label="Add a day off"
          kind="date"
          shown={startsOn}
          read={dateEntry}
          onCommit={(date) => onChange({ daysOff: withDaysOff(person.daysOff, [date]) })}
        />
      </section>
      <section>
        <h3>Days with other hours</h3>
        <ul className="dates">
          {person.partDays.map((day, index) => (
            <li key={day.date}>
              {dateWordsWithYear(day.date, unitSystem)}
              <WindowList
                title={dateWordsWithYear(day.date, unitSystem)}
                isBare
                isSingle
                windows={[day]}
                fresh={day}
                onChange={(windows) => {
                  const window = windows[0]
                  const others = person.partDays.filter((_, place) => place !== index)
                  onChange({
                    partDays: window === undefined ? others : [...others, { ...window, date: day.date }],
                  })
                }}
              />
            </li>
          ))}
        </ul>
        <EntryField
          label="Add a day with other hours"
          kind="date"
          shown={startsOn}
          read={dateEntry}
          onCommit={(date) =>
            onChange({ partDays: [...person.partDays.filter((each) => each.date !== date), part(date)] })
          }
        />
      </section>
    </div>
  )
}
