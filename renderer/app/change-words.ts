import type { z } from 'zod'
import {
  type CollectionName,
  type Job,
  recordSchemas,
  type SingleName,
  singleSchemas,
} from '../../core/project/job.ts'
import type { EditClash, RecordChange } from '../../core/project/rebase.ts'
import { sameValue } from '../../core/project/same-value.ts'
import type { Unfit } from '../state/job-state.ts'

/** What each part of a job is called when one record of it is spoken of. The list is complete, or it does not compile. */
const partWords: Readonly<Record<CollectionName | SingleName, string>> = {
  header: 'Job sheet',
  houseRules: 'House rules',
  business: 'Shop sheet',
  storeys: 'Floor',
  rooms: 'Room',
  openings: 'Opening',
  ceilingOpenings: 'Opening in the ceiling',
  trimRuns: 'Trim',
  builtItems: 'Built-in',
  keptItems: 'Thing that stays',
  existing: 'What is there now',
  conditions: 'Finding',
  photos: 'Photo',
  holds: 'Hold',
  colours: 'Color',
  finishes: 'Finish',
  products: 'Product',
  crew: 'Crew member',
  rates: 'Rate',
  rules: 'Rule',
  pins: 'Pin',
  marks: 'Mark on site',
  issued: 'Paper given out',
  options: 'Option',
  dealings: 'Entry of the agreement',
  receipts: 'Receipt',
  cansUsed: 'Cans used',
  ownJobs: 'Finished job of the shop',
}

type Fields = Readonly<Record<string, unknown>>

/** `Room “Kitchen” changed`, `Opening in “Kitchen” added`. */
export function changeWords(job: Job, change: RecordChange): string {
  const done = change.before === undefined ? 'added' : change.after === undefined ? 'removed' : 'changed'
  return `${recordWords(job, change)} ${done}`
}

function recordWords(job: Job, { part, before, after }: RecordChange): string {
  const record = fieldsOf(after ?? before)
  const name = textAt(record, 'name')
  const room = job.rooms[roomIdOf(record) ?? '']?.name
  const named = name === null || part === 'header' || part === 'business' ? '' : ` “${name}”`
  return `${partWords[part]}${named}${room === undefined ? '' : ` in “${room}”`}`
}

/** The room a record says it is in or about, at its top or one or two levels down. */
function roomIdOf(value: unknown, depth = 0): string | null {
  if (typeof value !== 'object' || value === null || depth > 2) return null
  const own = textAt(fieldsOf(value), 'roomId')
  if (own !== null) return own
  for (const part of Object.values(value)) {
    const found = Array.isArray(part) ? null : roomIdOf(part, depth + 1)
    if (found !== null) return found
  }
  return null
}

function fieldsOf(value: unknown): Fields {
  return typeof value === 'object' && value !== null ? { ...value } : {}
}

function textAt(record: Fields, key: string): string | null {
  const value = record[key]
  return typeof value === 'string' && value !== '' ? value : null
}

/** Why an own edit could not be kept. */
export function clashWords({ why, problem }: EditClash): string {
  switch (why) {
    case 'changedThere':
      return 'it was changed in the other window too'
    case 'removedThere':
      return 'it was removed in the other window'
    case 'doesNotFit':
      return problem?.sentence ?? 'it does not fit any more'
  }
}

/** The edits with all they say, in the words of a job file, to be pasted somewhere and made again by hand. */
export function unfitText({ clashes, job }: Unfit): string {
  return clashes
    .map((clash) => {
      const why = clashWords(clash)
      return `${changeWords(job, clash.change)}: ${why}\n${fieldLines(clash.change).join('\n')}`
    })
    .join('\n\n')
}

function fieldLines(change: RecordChange): readonly string[] {
  const [before, after] = [inFile(change.part, change.before), inFile(change.part, change.after)]
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])]
  return keys
    .filter((key) => key !== 'id' && !sameValue(before[key], after[key]))
    .map((key) => `  ${key}: ${valueText(before[key])} -> ${valueText(after[key])}`)
}

function inFile(part: RecordChange['part'], record: unknown): Fields {
  if (record === undefined) return {}
  const schemas: Readonly<Record<string, z.ZodType>> = { ...singleSchemas, ...recordSchemas }
  const written = schemas[part]?.safeEncode(record)
  return fieldsOf(written?.success ? written.data : record)
}

function valueText(value: unknown): string {
  return value === undefined ? 'nothing' : JSON.stringify(value)
}
