import type { Issued, IssuedPaper } from '../../../core/project/issued-records.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { fileNameWords } from '../../../core/words/file-name.ts'
import { crewParts, type DocumentPart } from '../../../core/work-order/html.ts'
import { personCalendarName } from '../../../core/work-order/outputs.ts'

type IssuedKind = Issued['kind']

export interface PaperDocument {
  readonly id:
    | 'crew'
    | 'workOrder'
    | 'weeks'
    | 'today'
    | 'shopping'
    | 'family'
    | 'houseColors'
    | 'colorSchemes'
    | 'proposal'
    | 'colorRecord'
  readonly name: string
  readonly holds: string
  readonly parts: readonly DocumentPart[]
  /** Kept as it was when it is printed or saved, under this kind; null is not kept. */
  readonly issuedAs: IssuedPaper['kind'] | null
  /** Says who is where and when: a draft until a plan is accepted. */
  readonly isOfPlan: boolean
  readonly fileName: string
}

export const paperDocuments: readonly PaperDocument[] = [
  {
    id: 'crew',
    name: 'All for the crew',
    holds: 'Cover, week sheets, room sheets and shopping list in one.',
    parts: crewParts,
    issuedAs: 'workOrder',
    isOfPlan: true,
    fileName: 'crew-papers',
  },
  {
    id: 'workOrder',
    name: 'Work order',
    holds: 'Rooms and days as a picture, then one sheet for each room.',
    parts: ['cover', 'rooms'],
    issuedAs: 'workOrder',
    isOfPlan: true,
    fileName: 'work-order',
  },
  {
    id: 'weeks',
    name: 'Week sheets',
    holds: 'A page a week, for the crew or for each person: half days, rooms, passes, cans to bring.',
    parts: ['weeks'],
    issuedAs: 'workOrder',
    isOfPlan: true,
    fileName: 'week-sheets',
  },
  {
    id: 'today',
    name: 'Today',
    holds: 'Half a page for one day.',
    parts: ['today'],
    issuedAs: null,
    isOfPlan: true,
    fileName: 'today',
  },
  {
    id: 'shopping',
    name: 'Shopping list',
    holds: 'Trip by trip: containers, sundries, tools, what to keep; totals by product.',
    parts: ['shopping'],
    issuedAs: 'workOrder',
    isOfPlan: true,
    fileName: 'shopping-list',
  },
  {
    id: 'family',
    name: 'For the household',
    holds:
      'One page for the refrigerator: which room when, when it is ready again, what to take out, what to keep away from; behind it the house from week to week as a picture.',
    parts: ['family'],
    issuedAs: 'forClient',
    isOfPlan: true,
    fileName: 'for-the-household',
  },
  {
    id: 'houseColors',
    name: 'House in its colors',
    holds:
      'For the client: every floor with ceilings, walls and woodwork in the chosen colors, every wall straight on, and their names.',
    parts: ['houseColors'],
    issuedAs: null,
    isOfPlan: false,
    fileName: 'house-in-its-colors',
  },
  {
    id: 'colorSchemes',
    name: 'Color schemes',
    holds:
      'For the client: the house as it is chosen and in each color scheme kept at Finish, two to a page.',
    parts: ['colorSchemes'],
    issuedAs: null,
    isOfPlan: false,
    fileName: 'color-schemes',
  },
  {
    id: 'proposal',
    name: 'Proposal',
    holds:
      'What is done in each room with amounts, price, days, payment, terms and signatures; no wages, rates or margins.',
    parts: ['proposal'],
    issuedAs: 'estimate',
    isOfPlan: false,
    fileName: 'proposal',
  },
  {
    id: 'colorRecord',
    name: 'Color record',
    holds:
      'For the client at the end: what is on every surface, what was kept, care, papers of lead-safe work.',
    parts: ['colorRecord'],
    issuedAs: 'forClient',
    isOfPlan: false,
    fileName: 'color-record',
  },
]

interface PlainFile {
  readonly name: string
  readonly mediaType: string
  readonly holds: string
}

const fixedFiles: readonly PlainFile[] = [
  { name: 'shopping-list.csv', mediaType: 'text/csv', holds: 'the shopping list for a spreadsheet' },
  { name: 'crew-calendar.ics', mediaType: 'text/calendar', holds: 'everybody’s days for a calendar' },
  { name: 'family-calendar.ics', mediaType: 'text/calendar', holds: 'rooms in work, for the household' },
]

const dataFiles: readonly PlainFile[] = [
  { name: 'quantities.json', mediaType: 'application/json', holds: 'quantities with their derivations' },
  { name: 'specification.json', mediaType: 'application/json', holds: 'steps, reasons, order and notices' },
  { name: 'estimate.json', mediaType: 'application/json', holds: 'every line of the price' },
  { name: 'schedule.json', mediaType: 'application/json', holds: 'every task with its people and times' },
  {
    name: 'work-order.json',
    mediaType: 'application/json',
    holds: 'what the cover, the room sheets and the color record show',
  },
]

/** Files for other programs, by the names under which `headlessOutputs` makes them. */
export function plainFiles(job: Job): readonly PlainFile[] {
  const own = records(job.crew).map(({ id, name }) => ({
    name: personCalendarName(id),
    mediaType: 'text/calendar',
    holds: `the days of ${name} alone`,
  }))
  return [...fixedFiles, ...own, ...dataFiles]
}

/**
 * The name a paper is saved under, without its ending: job, kind, and the moment it was given out, so that an estimate of today does not
 * take the place of yesterday's.
 *
 * @param kind of the document, or of a record given out before
 * @param at moment on site, `2027-03-31T08:30`
 */
export function paperFileName(
  title: string,
  kind: PaperDocument['id'] | IssuedKind | 'paper',
  at: string,
): string {
  const paper =
    paperDocuments.find(({ id }) => id === (kind === 'estimate' ? 'proposal' : kind))?.fileName ?? 'paper'
  return [fileNameWords(title), paper, at.replace('T', '-').replace(':', '')]
    .filter((part) => part !== '')
    .join('-')
}

/** Throws for an id that is none, which is a fault of the program. */
export function documentOf(id: PaperDocument['id']): PaperDocument {
  const found = paperDocuments.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no document is called ${id}`)
  return found
}
