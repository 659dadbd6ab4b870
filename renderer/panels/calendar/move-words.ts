import type { Job } from '../../../core/project/job.ts'
import type { Violation } from '../../../core/schedule/judge/violation.ts'
import { formatMinutes } from '../../../core/units/duration.ts'

interface MoveWords {
  readonly job: Job
  readonly titleOf: (taskId: string) => string
  /** `Fri Apr 9, 11:45 am`. */
  readonly momentOf: (instant: number) => string
}

/** What a task would run into where it is dragged to, in sentences, each said once. */
export function moveSentences(
  breaks: readonly Violation[],
  taskId: string,
  words: MoveWords,
): readonly string[] {
  return [...new Set(breaks.map((each) => sentenceOf(each, taskId, words)))]
}

function sentenceOf(each: Violation, taskId: string, { job, titleOf, momentOf }: MoveWords): string {
  const { tasks, minutes = 0 } = each
  const other = titleOf(tasks.find((id) => id !== taskId) ?? taskId)
  const person = each.person === undefined ? 'Somebody' : (job.crew[each.person]?.name ?? each.person)
  const room = each.room === undefined ? 'The room' : (job.rooms[each.room]?.name ?? each.room)
  const at = momentOf(each.at ?? 0)
  const isFirst = tasks[0] === taskId
  switch (each.rule) {
    case 'everyTaskPlanned':
    case 'shape':
      return 'It does not fit into the plan there.'
    case 'crew':
      return 'Too few people, too many, or somebody who cannot do it.'
    case 'leadAndOneMore':
      return `${room} would have more than a lead and one more person.`
    case 'crewCalendar':
      return `${person} is not there at ${at}.`
    case 'dailyChores':
      return `${person} sets up or clears away at ${at}.`
    case 'brokenOff':
      return 'It would be broken off where it may not be.'
    case 'timeSpent':
      return 'It would have too little time.'
    case 'onePlaceAtATime':
      return `${person} is at “${other}” then.`
    case 'minimumWait':
      return isFirst
        ? `“${other}” would come ${formatMinutes(minutes)} too early after it.`
        : `${formatMinutes(minutes)} too early after “${other}”.`
    case 'maximumWait':
      return isFirst
        ? `“${other}” would come ${formatMinutes(minutes)} too late after it.`
        : `${formatMinutes(minutes)} too late after “${other}”.`
    case 'notBefore':
      return `It cannot begin before ${at}.`
    case 'pooledResource':
      return `What it needs is in use for “${other}”.`
    case 'roomCapacity':
      return `${room} is too full with “${other}” going on.`
    case 'dustNearWet':
      return isFirst ? `“${other}” raises dust while it is wet.` : `It raises dust while “${other}” is wet.`
    case 'fumesWhileSleeping':
      return `Its fumes are still there at ${at}, in the hours of sleep.`
    case 'roomsOutOfUse':
      return `Too many rooms are out of use at ${at}.`
    case 'roomBack':
    case 'neededDaily':
      return `${room} is needed back by ${at}.`
    case 'wayOut':
      return isFirst ? `It shuts in who is at “${other}”.` : `“${other}” shuts the way out.`
    case 'hallsLast':
      return isFirst
        ? `“${other}” on the way out would come before it.`
        : `“${other}” behind it is not finished.`
    case 'pinned':
      return 'It is pinned to another start.'
    case 'started':
    case 'done':
      return 'It is done or under way and cannot move.'
  }
}
