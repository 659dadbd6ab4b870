import type { Database } from 'better-sqlite3'
import { agreementOf } from '../../core/agreement/agreement.ts'
import { totalCents } from '../../core/agreement/taxed-money.ts'
import { type JobSummary, shopKey } from '../../core/contract/requests.ts'
import type { Dealing } from '../../core/project/agreement-records.ts'
import {
  type CollectionName,
  collectionNames,
  type Job,
  recordSchemas,
  type SingleName,
} from '../../core/project/job.ts'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import type { CheckedEdit } from './checked-edit.ts'
import { tableNames } from './collections.ts'
import { damagedBook } from './failures.ts'
import { type JobBodies, type PreparedJob, readBodies } from './job-bodies.ts'
import { readRecord } from './record-bodies.ts'

const singleColumns = {
  header: 'header',
  houseRules: 'house_rules',
  business: 'business',
} as const satisfies Record<SingleName, string>

/** What is kept of a job beside its records. */
export interface JobRow {
  readonly jobKey: string
  readonly job: Job
  readonly revision: number
}

/** A summary as SQL gives it: true is 1. */
type SummaryRow = Omit<JobSummary, 'isDemonstration' | 'isPutAway' | keyof Standing> &
  Readonly<Record<'isDemonstration' | 'isPutAway' | 'hasMarks', number>>

/** The newest edit first. The shop sheet is no job. */
export function listJobRows(database: Database): readonly JobSummary[] {
  const rows = database
    .prepare<[string], SummaryRow>(
      `SELECT job_key AS jobKey, header ->> '$.title' AS title, header ->> '$.client' AS client,
         header ->> '$.startsOn' AS startsOn, edited_at AS editedAt,
         header ->> '$.isDemonstration' AS isDemonstration, header ->> '$.isPutAway' AS isPutAway,
         (SELECT count(*) FROM rooms WHERE rooms.job_key = jobs.job_key) AS roomCount,
         EXISTS (SELECT 1 FROM marks WHERE marks.job_key = jobs.job_key) AS hasMarks
       FROM jobs WHERE job_key <> ? ORDER BY edited_at DESC, job_key`,
    )
    .all(shopKey)
  return rows.map(({ hasMarks, ...row }) => ({
    ...row,
    isDemonstration: row.isDemonstration === 1,
    isPutAway: row.isPutAway === 1,
    ...standingOf(database, row.jobKey, hasMarks === 1),
  }))
}

type Standing = Pick<JobSummary, 'stage' | 'agreedCents' | 'balanceCents'>

/** Where a job stands, from its dealings alone; one that this program cannot read is left out. */
export function standingOf(database: Database, jobKey: string, hasMarks: boolean): Standing {
  const dealings = readTable(database, jobKey, 'dealings').flatMap(([, body]) => {
    const read = readRecord(recordSchemas.dealings, body) as Dealing | null
    return read === null ? [] : [read]
  })
  const { stage, agreed, balanceCents } = agreementOf(dealings, hasMarks)
  return { stage, agreedCents: totalCents(agreed), balanceCents }
}

/** What the book has of a job, not read yet; undefined where it has none of that key. */
export interface RawJob {
  readonly bodies: JobBodies
  readonly revision: number
}

type RawRow = { readonly revision: number } & Readonly<Record<SingleName, string>>

export function readRawJob(database: Database, jobKey: string): RawJob | undefined {
  const row = database
    .prepare<[string], RawRow>(
      'SELECT header, house_rules AS houseRules, business, revision FROM jobs WHERE job_key = ?',
    )
    .get(jobKey)
  if (row === undefined) return undefined
  const { revision, ...singles } = row
  const tables = Object.fromEntries(collectionNames.map((name) => [name, readTable(database, jobKey, name)]))
  return { bodies: { singles, tables }, revision }
}

function readTable(database: Database, jobKey: string, name: CollectionName) {
  return database
    .prepare<[string], [string, string]>(
      `SELECT id, body FROM ${tableNames[name]} WHERE job_key = ? ORDER BY position`,
    )
    .raw()
    .all(jobKey)
}

/** Reads a whole job; undefined where the book has none of that key. */
export function readJobRows(database: Database, jobKey: string): Outcome<JobRow> | undefined {
  const raw = readRawJob(database, jobKey)
  return raw && jobRowOf(database, jobKey, raw, readBodies(raw.bodies))
}

/** A job that was read from its bodies, here or elsewhere, beside its revision. */
export function jobRowOf(
  database: Database,
  jobKey: string,
  { revision }: RawJob,
  job: Outcome<Job>,
): Outcome<JobRow> {
  return job.ok
    ? succeed({ jobKey, job: job.value, revision })
    : damagedBook(database.name, job.problem.sentence)
}

/** Writes a job of revision 1. Runs inside the caller's transaction. */
export function insertJobRows(
  database: Database,
  jobKey: string,
  { job, bodies }: PreparedJob,
  editedAt: string,
): JobRow {
  database
    .prepare(
      'INSERT INTO jobs (job_key, header, house_rules, business, revision, edited_at) VALUES (?, ?, ?, ?, 1, ?)',
    )
    .run(jobKey, bodies.singles.header, bodies.singles.houseRules, bodies.singles.business, editedAt)
  for (const name of collectionNames) {
    const insert = inserter(database, jobKey, name)
    for (const [id, body] of bodies.tables[name] ?? []) insert(id, body)
  }
  return { jobKey, job, revision: 1 }
}

/** Writes the rows of one edit and raises the revision. Runs inside the caller's transaction. */
export function writeEdit(
  database: Database,
  jobKey: string,
  edit: CheckedEdit,
  revision: number,
  editedAt: string,
): void {
  for (const { collection, id } of edit.removed) {
    database.prepare(`DELETE FROM ${tableNames[collection]} WHERE job_key = ? AND id = ?`).run(jobKey, id)
  }
  for (const { collection, id, body } of edit.updated) {
    database
      .prepare(`UPDATE ${tableNames[collection]} SET body = ? WHERE job_key = ? AND id = ?`)
      .run(body, jobKey, id)
  }
  const grown = new Set(edit.added.map(({ collection }) => collection))
  const inserters = new Map([...grown].map((name) => [name, inserter(database, jobKey, name)] as const))
  for (const { collection, id, body } of edit.added) inserters.get(collection)?.(id, body)
  for (const { collection, ids } of edit.ordered) orderRecords(database, jobKey, collection, ids)
  for (const { name, body } of edit.singles) {
    database.prepare(`UPDATE jobs SET ${singleColumns[name]} = ? WHERE job_key = ?`).run(body, jobKey)
  }
  database
    .prepare('UPDATE jobs SET revision = ?, edited_at = ? WHERE job_key = ?')
    .run(revision, editedAt, jobKey)
}

/** Puts new records behind the others, as they are in memory. The last place is looked up once, not for every record. */
function inserter(database: Database, jobKey: string, name: CollectionName) {
  const table = tableNames[name]
  let position =
    database
      .prepare<[string], number>(`SELECT coalesce(max(position), 0) FROM ${table} WHERE job_key = ?`)
      .pluck()
      .get(jobKey) ?? 0
  const statement = database.prepare(`INSERT INTO ${table} (job_key, id, position, body) VALUES (?, ?, ?, ?)`)
  return (id: string, body: string) => {
    position++
    statement.run(jobKey, id, position, body)
  }
}

/** Gives the records of a collection the places of a list; those it does not name stay behind them, as they do in memory. */
function orderRecords(
  database: Database,
  jobKey: string,
  name: CollectionName,
  ids: readonly string[],
): void {
  const table = tableNames[name]
  database.prepare(`UPDATE ${table} SET position = position + ? WHERE job_key = ?`).run(ids.length, jobKey)
  const place = database.prepare(`UPDATE ${table} SET position = ? WHERE job_key = ? AND id = ?`)
  for (const [index, id] of ids.entries()) place.run(index + 1, jobKey, id)
}
