import { type ReactNode, useMemo, useState } from 'react'
import { Button } from 'react-aria-components'
import { tickedTogether } from '../../../core/progress/pass-states.ts'
import { stepStates } from '../../../core/progress/step-states.ts'
import { type DayPass, dayOnSite, marksAsPlanned } from '../../../core/progress/today.ts'
import type { Job } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { dateWords } from '../../../core/time/date-words.ts'
import { dateOf } from '../../../core/time/site-moment.ts'
import type { JudgedPlan, WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob } from '../../state/app.ts'
import { useSpecification } from '../../state/derived.ts'
import { Empty } from '../parts/Empty.tsx'
import { EntryField } from '../parts/EntryField.tsx'
import { words } from '../parts/entries.ts'
import { lookAtCalendar } from '../parts/next-steps.ts'
import { OneOf } from '../parts/OneOf.tsx'
import { rovingList } from '../parts/roving-list.ts'
import { addMarks } from './marks.ts'
import { OutOfOrder, type OutOfOrderTick } from './OutOfOrder.tsx'
import { TickButton } from './TickButton.tsx'
import { TodayAside } from './TodayAside.tsx'

interface TodayPaneProps {
  /** What was promised, or what is planned now. */
  readonly plan: WorkPlan | null
  /** As it stands with what is ticked. */
  readonly forecast: JudgedPlan | null
  readonly now: string
  readonly nameOf: (stepKey: string) => string
  readonly onPickRoom: (setId: RoomId) => void
}

/** The day on site: what days before left open, then the day's passes, ticked as planned by one press or one by one. */
export function TodayPane({ plan: planNow, forecast, now, nameOf, onPickRoom }: TodayPaneProps) {
  const job = useJob()
  const specification = useSpecification()
  const [held, setHeld] = useState<{ readonly plan: WorkPlan; readonly date: string } | null>(null)
  // A plan that nobody accepted drops what is ticked: the day stays as it stood at its first tick.
  const plan = held?.date === dateOf(now) ? held.plan : planNow
  const [asked, setAsked] = useState<OutOfOrderTick | null>(null)
  const states = useMemo(() => stepStates(job, specification), [job, specification])
  const day = useMemo(
    () => (plan === null ? null : dayOnSite(job, plan, states, dateOf(now))),
    [job, plan, states, now],
  )
  const system = job.header.unitSystem
  if (plan === null) return <Quiet>A plan is being worked out; the day stands here when it is found.</Quiet>
  if (day === null) {
    return (
      <Empty title="Nothing to do from today on" next={lookAtCalendar}>
        <p>Nobody works from today on, and nothing planned before is open. The days stand at Calendar.</p>
      </Empty>
    )
  }
  const all = [...day.left, ...day.passes]
  const isToday = day.date === dateOf(now)

  /** The steps to be ticked are asked about together, so that those before the others in the same press count. */
  function tick(passes: readonly DayPass[], name: string) {
    const marks = marksAsPlanned(passes, now)
    if (marks.length === 0) return
    const take = () => {
      if (plan !== null) setHeld({ plan, date: dateOf(now) })
      addMarks(`Check off ${name}`, marks)
    }
    const why = tickedTogether(
      job,
      specification,
      states,
      marks.map(({ stepKey }) => stepKey),
      now,
    )
    if (why.kind === 'ready' || why.kind === 'settled') take()
    else setAsked({ name, why, tick: take })
  }

  function takeBack({ steps, roomName, name, goesOn }: DayPass) {
    const marked = steps.filter(({ state }) => (goesOn ? state.kind === 'started' : state.kind === 'done'))
    addMarks(
      `Take back the check of ${roomName}: ${name}`,
      marked.map(({ step }) => ({ stepKey: step.key, mark: 'cleared', at: now, crewMemberIds: [] })),
    )
  }

  const groups = [
    { title: 'Left open before', passes: day.left },
    { title: 'Morning', passes: day.passes.filter(({ half }) => half === 'morning') },
    { title: 'Afternoon', passes: day.passes.filter(({ half }) => half === 'afternoon') },
  ].filter(({ passes }) => passes.length > 0)
  const open = all.filter(({ isTicked }) => !isTicked).length
  return (
    <div className="today-pane">
      <section ref={rovingList} className="today-work" aria-label="Today">
        <div className="today-head">
          <h2>
            {isToday ? 'Today' : 'Next on site'}, {dateWords(day.date, system)}
          </h2>
          {open === 0 ? (
            <p className="today-done">✓ All checked off</p>
          ) : (
            <Button className="act-button" onPress={() => tick(all, 'all as planned')}>
              Check off all as planned
            </Button>
          )}
        </div>
        {groups.map(({ title, passes }) => (
          <section key={title}>
            <h3>{title}</h3>
            <ul className="today-list">
              {passes.map((pass) => (
                <PassLine
                  key={pass.key}
                  job={job}
                  pass={pass}
                  onTick={() =>
                    pass.isTicked ? takeBack(pass) : tick([pass], `${pass.roomName}: ${pass.name}`)
                  }
                  onTickDown={() =>
                    tick(all.slice(0, all.indexOf(pass) + 1), `down to ${pass.roomName}: ${pass.name}`)
                  }
                  onPickRoom={() => onPickRoom(pass.roomSetId)}
                  now={now}
                />
              ))}
            </ul>
          </section>
        ))}
      </section>
      <TodayAside job={job} plan={plan} forecast={forecast ?? plan} date={day.date} onPickRoom={onPickRoom} />
      <OutOfOrder asked={asked} system={system} nameOf={nameOf} onAnswer={() => setAsked(null)} />
    </div>
  )
}

function Quiet({ children }: { readonly children: ReactNode }) {
  return <p className="quiet today-quiet">{children}</p>
}

function PassLine(props: {
  readonly job: Job
  readonly pass: DayPass
  readonly now: string
  readonly onTick: () => void
  readonly onTickDown: () => void
  readonly onPickRoom: () => void
}) {
  const { job, pass, now } = props
  const [isDifferent, setDifferent] = useState(false)
  const title = `${pass.roomName}: ${pass.name}`
  return (
    <li data-row className={pass.isTicked ? 'today-line today-ticked' : 'today-line'}>
      <TickButton
        name={title}
        isDone={pass.isTicked}
        mark={pass.isTicked ? '✓' : ''}
        onPress={props.onTick}
      />
      <div className="today-what">
        <Button className="link-button" onPress={props.onPickRoom}>
          {pass.roomName}
        </Button>{' '}
        {pass.name}
        <span className="quiet">
          {' '}
          {pass.crewMemberIds.map((id) => job.crew[id]?.name ?? id).join(', ')}
          {pass.goesOn ? '; goes on another day' : ''}
        </span>
      </div>
      {pass.isTicked ? null : (
        <span className="button-row">
          <Button
            className="plain-button"
            aria-label={`Check off down to here: ${title}`}
            onPress={props.onTickDown}
          >
            Check off down to here
          </Button>
          <Button
            className="plain-button"
            aria-label={`Different: ${title}`}
            aria-expanded={isDifferent}
            onPress={() => setDifferent(!isDifferent)}
          >
            Different
          </Button>
        </span>
      )}
      {isDifferent && !pass.isTicked ? (
        <Different pass={pass} title={title} now={now} onSaid={() => setDifferent(false)} />
      ) : null}
    </li>
  )
}

/** One line, kept with the steps it is said of. */
function Different(props: {
  readonly pass: DayPass
  readonly title: string
  readonly now: string
  readonly onSaid: () => void
}) {
  const { pass, title, now } = props
  const [said, setSaid] = useState<'started' | 'done'>('started')
  function write(note: string) {
    if (note === '') return true
    const asIf = { ...pass, goesOn: said === 'started' }
    const [first, ...others] = marksAsPlanned([asIf], now)
    if (first === undefined) return false
    const isTaken = addMarks(`Say what was different: ${title}`, [{ ...first, at: now, note }, ...others])
    if (isTaken) props.onSaid()
    return isTaken
  }
  return (
    <div className="today-different">
      <OneOf
        label="It is"
        options={[
          { id: 'started', label: 'begun, not done' },
          { id: 'done', label: 'done all the same' },
        ]}
        chosen={said}
        onChoose={setSaid}
      />
      <EntryField
        label="What was different, in one line"
        shown=""
        read={words(400)}
        onCommit={write}
        isFocused
        width="wide"
      />
    </div>
  )
}
