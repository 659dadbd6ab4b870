import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import { type Moved, movedBetween, type ShownPlan } from './moved-words.ts'

/** Said at once; the rest is there to be unfolded. */
const saidAtOnce = 3

/** What is otherwise in the second of two plans: rooms first, then passes. */
export function MovedList(props: {
  readonly job: Job
  readonly before: ShownPlan
  readonly after: ShownPlan
}) {
  const { job, before, after } = props
  const moved = useMemo(() => movedBetween(job, before, after), [job, before, after])
  const all = [...moved.rooms, ...moved.passes]
  if (all.length === 0) return <p className="quiet">No pass moves to another day or to others.</p>
  return (
    <div className="moved-list">
      <p>{countWords(moved)}</p>
      <Sentences sentences={all.slice(0, saidAtOnce)} />
      {all.length <= saidAtOnce ? null : (
        <details>
          <summary>{all.length - saidAtOnce} more</summary>
          <Sentences sentences={all.slice(saidAtOnce)} />
        </details>
      )}
    </div>
  )
}

function Sentences({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <ul>
      {sentences.map((sentence) => (
        <li key={sentence}>{sentence}.</li>
      ))}
    </ul>
  )
}

function countWords({ rooms, passes }: Moved): string {
  const parts = [
    ...(passes.length === 0
      ? []
      : [
          `${passes.length === 1 ? '1 pass goes' : `${passes.length} passes go`} to another day or to others`,
        ]),
    ...(rooms.length === 0
      ? []
      : [`${rooms.length === 1 ? '1 room is' : `${rooms.length} rooms are`} back on another day`]),
  ]
  return `${parts.join('; ')}:`
}
