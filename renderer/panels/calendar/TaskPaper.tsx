import { Button } from 'react-aria-components'
import type { Job } from '../../../core/project/job.ts'
import type { Pin } from '../../../core/project/progress-records.ts'
import type { Link, PlannedTask, ScheduleProblem, Task } from '../../../core/schedule/model.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import { momentWords, spanWords } from '../../../core/work-order/date-words.ts'
import { momentOf } from '../../../core/work-order/site-time.ts'
import { materialWords, stepTitle } from '../../../core/work-order/step-lines.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { momentEntry } from '../parts/entries.ts'
import type { TaskWords } from './task-words.ts'

interface TaskPaperProps {
  readonly job: Job
  readonly specification: Specification
  readonly found: FoundPlan
  readonly words: TaskWords
  readonly taskId: string
  readonly pin: Pin | null
  readonly onPick: (taskId: string) => void
  readonly onPin: (startsAt: string) => void
  readonly onUnpin: () => void
}

/** One task: who, when, what holds it back, what it holds back, and the pin. */
export function TaskPaper(props: TaskPaperProps) {
  const { job, found, words, taskId, pin } = props
  const task = found.problem.tasks.find((each) => each.id === taskId)
  const planned = found.plan.tasks.find((each) => each.task === taskId)
  if (task === undefined || planned === undefined) return null
  const { unitSystem, timeZone } = job.header
  const moment = (instant: number) => momentOf(instant, timeZone)
  const isFact = task.state.kind === 'done' || task.state.kind === 'started'
  return (
    <section className="block" aria-label="The task picked">
      <h3>{words.room(taskId)}</h3>
      <ul className="task-steps">
        {words.steps(taskId).map((step) => (
          <li key={step.key}>
            {stepTitle(step)}
            {materialWords(job, step) === '' ? null : <div className="quiet">{materialWords(job, step)}</div>}
          </li>
        ))}
      </ul>
      <dl className="side-by-side">
        <div>
          <dt>When</dt>
          <dd>{spanWords(moment(planned.start), moment(planned.end), unitSystem)}</dd>
        </div>
        <div>
          <dt>Who</dt>
          <dd>{planned.people.map((id) => job.crew[id]?.name ?? id).join(' and ') || 'nobody needed'}</dd>
        </div>
        <div>
          <dt>Work</dt>
          <dd>{formatMinutes(task.work)}</dd>
        </div>
        {task.effects.wetFor === null ? null : (
          <div>
            <dt>Dry from</dt>
            <dd>{momentWords(moment(planned.end + task.effects.wetFor), unitSystem)}</dd>
          </div>
        )}
      </dl>
      {isFact ? (
        <p className="quiet">
          {task.state.kind === 'done' ? 'Done: a fact, not moved.' : 'Under way: it goes on where it is.'}
        </p>
      ) : (
        <div className="pin-row">
          <EntryField
            label={pin === null ? 'Pin its start to' : 'Pinned to start'}
            kind="datetime-local"
            shown={moment(planned.start)}
            read={momentEntry}
            onCommit={props.onPin}
          />
          <div className="button-row">
            <Button className="plain-button" onPress={() => props.onPin(moment(planned.start - 15))}>
              15 min earlier
            </Button>
            <Button className="plain-button" onPress={() => props.onPin(moment(planned.start + 15))}>
              15 min later
            </Button>
            {pin === null ? (
              <Button className="plain-button" onPress={() => props.onPin(moment(planned.start))}>
                Pin where it is
              </Button>
            ) : (
              <Button className="plain-button" onPress={props.onUnpin}>
                Unpin
              </Button>
            )}
          </div>
        </div>
      )}
      <Neighbours {...props} task={task} planned={planned} />
    </section>
  )
}

interface Neighbour {
  readonly id: string
  readonly why: string
  /** Minutes between the earliest moment it allows and the start; 0 holds the task exactly there. */
  readonly slack: number
}

function Neighbours(props: TaskPaperProps & { readonly task: Task; readonly planned: PlannedTask }) {
  const { found, words, onPick } = props
  const before = waitsFor(props).toSorted((one, other) => one.slack - other.slack)
  const after = holdsUp(props).toSorted((one, other) => one.slack - other.slack)
  const list = (title: string, none: string, items: readonly Neighbour[]) => (
    <section>
      <h4>{title}</h4>
      {items.length === 0 ? <p className="quiet">{none}</p> : null}
      <ul className="neighbours">
        {items.map((item) => (
          <li key={`${item.id}/${item.why}`} className={item.slack <= 0 ? 'binding' : undefined}>
            <Button className="link-button" onPress={() => onPick(item.id)}>
              {words.title(item.id)}
            </Button>
            <div className="quiet">{item.why}</div>
            <div className={item.slack <= 0 ? 'slack slack-none' : 'slack'}>
              {item.slack <= 0 ? 'no slack: it holds' : `${formatMinutes(item.slack)} slack`}
            </div>
          </li>
        ))}
      </ul>
    </section>
  )
  return (
    <>
      {list('Waits for', 'Nothing has to come before it.', before)}
      {list('Holds up', 'Nothing waits for it.', after)}
      {found.problem.promises.length === 0 ? null : (
        <p className="quiet">Promises of the accepted plan are kept where the finish allows it.</p>
      )}
    </>
  )
}

function waitsFor(props: TaskPaperProps & { planned: PlannedTask }): readonly Neighbour[] {
  const { found, taskId, planned } = props
  const byLink = found.problem.links
    .filter((link) => link.to === taskId)
    .flatMap((link) => neighbourOf(props, link, link.from, planned))
  return withPerson(byLink, personNeighbour(found, planned, 'before'))
}

function holdsUp(props: TaskPaperProps & { planned: PlannedTask }): readonly Neighbour[] {
  const { found, taskId, planned } = props
  const byLink = found.problem.links
    .filter((link) => link.from === taskId)
    .flatMap((link) => {
      const later = found.plan.tasks.find((each) => each.task === link.to)
      return later === undefined ? [] : neighbourOf(props, link, link.to, later)
    })
  return withPerson(byLink, personNeighbour(found, planned, 'after'))
}

/** A neighbour by order of work is not named again for its person. */
function withPerson(byLink: readonly Neighbour[], byPerson: readonly Neighbour[]): readonly Neighbour[] {
  const known = new Set(byLink.map((each) => each.id))
  return [...byLink, ...byPerson.filter((each) => !known.has(each.id))]
}

function neighbourOf(
  props: TaskPaperProps,
  link: Link,
  id: string,
  later: PlannedTask,
): readonly Neighbour[] {
  const earlier = props.found.plan.tasks.find((each) => each.task === link.from)
  if (earlier === undefined || link.atLeast === null) return []
  const from = link.measuredFrom === 'end' ? earlier.end : earlier.start
  return [{ id, why: whyOf(props, link), slack: later.start - from - link.atLeast }]
}

/** The reason of the specification where one joins the two tasks, else the bare wait. */
function whyOf({ specification, words }: TaskPaperProps, link: Link): string {
  const earlier = new Set(words.task(link.from)?.stepKeys ?? [])
  const later = new Set(words.task(link.to)?.stepKeys ?? [])
  const orders = specification.order.filter((order) => earlier.has(order.before) && later.has(order.after))
  const longest = orders.toSorted((one, other) => other.minimumWait - one.minimumWait)[0]
  const wait = link.atLeast !== null && link.atLeast > 0 ? `${formatMinutes(link.atLeast)} to dry. ` : ''
  const limit = link.atMost === null ? '' : ` No later than ${formatMinutes(link.atMost)} after.`
  return `${wait}${longest?.reason ?? 'order of work'}${limit}`
}

/** The task the same person comes from or goes to, where it leaves no time between. */
function personNeighbour(
  found: FoundPlan,
  planned: PlannedTask,
  side: 'before' | 'after',
): readonly Neighbour[] {
  return planned.people.flatMap((person) => {
    const own = found.plan.tasks.filter(
      (each) => each.task !== planned.task && each.people.includes(person) && each.segments.length > 0,
    )
    const near =
      side === 'before'
        ? own.filter((each) => each.end <= planned.start).toSorted((one, other) => other.end - one.end)[0]
        : own.filter((each) => each.start >= planned.end).toSorted((one, other) => one.start - other.start)[0]
    if (near === undefined) return []
    const slack = side === 'before' ? planned.start - near.end : near.start - planned.end
    return slack > 60 ? [] : [{ id: near.task, why: 'the same person', slack }]
  })
}

/** Ids of all tasks that stand among the neighbours, for lighting them up in the drawing. */
export function joinedTasks(problem: ScheduleProblem, taskId: string | null): ReadonlySet<string> {
  if (taskId === null) return new Set()
  return new Set(
    problem.links.flatMap((link) => {
      if (link.from === taskId) return [link.to]
      return link.to === taskId ? [link.from] : []
    }),
  )
}
