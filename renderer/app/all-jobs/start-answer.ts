import type { Job } from '../../../core/project/job.ts'
import { busyOf } from '../../../core/schedule/job/elsewhere.ts'
import type { JobAtWork } from '../../../core/schedule/jobs/book-people.ts'
import { crewDays, firstStart } from '../../../core/schedule/jobs/first-start.ts'
import { dateWordsWithYear } from '../../../core/time/date-words.ts'

interface StartAskedFor {
  /** Hours of work, of all people together. */
  readonly hours: number
  readonly people: number
  /** Local date. */
  readonly from: string
  /** The job it is asked for: its own accepted plan keeps nobody from it. Null for no job of the book. */
  readonly jobId: string | null
}

interface StartAnswer {
  /** The first day; null where there is none within two years. */
  readonly startsOn: string | null
  readonly sentences: readonly string[]
}

/** When a job could start, in sentences: staying until it is done, and sooner where people may leave for another job in between. */
export function startAnswer(shop: Job, atWork: readonly JobAtWork[], asked: StartAskedFor): StartAnswer {
  const others = atWork.filter(({ jobId }) => jobId !== asked.jobId).flatMap(({ work }) => work)
  const days = crewDays(shop, busyOf(shop.crew, others), asked.from)
  const { people, from } = asked
  const question = { minutes: asked.hours * 60, people, from }
  const staying = firstStart(days, { ...question, mayLeave: false })
  const leaving = firstStart(days, { ...question, mayLeave: true })
  const day = (date: string) => dateWordsWithYear(date, shop.header.unitSystem)
  const who = (names: readonly string[]) => names.toSorted().join(' and ')
  const first =
    staying === null
      ? `Within two years no ${people === 1 ? 'one person is' : `${people} people are`} free for ${asked.hours} hours in a row.`
      : `${day(staying.startsOn)}, done on ${day(staying.finishesOn)}: ${who(staying.names)}, with no other job in between.`
  const second =
    leaving === null || leaving.startsOn === staying?.startsOn
      ? []
      : [
          `With days on other jobs in between: ${day(leaving.startsOn)}, done on ${day(leaving.finishesOn)}: ${who(leaving.names)}.`,
        ]
  return { startsOn: staying?.startsOn ?? leaving?.startsOn ?? null, sentences: [first, ...second] }
}
