import { z } from 'zod'
import { isFields, isGroup } from '../lists/lists.ts'
import { formSentence, issueToTell, pathText } from './form-sentence.ts'
import { type CollectionName, collectionNames, type Job, singleNames } from './job.ts'
import { jobFileFormat, jobFileSchema, jobFileVersion, type TravelingPicture } from './job-file-schema.ts'
import { jobProblems } from './job-problems.ts'
import { layOutJson } from './json-layout.ts'
import { findJsonFault } from './json-text.ts'
import { fail, type Outcome, succeed } from './problem.ts'
import type { FileData } from './upgrades/file-data.ts'
import { upgradeFile } from './upgrades/file-upgrades.ts'

type JobFile = z.output<typeof jobFileSchema>

/**
 * Reads the text of a job file. Whole or not at all: anything wrong with its form, its ids, its references or its sketch is
 * answered with the place in the file and a sentence, and nothing is loaded.
 */
export function readJobFile(text: string): Outcome<Job> {
  const read = readWholeJobFile(text)
  return read.ok ? succeed(read.value.job) : read
}

/** As `readJobFile`, with the pictures that travel in the file; whether their bytes are pictures is not looked at here. */
export function readWholeJobFile(
  text: string,
): Outcome<{ readonly job: Job; readonly pictures: readonly TravelingPicture[] }> {
  const fault = findJsonFault(text)
  if (fault) {
    const place = `line ${fault.line}, column ${fault.column}`
    return fail('notValid', `This is not readable as a job file: ${fault.sentence} (${place}).`, [], place)
  }
  const data: unknown = JSON.parse(text)
  const checked = checkHeader(data)
  if (!checked.ok) return checked
  const upgraded = upgradeFile(checked.value.data, checked.value.version)
  const read = jobFileSchema.safeParse(upgraded)
  const first = read.error?.issues[0]
  const issue = first && issueToTell(first)
  if (issue) return fail('notValid', formSentence(issue, upgraded), [], pathText(issue.path))
  if (!read.success) return fail('notValid', 'This job file could not be read.')
  const job = jobFromFile(read.data)
  return job.ok ? succeed({ job: job.value, pictures: read.data.pictures ?? [] }) : job
}

/** The text of a job's file: the same job always gives the same text, and reading it gives the same job back. */
export function writeJobFile(job: Job, pictures: readonly TravelingPicture[] = []): string {
  const head = {
    format: jobFileFormat,
    version: jobFileVersion,
    units: { length: 'mm', money: 'cent' },
  } as const
  const lists = Object.fromEntries(collectionNames.map((name) => [name, Object.values(job[name])]))
  const singles = Object.fromEntries(singleNames.map((name) => [name, job[name]]))
  const part = pictures.length === 0 ? {} : { pictures }
  return layOutJson(z.encode(jobFileSchema, { ...head, ...singles, ...lists, ...part } as JobFile))
}

/** Format, version and units come before the form: a file from the future or in other units shall be told so, not drowned in details. */
function checkHeader(data: unknown): Outcome<{ readonly data: FileData; readonly version: number }> {
  if (!isFields(data)) {
    return fail('notValid', 'This is not a job file: it should be one group of fields in braces.')
  }
  const { format, version, units } = data
  if (format !== jobFileFormat) {
    return fail(
      'notValid',
      `This is not a job file: at format it should say "${jobFileFormat}".`,
      [],
      'format',
    )
  }
  if (typeof version === 'number' && Number.isInteger(version) && version > jobFileVersion) {
    const sentence = `This job file is of version ${version}; this program reads up to version ${jobFileVersion}. Use a newer program.`
    return fail('fileFromTheFuture', sentence, [], 'version')
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    const says =
      version === undefined ? 'does not say its version' : `says version ${JSON.stringify(version)}`
    const sentence = `This job file ${says}; this program reads versions 1 to ${jobFileVersion}.`
    return fail('notValid', sentence, [], 'version')
  }
  const inUnits = checkUnits(units)
  return inUnits.ok ? succeed({ data, version }) : inUnits
}

function checkUnits(units: unknown): Outcome<null> {
  const stated = isGroup(units) ? units : {}
  for (const [name, unit] of [
    ['length', 'mm'],
    ['money', 'cent'],
  ] as const) {
    if (stated[name] === unit) continue
    const found = stated[name] === undefined ? 'nothing' : JSON.stringify(stated[name])
    return fail(
      'notValid',
      `At units.${name}: a job file gives it in "${unit}", not ${found}.`,
      [],
      `units.${name}`,
    )
  }
  return succeed(null)
}

function jobFromFile(file: JobFile): Outcome<Job> {
  const tables: Partial<Record<CollectionName, Readonly<Record<string, unknown>>>> = {}
  for (const name of collectionNames) {
    const table: Record<string, unknown> = {}
    for (const [index, record] of file[name].entries()) {
      if (Object.hasOwn(table, record.id)) {
        const place = `${name}[${index}].id`
        return fail(
          'duplicateId',
          `At ${place}: the id "${record.id}" stands twice in ${name}.`,
          [record.id],
          place,
        )
      }
      table[record.id] = record
    }
    tables[name] = table
  }
  const singles = Object.fromEntries(singleNames.map((name) => [name, file[name]]))
  const job = { ...singles, ...tables } as Job
  const wrong = jobProblems(job)[0]
  return wrong === undefined ? succeed(job) : { ok: false, problem: wrong }
}
