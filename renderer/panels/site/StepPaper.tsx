import { useState } from 'react'
import { Button } from 'react-aria-components'
import { stepMinutes } from '../../../core/price/labour.ts'
import type { StepProgress } from '../../../core/progress/step-states.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import { stepTitle } from '../../../core/specification/trade-words.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { useDraft } from '../../state/drafts.ts'
import { QuietNote } from '../parts/Callout.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { momentEntry, orNothing, wholeNumber, words } from '../parts/entries.ts'
import { SourceDetails } from '../parts/SourceDetails.tsx'
import { Tick } from '../parts/Tick.tsx'
import { addMark } from './marks.ts'

const markWords = {
  started: 'started',
  done: 'done',
  skipped: 'skipped',
  redo: 'asked for again',
  cleared: 'mark taken back',
} as const

type MarkKind = keyof typeof markWords

/** Everything that can be said of one step: who, when, how long, and what became of it. */
export function StepPaper(props: {
  readonly job: Job
  readonly progress: StepProgress
  readonly now: string
  readonly plannedPeople: readonly CrewMemberId[]
}) {
  const { job, progress, now } = props
  const { step, state } = progress
  const [at, setAt] = useState<string | null>(null)
  const [minutes, setMinutes] = useState<number | null>(null)
  const [note, setNote] = useState('')
  const [chosen, setChosen] = useState<readonly CrewMemberId[] | null>(null)
  const typed = [minutes === null ? '' : `${minutes} min`, note].filter((part) => part !== '').join(', ')
  useDraft(typed === '' ? null : { label: stepTitle(step), text: typed, take: () => false })
  const people = chosen ?? props.plannedPeople

  function mark(kind: MarkKind) {
    const isWork = kind === 'started' || kind === 'done'
    const rest = { crewMemberIds: isWork ? people : [], actualMinutes: isWork ? minutes : null, note }
    if (!addMark(step.key, kind, at ?? now, rest)) return
    setMinutes(null)
    setNote('')
  }

  return (
    <section className="block" aria-label={`Step: ${stepTitle(step)}`}>
      <h3>{stepTitle(step)}</h3>
      <DryingTimes progress={progress} system={job.header.unitSystem} />
      <Reasons step={step} />
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
          hint={`planned ${formatMinutes(stepMinutes(job, step))}`}
          width="short"
          unit="min"
          onCommit={setMinutes}
        />
      </div>
      <Who job={job} people={people} onChoose={setChosen} />
      <EntryField
        label="Note, or what is not good"
        shown={note}
        read={words(4000)}
        lines={2}
        width="wide"
        onCommit={setNote}
      />
      <MarkButtons isMarked={state.kind !== 'todo'} onMark={mark} />
      <History job={job} progress={progress} />
    </section>
  )
}

function DryingTimes(props: { readonly progress: StepProgress; readonly system: LengthUnitSystem }) {
  const { step, state } = props.progress
  if (state.kind !== 'done' || step.touchDry <= 0) return null
  return (
    <dl className="side-by-side">
      <div>
        <dt>Dry to the touch</dt>
        <dd>{momentWords(state.touchDryAt, props.system)}</dd>
      </div>
      <div>
        <dt>Next coat from</dt>
        <dd>{momentWords(state.recoatFrom, props.system)}</dd>
      </div>
      <div>
        <dt>Next coat by</dt>
        <dd>{state.recoatBy === null ? 'no limit' : momentWords(state.recoatBy, props.system)}</dd>
      </div>
    </dl>
  )
}

/** Why the step is there, and what to beware of, each with its source. */
function Reasons({ step }: { readonly step: StepProgress['step'] }) {
  return (
    <>
      {step.because.map((because) => (
        <div key={because.ruleId}>
          <p>{because.reason}</p>
          <SourceDetails source={because.source} />
        </div>
      ))}
      {step.cautions.map((caution) => (
        <QuietNote key={caution.id} kind="stop" title="Caution" words={caution.text} source={caution.rule} />
      ))}
    </>
  )
}

function Who(props: {
  readonly job: Job
  readonly people: readonly CrewMemberId[]
  readonly onChoose: (people: readonly CrewMemberId[]) => void
}) {
  const { people, onChoose } = props
  return (
    <fieldset className="people">
      <legend>Who</legend>
      {records(props.job.crew).map((person) => (
        <Tick
          key={person.id}
          isOn={people.includes(person.id)}
          onChange={(isOn) =>
            onChoose(isOn ? [...people, person.id] : people.filter((id) => id !== person.id))
          }
        >
          {person.name}
        </Tick>
      ))}
    </fieldset>
  )
}

function MarkButtons(props: { readonly isMarked: boolean; readonly onMark: (kind: MarkKind) => void }) {
  const { onMark } = props
  return (
    <div className="button-row">
      <Button className="plain-button" onPress={() => onMark('started')}>
        Started
      </Button>
      <Button className="act-button" onPress={() => onMark('done')}>
        Done
      </Button>
      <Button className="plain-button" onPress={() => onMark('redo')}>
        Do again
      </Button>
      <Button className="plain-button" onPress={() => onMark('skipped')}>
        Skip
      </Button>
      {props.isMarked ? (
        <Button className="plain-button" onPress={() => onMark('cleared')}>
          Take the mark back
        </Button>
      ) : null}
    </div>
  )
}

/** What was said of the step before, in the order it was said. */
function History({ job, progress }: { readonly job: Job; readonly progress: StepProgress }) {
  if (progress.history.length === 0) return null
  return (
    <ul className="history">
      {progress.history.map((each) => (
        <li key={each.id}>
          {momentWords(each.at, job.header.unitSystem)}: {markWords[each.mark]}
          {each.actualMinutes === null ? '' : `, ${formatMinutes(each.actualMinutes)}`}
          {each.crewMemberIds.length === 0
            ? ''
            : `, ${each.crewMemberIds.map((id) => job.crew[id]?.name ?? id).join(' and ')}`}
          {each.note === '' ? '' : `. ${each.note}`}
        </li>
      ))}
    </ul>
  )
}
