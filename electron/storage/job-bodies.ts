import {
  collectionNames,
  type Job,
  recordSchemas,
  singleNames,
  singleSchemas,
} from '../../core/project/job.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { keepRecord, readRecord } from './record-bodies.ts'

/** A job as the book keeps it, by the names of its parts: the JSON of every record, in their order. */
export interface JobBodies {
  readonly singles: Readonly<Record<string, string>>
  readonly tables: Readonly<Record<string, readonly (readonly [id: string, body: string])[]>>
}

/** A job to be written, and the same job as it will be read back. */
export interface PreparedJob {
  readonly job: Job
  readonly bodies: JobBodies
}

/** Checks every record of a job against its schema; a pure step, so that it can be done in another thread. */
export function prepareJob(job: Job): Outcome<PreparedJob> {
  const stored: Record<string, unknown> = {}
  const singles: Record<string, string> = {}
  const tables: Record<string, (readonly [string, string])[]> = {}
  for (const name of singleNames) {
    const kept = keepRecord(singleSchemas[name], job[name], name)
    if (!kept.ok) return kept
    stored[name] = kept.value.record
    singles[name] = kept.value.body
  }
  for (const name of collectionNames) {
    const table: Record<string, unknown> = {}
    const rows: (readonly [string, string])[] = []
    for (const [id, record] of Object.entries(job[name])) {
      const kept = keepRecord(recordSchemas[name], record, `${name}.${id}`)
      if (!kept.ok) return kept
      rows.push([id, kept.value.body])
      table[id] = kept.value.record
    }
    stored[name] = table
    tables[name] = rows
  }
  return succeed({ job: stored as Job, bodies: { singles, tables } })
}

/** The same job under another title; only its header is written anew. */
export function renameJob({ job, bodies }: PreparedJob, title: string): Outcome<PreparedJob> {
  const header = { ...job.header, title }
  const kept = keepRecord(singleSchemas.header, header, 'header')
  if (!kept.ok) return kept
  const singles = { ...bodies.singles, header: kept.value.body }
  return succeed({ job: { ...job, header }, bodies: { ...bodies, singles } })
}

/** Reads a job from its bodies; the problem names the first record that this program's schemas do not know. Pure as well. */
export function readBodies({ singles, tables }: JobBodies): Outcome<Job> {
  const job: Record<string, unknown> = {}
  for (const name of singleNames) {
    job[name] = readRecord(singleSchemas[name], singles[name] ?? 'null')
    if (job[name] === null) return unreadable(name)
  }
  for (const name of collectionNames) {
    const table: Record<string, unknown> = {}
    for (const [id, body] of tables[name] ?? []) {
      const record = readRecord(recordSchemas[name], body)
      if (record === null) return unreadable(`${name}.${id}`)
      table[id] = record
    }
    job[name] = table
  }
  return succeed(job as Job)
}

function unreadable(where: string): Outcome<never> {
  return fail('fileDamaged', `${where} is not a record this program can read`, [], where)
}
