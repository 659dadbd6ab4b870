import { useState } from 'react'
import { Button } from 'react-aria-components'
import { stepMinutes } from '../../../core/price/labour.ts'
import type { StepProgress } from '../../../core/progress/step-states.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import { momentWords } from '../../../core/work-order/date-words.ts'
import { useDraft } from '../../state/drafts.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { momentEntry, orNothing, wholeNumber, words } from '../parts/entries.ts'
import { minutesText } from '../parts/minutes.ts'
import { SourceDetails } from '../parts/SourceDetails.tsx'
import { Tick } from '../parts/Tick.tsx'
import { addMark } from './marks.ts'

const markWords = {
  started: 'started',
  done: 'done',
  skipped: 'left out',
  redo: 'asked for again',
  cleared: 'mark taken back',
} as const

/** Everything that can be said of one step: who, when, how long, and what became of it. */
export function StepPaper(props: {
  readonly job: Job
  readonly progress: StepProgress
  readonly now: string
  readonly plannedPeople: readonly string[]
}) {
  const { job, progress, now } = props
  const { step, state, history } = progress
  const [at, setAt] = useState<string | null>(null)
  const [minutes, setMinutes] = useState<number | null>(null)
  const [note, setNote] = useState('')
  const [chosen, setChosen] = useState<readonly string[] | null>(null)
  const typed = [minutes === null ? '' : `${minutes} min`, note].filter((part) => part !== '').join(', ')
  useDraft(typed === '' ? null : { label: stepTitle(step), text: typed, take: () => false })
  const people = chosen ?? props.plannedPeople
  const system = job.header.unitSystem
  const mark = (kind: 'started' | 'done' | 'skipped' | 'redo' | 'cleared') => {
    const rest = {
      crewMemberIds: kind === 'started' || kind === 'done' ? (people as readonly CrewMemberId[]) : [],
      actualMinutes: kind === 'done' || kind === 'started' ? minutes : null,
      note,
    }
    if (addMark(step.key, kind, at ?? now, rest)) {
      setMinutes(null)
      setNote('')
    }
  }
  return (
    <section className="block" aria-label={`Step: ${stepTitle(step)}`}>
      <h3>{stepTitle(step)}</h3>
      {state.kind === 'done' && step.touchDry > 0 ? (
        <dl className="side-by-side">
          <div>
            <dt>Dry to the touch</dt>
            <dd>{momentWords(state.touchDryAt, system)}</dd>
          </div>
          <div>
            <dt>Next coat from</dt>
            <dd>{momentWords(state.recoatFrom, system)}</dd>
          </div>
          <div>
            <dt>Next coat by</dt>
            <dd>{state.recoatBy === null ? 'no limit' : momentWords(state.recoatBy, system)}</dd>
          </div>
        </dl>
      ) : null}
      {step.because.map((because) => (
        <div key={because.ruleId}>
          <p>{because.reason}</p>
          <SourceDetails source={because.source} />
        </div>
      ))}
      {step.cautions.map((caution) => (
        <div key={caution.id} className="caution-line">
          {caution.text}
          <SourceDetails source={caution.rule} />
        </div>
      ))}
      <div className="field-grid">
        <EntryField
          label="When"
          kind="datetime-local"
          shown={at ?? now}
          read={momentEntry}
          onCommit={setAt}
        />
        <EntryField
          label="Minutes worked, all together"
          shown={minutes === null ? '' : String(minutes)}
          read={orNothing(wholeNumber(0, 100_000))}
          hint={`planned ${minutesText(stepMinutes(job, step))}`}
          width="short"
          unit="min"
          onCommit={setMinutes}
        />
      </div>
      <fieldset className="people">
        <legend>Who</legend>
        {records(job.crew).map((person) => (
          <Tick
            key={person.id}
            isOn={people.includes(person.id)}
            onChange={(isOn) =>
              setChosen(isOn ? [...people, person.id] : people.filter((id) => id !== person.id))
            }
          >
            {person.name}
          </Tick>
        ))}
      </fieldset>
      <EntryField
        label="Note, or what is not good"
        shown={note}
        read={words(4000)}
        lines={2}
        width="wide"
        onCommit={setNote}
      />
      <div className="button-row">
        <Button className="plain-button" onPress={() => mark('started')}>
          Started
        </Button>
        <Button className="act-button" onPress={() => mark('done')}>
          Done
        </Button>
        <Button className="plain-button" onPress={() => mark('redo')}>
          Do again
        </Button>
        <Button className="plain-button" onPress={() => mark('skipped')}>
          Leave out
        </Button>
        {state.kind === 'todo' ? null : (
          <Button className="plain-button" onPress={() => mark('cleared')}>
            Take the mark back
          </Button>
        )}
      </div>
      {history.length === 0 ? null : (
        <ul className="history">
          {history.map((each) => (
            <li key={each.id}>
              {momentWords(each.at, system)}: {markWords[each.mark]}
              {each.actualMinutes === null ? '' : `, ${minutesText(each.actualMinutes)}`}
              {each.crewMemberIds.length === 0
                ? ''
                : `, ${each.crewMemberIds.map((id) => job.crew[id]?.name ?? id).join(' and ')}`}
              {each.note === '' ? '' : `. ${each.note}`}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
