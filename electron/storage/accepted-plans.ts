import type { Database } from 'better-sqlite3'
import type { Stage } from '../../core/agreement/agreement.ts'
import { shopKey } from '../../core/contract/requests.ts'
import { type Issued, issuedSchema, type PlanBody } from '../../core/project/issued-records.ts'
import { tableNames } from './collections.ts'
import { standingOf } from './job-rows.ts'
import { readRecord } from './record-bodies.ts'

/** The plan accepted last of a job of the book. */
export interface AcceptedInBook {
  readonly jobKey: string
  readonly jobId: string
  readonly title: string
  readonly timeZone: string
  readonly plan: PlanBody['plan']
  /** Of the crew of that job, by id. */
  readonly names: ReadonlyMap<string, string>
}

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

/** The accepted plans of all jobs that are neither lost nor finished, in the order in which they begin. Only the rows that are needed are read. */
export function readAcceptedPlans(database: Database): readonly AcceptedInBook[] {
  return plansOf(database, planRows(database))
}

/**
 * Those of the other jobs that are not over when this one begins. Copies of this job (from a backup or a file) are the same job, and keep
 * nobody from it.
 */
export function readAcceptedElsewhere(database: Database, jobKey: string): readonly AcceptedInBook[] {
  const rows = planRows(database)
  const own = rows.find((row) => row.jobKey === jobKey)
  if (own === undefined) return []
  return plansOf(
    database,
    rows.filter(({ jobId, finishesOn }) => jobId !== own.jobId && (finishesOn ?? '') >= own.startsOn),
  )
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

function plansOf(database: Database, rows: readonly PlanRow[]): readonly AcceptedInBook[] {
  return rows.flatMap(({ jobKey, jobId, title, timeZone, planId }) => {
    if (planId === null || overStages.includes(standingOf(database, jobKey, true).stage)) return []
    const plan = planIn(database, jobKey, planId)
    return plan === null ? [] : [{ jobKey, jobId, title, timeZone, plan, names: namesOf(database, jobKey) }]
  })
}

/** Null where this program cannot open what was accepted. */
function planIn(database: Database, jobKey: string, planId: string): PlanBody['plan'] | null {
  const body = database
    .prepare<[string, string], string>(`SELECT body FROM ${tableNames.issued} WHERE job_key = ? AND id = ?`)
    .pluck()
    .get(jobKey, planId)
  const issued = body === undefined ? null : (readRecord(issuedSchema, body) as Issued | null)
  return issued?.kind === 'plan' && issued.body.version !== null ? issued.body.plan : null
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
