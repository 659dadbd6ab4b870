import type { Database } from 'better-sqlite3'
import type { Stage } from '../../core/agreement/agreement.ts'
import { shopKey } from '../../core/contract/requests.ts'
import { type Issued, issuedSchema } from '../../core/project/issued-records.ts'
import { type Presence, presencesOf } from '../../core/schedule/job/elsewhere.ts'
import type { JobAtWork } from '../../core/schedule/jobs/book-people.ts'
import { tableNames } from './collections.ts'
import { standingOf } from './job-rows.ts'
import { readRecord } from './record-bodies.ts'

interface PlanRow {
  readonly jobKey: string
  readonly jobId: string
  readonly title: string
  readonly timeZone: string
  readonly startsOn: string
  /** Of the record that is the plan accepted last; null where none was. */
  readonly planId: string | null
  readonly finishesOn: string | null
}

/** A job that came to one of these has nobody at work any more, whatever its plan says. */
const overStages: readonly Stage[] = ['lost', 'finished', 'paid']

type PlanRead = Pick<JobAtWork, 'startsOn' | 'finishesOn'> & { readonly presences: readonly Presence[] }

/** Reads when people are at work by the plans accepted last. A plan is read once: what was accepted never changes. */
interface WorkReader {
  /** Of all jobs that are neither lost nor finished, in the order in which they begin. */
  readonly ofBook: () => readonly JobAtWork[]
  /**
   * Of the other jobs that are not over when this one begins. Copies of this job (from a backup or a file) are the same job, and keep nobody
   * from it.
   */
  readonly elsewhere: (jobKey: string) => readonly JobAtWork[]
}

/** Only the rows that are needed are read, for a book may hold many large jobs. */
export function workReader(database: Database): WorkReader {
  const known = new Map<string, PlanRead | null>()

  function planOf({ jobKey, timeZone }: PlanRow, planId: string): PlanRead | null {
    const key = `${jobKey} ${planId} ${timeZone}`
    const plan = known.get(key)
    if (plan !== undefined) return plan
    const read = readPlan(database, jobKey, planId, timeZone)
    known.set(key, read)
    return read
  }

  function workOf(row: PlanRow): readonly JobAtWork[] {
    const { jobKey, jobId, title, planId } = row
    if (planId === null || overStages.includes(standingOf(database, jobKey, true).stage)) return []
    const plan = planOf(row, planId)
    if (plan === null) return []
    const names = namesOf(database, jobKey)
    const { presences, ...days } = plan
    const work = presences.map((each) => ({ ...each, name: names.get(each.crewMemberId) ?? '' }))
    return [{ jobKey, jobId, title, ...days, work }]
  }

  return {
    ofBook: () => planRows(database).flatMap(workOf),
    elsewhere: (jobKey) => {
      const rows = planRows(database)
      const own = rows.find((row) => row.jobKey === jobKey)
      if (own === undefined) return []
      return rows
        .filter(({ jobId, finishesOn }) => jobId !== own.jobId && (finishesOn ?? '') >= own.startsOn)
        .flatMap(workOf)
    },
  }
}

function planRows(database: Database): readonly PlanRow[] {
  return database
    .prepare<[string], PlanRow>(
      `SELECT jobs.job_key AS jobKey, header ->> '$.id' AS jobId, header ->> '$.title' AS title,
         header ->> '$.timeZone' AS timeZone, header ->> '$.startsOn' AS startsOn, plan.id AS planId,
         plan.body ->> '$.body.plan.finishesOn' AS finishesOn
       FROM jobs LEFT JOIN ${tableNames.issued} AS plan ON plan.job_key = jobs.job_key
         AND plan.id = (SELECT id FROM ${tableNames.issued} AS each
           WHERE each.job_key = jobs.job_key AND body ->> '$.kind' = 'plan'
           ORDER BY body ->> '$.issuedAt' DESC, position DESC LIMIT 1)
       WHERE jobs.job_key <> ? ORDER BY plan.body ->> '$.body.plan.startsOn', jobs.job_key`,
    )
    .all(shopKey)
}

/** Null where this program cannot open what was accepted. */
function readPlan(database: Database, jobKey: string, planId: string, timeZone: string): PlanRead | null {
  const body = database
    .prepare<[string, string], string>(`SELECT body FROM ${tableNames.issued} WHERE job_key = ? AND id = ?`)
    .pluck()
    .get(jobKey, planId)
  const issued = body === undefined ? null : (readRecord(issuedSchema, body) as Issued | null)
  if (issued?.kind !== 'plan' || issued.body.version === null) return null
  const { plan } = issued.body
  const { startsOn, finishesOn } = plan
  return { startsOn, finishesOn, presences: presencesOf(plan, timeZone) }
}

function namesOf(database: Database, jobKey: string): ReadonlyMap<string, string> {
  const rows = database
    .prepare<[string], [string, string]>(
      `SELECT id, body ->> '$.name' FROM ${tableNames.crew} WHERE job_key = ?`,
    )
    .raw()
    .all(jobKey)
  return new Map(rows)
}
