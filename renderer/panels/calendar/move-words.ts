import type { Job } from '../../../core/project/job.ts'
import { tasksIn } from '../../../core/schedule/rules/moved-task.ts'
import type { RuleBreak } from '../../../core/schedule/rules/rule-parts.ts'
import { formatMinutes } from '../../../core/units/duration.ts'

export interface MoveWords {
  readonly job: Job
  readonly titleOf: (taskId: string) => string
  /** `Fri Apr 9, 11:45 am`. */
  readonly momentOf: (instant: number) => string
}

/** What a task would run into where the hand holds it, in sentences, each said once. */
export function moveSentences(
  breaks: readonly RuleBreak[],
  taskId: string,
  words: MoveWords,
): readonly string[] {
  return [...new Set(breaks.map((each) => sentenceOf(each, taskId, words)))]
}

function sentenceOf(each: RuleBreak, taskId: string, { job, titleOf, momentOf }: MoveWords): string {
  const other = titleOf(tasksIn(each).find((id) => id !== taskId) ?? taskId)
  const person = (id: string) => job.crew[id]?.name ?? id
  const room = (id: string) => job.rooms[id]?.name ?? id
  switch (each.rule) {
    case 'crewCapacity':
      return 'Too few people, too many, or somebody who cannot do it.'
    case 'crewCalendar':
      return `${person(each.person)} is not there at ${momentOf(each.at)}.`
    case 'dailyChores':
      return `${person(each.person)} sets up or clears away at ${momentOf(each.at)}.`
    case 'alarmsRestored':
      return `${person(each.person)} sees to the alarms at ${momentOf(each.at)}.`
    case 'onePlaceAtATime':
      return `${person(each.person)} is at “${other}” then.`
    case 'drying':
      return each.to === taskId
        ? `${formatMinutes(each.missing)} too early after “${other}”.`
        : `“${other}” would come ${formatMinutes(each.missing)} too early after it.`
    case 'openTime':
      return each.to === taskId
        ? `${formatMinutes(each.late)} too late after “${other}”.`
        : `“${other}” would come ${formatMinutes(each.late)} too late after it.`
    case 'pooledResource':
      return `${each.resource} is in use for “${other}”.`
    case 'roomCapacity':
      return `${room(each.room)} is too full with “${other}” going on.`
    case 'dustNearWet':
      return each.dusty === taskId
        ? `It raises dust while “${other}” is wet.`
        : `“${other}” raises dust while it is wet.`
    case 'fumesWhileSleeping':
      return `Its fumes are still there at ${momentOf(each.at)}, in the hours of sleep.`
    case 'roomsOutOfUse':
      return `Too many rooms are out of use at ${momentOf(each.at)}.`
    case 'roomBack':
      return `${room(each.room)} is needed back by ${momentOf(each.at)}.`
    case 'wayOut':
      return each.hall === taskId ? `It shuts in who is at “${other}”.` : `“${other}” shuts the way out.`
    case 'hallsLast':
      return each.hall === taskId
        ? `“${other}” behind it is not finished.`
        : `“${other}” on the way out would come before it.`
    case 'held':
      return `Its surface is held until ${momentOf(each.until)}.`
    case 'pinned':
      return 'It is pinned to another start.'
    case 'done':
      return 'It is done: a fact.'
  }
}
