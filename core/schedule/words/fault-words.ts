import type { FaultPlace, ProblemFault } from '../validate.ts'
import type { ClashWords } from './clash-words.ts'

type BadNumber = Extract<ProblemFault, { kind: 'badNumber' }>
type UnknownId = Extract<ProblemFault, { kind: 'unknownId' }>
type OffGrid = Extract<ProblemFault, { kind: 'offGrid' }>

/** What in the job keeps a plan from being looked for at all, and what to do about it, in sentences, with the ids they are about. */
export function faultSentence(
  fault: ProblemFault,
  words: ClashWords,
): { readonly sentence: string; readonly ids: readonly string[] } {
  return { sentence: sentenceOf(fault, words), ids: idsOf(fault) }
}

function sentenceOf(fault: ProblemFault, words: ClashWords): string {
  switch (fault.kind) {
    case 'duplicateId':
      return `two ${pluralWords[fault.what]} carry the id ${fault.id}. Give one of them another id.`
    case 'unknownId':
      return unknownSentence(fault, words)
    case 'badNumber':
      return numberSentence(fault, words)
    case 'badWindow': {
      const span = `${timeOfDay(fault.from)} to ${timeOfDay(fault.to)}`
      return `${hoursOf(fault.at, words)} go from ${span}. Let them begin and end within one day, at two different times.`
    }
    case 'offGrid':
      return offGridSentence(fault, words)
    case 'badDate':
      return `${datesOf(fault.at, words)} name the date “${fault.date}”, which is on no calendar. Enter it anew.`
    case 'unknownTimeZone':
      return `“${fault.timeZone}” is no time zone that this machine knows. Give the site one like America/Chicago.`
    case 'emptyLink': {
      const pair = `${words.task(fault.from)} and ${words.task(fault.to)}`
      return `between ${pair} the shortest wait is longer than the longest one. Correct the two times of the product.`
    }
    case 'needsSiteClock':
      return `a calendar without days and nights has neither crew nor rooms, and ${clockUser(fault.usedBy, words)} needs them. Plan by the clock of the site.`
    case 'tooManyPeople':
      return `${fault.count} people are on the crew, and a plan holds ${fault.limit} at most. Take off who will not work here.`
  }
}

const pluralWords = { task: 'steps', person: 'people', room: 'rooms', resource: 'tools' } as const

function unknownSentence({ what, id, at }: UnknownId, words: ClashWords): string {
  const user = placeWords(at, words)
  switch (what) {
    case 'task':
      return `${user} counts on a step that is not there (${id}). Bring the step back or drop the wait.`
    case 'person':
      return `${user} is given to somebody who is not on the crew (${words.person(id)}). Give it to somebody else, or put them back on the crew.`
    case 'room':
      return `${user} counts on a room that is not on the sketch (${words.room(id)}). Draw the room again or leave it out.`
    case 'resource':
      return `${user} needs a tool that is not on the list (${id}). Add it, or do without.`
  }
}

function numberSentence({ what, at, value }: BadNumber, words: ClashWords): string {
  const place = placeWords(at, words)
  switch (what) {
    case 'work':
      return `the work of ${place} comes to ${value} minutes. Correct the quantity or the rate it is worked out from.`
    case 'crew':
      return `${place} is for a crew of ${value}, which does not go together with the fewest and the most people it takes. Correct one of them.`
    case 'effects':
      return `${place} keeps its room wet, closed or smelling for ${value} minutes. Give its product whole minutes, 0 or more.`
    case 'demand':
      return `${place} needs ${value} of a tool. Enter a whole number, 0 or more.`
    case 'pinned':
      return `${place} is pinned to a time before any work can start. Move or drop the pin, or start earlier.`
    case 'started':
      return `${place} is marked as begun at a time that is still to come. Correct the mark.`
    case 'startedPeople':
      return `${place} is under way with nobody at it. Say who works on it.`
    case 'done':
      return `${place} is marked as done before it was begun. Correct one of the two marks.`
    case 'lag':
      return `${place} is ${value} minutes. Give it whole minutes, and let no step come before the end of the one it follows.`
    case 'capacity':
      return `there are ${value} of ${place}. Enter a whole number, 0 or more.`
    case 'gridMinutes':
      return `the calendar counts in steps of ${value} minutes. Give it a whole number, 1 or more.`
    case 'start':
      return `the work starts at no moment of any calendar (${value}). Enter the day it starts on anew.`
    case 'roomsOutOfUse':
      return `${value} is no number of rooms that may be out of use at once. Enter a whole number.`
    case 'dailyChores':
      return `setting up, clearing away or seeing to the alarms takes ${value} minutes a day. Enter whole minutes, 0 for none.`
  }
}

function offGridSentence({ at, what, value, gridMinutes }: OffGrid, words: ClashWords): string {
  const steps = `Plans are made in steps of ${gridMinutes} minutes`
  switch (what) {
    case 'timeOfDay':
      return `${hoursOf(at, words)} begin or end at ${timeOfDay(value)}. ${steps}: move that time.`
    case 'stretch':
      return `setting up, clearing away or seeing to the alarms takes ${value} minutes a day. ${steps}: round it.`
    case 'instant':
      return `${placeWords(at, words)} is pinned between two of them. ${steps}: move the pin.`
  }
}

function placeWords(at: FaultPlace, words: ClashWords): string {
  switch (at.of) {
    case 'task':
      return words.task(at.id)
    case 'person':
      return words.person(at.id)
    case 'room':
      return words.room(at.id)
    case 'resource':
      return at.id
    case 'link':
      return `the wait between ${words.task(at.from)} and ${words.task(at.to)}`
    case 'siteHours':
      return 'the site'
    case 'holidays':
      return 'the list of holidays'
    case 'houseRules':
      return 'a house rule'
    case 'clock':
      return 'the calendar'
  }
}

/** The hours that a window is one of. */
function hoursOf(at: FaultPlace, words: ClashWords): string {
  switch (at.of) {
    case 'person':
      return `the hours or breaks of ${words.person(at.id)}`
    case 'room':
      return `the hours in which ${words.room(at.id)} is needed every day`
    case 'houseRules':
      return 'the hours of sleep without fumes'
    default:
      return 'the site hours'
  }
}

function datesOf(at: FaultPlace, words: ClashWords): string {
  return at.of === 'person' ? `the days off or part days of ${words.person(at.id)}` : 'the holidays'
}

function clockUser(usedBy: 'people' | 'rooms' | FaultPlace, words: ClashWords): string {
  return typeof usedBy === 'string' ? `this job with its ${usedBy}` : placeWords(usedBy, words)
}

function idsOf(fault: ProblemFault): readonly string[] {
  switch (fault.kind) {
    case 'duplicateId':
      return [fault.id]
    case 'emptyLink':
      return [fault.from, fault.to]
    case 'needsSiteClock':
      return typeof fault.usedBy === 'string' ? [] : placeIds(fault.usedBy)
    case 'unknownTimeZone':
    case 'tooManyPeople':
      return []
    default:
      return placeIds(fault.at)
  }
}

function placeIds(at: FaultPlace): readonly string[] {
  if (at.of === 'link') return [at.from, at.to]
  return 'id' in at ? [at.id] : []
}

/** Minutes after midnight as `08:30`; what is no minute of a day stays a number. */
function timeOfDay(minute: number): string {
  if (!Number.isInteger(minute) || minute < 0 || minute > 1440) return `minute ${minute}`
  return `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
}
