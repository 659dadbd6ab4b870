import { groupedBy } from '../../../core/lists/lists.ts'
import type { PlanBody } from '../../../core/project/issued-records.ts'
import type { Job } from '../../../core/project/job.ts'
import { presencesOf, sharedWithOthers, type WorkElsewhere } from '../../../core/schedule/job/elsewhere.ts'
import { twoJobsSentence } from '../../../core/schedule/words/two-jobs-words.ts'
import { instantOf } from '../../../core/time/site-moment.ts'

/**
 * A sentence for each person and other job of the book that a plan has at two places at once, from now on.
 *
 * @param now moment on site; what is over by then is left out
 */
export function twoJobsSentences(
  { crew, header }: Job,
  plan: PlanBody['plan'],
  elsewhere: readonly WorkElsewhere[],
  now: string,
): readonly string[] {
  const { timeZone, title, unitSystem } = header
  const shared = sharedWithOthers(crew, presencesOf(plan, timeZone), elsewhere).filter(
    ({ to }) => to > instantOf(now, timeZone),
  )
  const groups = groupedBy(shared, ({ name, jobKey }) => `${jobKey} ${name}`)
  return [...groups.values()].flatMap((stretches) => {
    const [first] = stretches
    if (first === undefined) return []
    const { name, jobTitle } = first
    return [twoJobsSentence({ name, titles: [title, jobTitle], stretches }, timeZone, unitSystem)]
  })
}
