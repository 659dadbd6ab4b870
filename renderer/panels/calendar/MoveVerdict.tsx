import { useMemo } from 'react'
import type { Job } from '../../../core/project/job.ts'
import { breaksWhenMoved } from '../../../core/schedule/moved-task.ts'
import { momentWords } from '../../../core/time/date-words.ts'
import { epochMinutes } from '../../../core/time/instant.ts'
import type { FoundPlan } from '../../state/planner-messages.ts'
import { moveSentences } from './move-words.ts'

/** Said at most; the rest is counted. */
const mostSentences = 2

/** While a task is dragged: where it would begin, and what it would run into there. */
export function MoveVerdict(props: {
  readonly job: Job
  readonly found: FoundPlan
  readonly taskId: string
  readonly start: number
  readonly titleOf: (taskId: string) => string
  readonly momentOf: (instant: number) => string
}) {
  const { job, found, taskId, start, titleOf, momentOf } = props
  const { unitSystem } = job.header
  const sentences = useMemo(() => {
    const breaks = breaksWhenMoved(found.problem, found.plan, taskId, epochMinutes(start))
    const words = { job, titleOf, momentOf: (at: number) => momentWords(momentOf(at), unitSystem) }
    return moveSentences(breaks, taskId, words)
  }, [job, found, taskId, start, titleOf, momentOf, unitSystem])
  const more = sentences.length - mostSentences
  return (
    <p className="plan-move" role="status">
      <strong>{momentWords(momentOf(start), unitSystem)}</strong>
      {sentences.length === 0
        ? ': it fits, and nothing else has to move.'
        : `: for this something else has to move. ${sentences.slice(0, mostSentences).join(' ')}`}
      {more > 0 ? ` And ${more} more.` : ''}
    </p>
  )
}
