import { Button } from 'react-aria-components'
import type { Pass } from '../../../core/passes/pass-types.ts'
import type { Job } from '../../../core/project/job.ts'
import { records } from '../../../core/project/job.ts'
import type { Pin } from '../../../core/project/progress-records.ts'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import type { Link } from '../../../core/schedule/model.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { momentWords, spanWords } from '../../../core/time/date-words.ts'
import { instantOf } from '../../../core/time/site-moment.ts'
import { formatMinutes } from '../../../core/units/duration.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { momentEntry } from '../parts/entries.ts'
import { Tick } from '../parts/Tick.tsx'
import { type Neighbour, neighboursOf } from './neighbours.ts'
import type { TaskWords } from './task-words.ts'
import { spareWords } from './verdict-words.ts'

interface TaskPaperProps {
  readonly job: Job
  readonly specification: Specification
  readonly found: FoundPlan
  readonly words: TaskWords
  readonly taskId: string
  readonly pin: Pin | null
  readonly momentOf: (instant: number) => string
  readonly onPick: (taskId: string) => void
  readonly onPin: (startsAt: string, people?: readonly CrewMemberId[]) => void
  /** The pass with its lines; undefined where the present steps have no such pass any more. */
  readonly pass: Pass | undefined
  readonly onUnpin: () => void
}

/** One pass: what it is made of, who, when, what holds it back, what it holds back, and the pin. */
export function TaskPaper(props: TaskPaperProps) {
  const { job, found, words, taskId, pin, momentOf: moment } = props
  const task = found.problem.tasks.find((each) => each.id === taskId)
  const planned = found.plan.tasks.find((each) => each.task === taskId)
  if (task === undefined || planned === undefined) return null
  const { unitSystem, timeZone } = job.header
  const start = pin === null ? planned.start : instantOf(pin.startsAt, timeZone)
  const isFact = task.state.kind === 'done' || task.state.kind === 'started'
  return (
    <section className="block" aria-label="The pass picked">
      <h3>{words.title(taskId)}</h3>
      <ul className="task-steps">
        {props.pass?.lines.map((line) => (
          <li key={line.words}>{line.words}</li>
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
        {task.effects.touchDry === null ? null : (
          <div>
            <dt>Dry from</dt>
            <dd>{momentWords(moment(planned.end + task.effects.touchDry), unitSystem)}</dd>
          </div>
        )}
      </dl>
      {isFact ? (
        <p className="quiet">
          {task.state.kind === 'done' ? 'Done, so it does not move.' : 'Under way: it goes on where it is.'}
        </p>
      ) : (
        <div className="pin-row">
          <EntryField
            label={pin === null ? 'Pin its start to' : 'Pinned to start'}
            kind="datetime-local"
            shown={moment(start)}
            read={momentEntry}
            onCommit={props.onPin}
          />
          <div className="button-row">
            <Button className="plain-button" onPress={() => props.onPin(moment(start - 15))}>
              15 min earlier
            </Button>
            <Button className="plain-button" onPress={() => props.onPin(moment(start + 15))}>
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
      {isFact ? null : <GiveTo {...props} start={moment(start)} people={pin?.crewMemberIds ?? []} />}
      <NeighbourLists {...props} />
    </section>
  )
}

/** Who does it by the owner's word; nobody ticked leaves it to the plan. */
function GiveTo(
  props: TaskPaperProps & { readonly start: string; readonly people: readonly CrewMemberId[] },
) {
  const { job, start, people } = props
  return (
    <fieldset className="give-to">
      <legend>Give it to</legend>
      <div className="button-row">
        {records(job.crew).map(({ id, name }) => (
          <Tick
            key={id}
            isOn={people.includes(id)}
            onChange={(isOn) =>
              props.onPin(start, isOn ? [...people, id] : people.filter((each) => each !== id))
            }
          >
            {name}
          </Tick>
        ))}
      </div>
      <p className="quiet">Tried first, at its present start. With nobody checked, the plan chooses.</p>
    </fieldset>
  )
}

function NeighbourLists(props: TaskPaperProps) {
  const { found, words, taskId, onPick } = props
  const { before, after } = neighboursOf(found, taskId)
  const list = (title: string, none: string, items: readonly Neighbour[]) => (
    <section>
      <h4>{title}</h4>
      {items.length === 0 ? <p className="quiet">{none}</p> : null}
      <ul className="neighbours">
        {items.map((item) => (
          <li key={item.id} className={item.spare <= 0 ? 'binding' : undefined}>
            <Button className="link-button" onPress={() => onPick(item.id)}>
              {words.title(item.id)}
            </Button>
            <div className="quiet">{item.link === null ? 'the same person' : whyOf(props, item.link)}</div>
            <div className={item.spare <= 0 ? 'slack slack-none' : 'slack'}>{spareWords(item.spare)}</div>
          </li>
        ))}
      </ul>
    </section>
  )
  return (
    <>
      {list('Waits for', 'Nothing has to come before it.', before)}
      {list('Holds up', 'Nothing waits for it.', after)}
    </>
  )
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
