import type { Job } from './job.ts'
import { type Problem, problem } from './problem.ts'
import { sameValue } from './same-value.ts'

/** What was given to somebody or agreed with somebody is added and, right after, taken back; it never becomes something else. */
const frozenNames = ['issued', 'dealings'] as const

/** A problem for every frozen record that says something else after an edit than before it. */
export function frozenProblems(before: Job, after: Job): readonly Problem[] {
  return frozenNames.flatMap((name) => {
    if (before[name] === after[name]) return []
    const changed = Object.entries(after[name]).filter(([id, record]) => {
      const was = before[name][id]
      return was !== undefined && was !== record && !sameValue(was, record)
    })
    return changed.map(([id]) =>
      problem(
        'notAllowed',
        'What was given out or agreed stays as it was; write down what is new beside it.',
        [id],
        `${name}.${id}`,
      ),
    )
  })
}
