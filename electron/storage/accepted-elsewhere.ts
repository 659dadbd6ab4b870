import type { Database } from 'better-sqlite3'
import { type Issued, issuedSchema, type PlanBody } from '../../core/project/issued-records.ts'
import { tableNames } from './collections.ts'
import { readRecord } from './record-bodies.ts'

/** The plan accepted last of another job of the book. */
export interface AcceptedElsewhere {
  readonly jobKey: string
  readonly timeZone: string
  readonly plan: PlanBody['plan']
  /** Of the crew of that job, by id. */
  readonly names: ReadonlyMap<string, string>
}

/**
 * Plans of the other jobs that are not over when this job begins. Copies of this job (from a backup or a file) are the same job, and keep
 * nobody from it. Only the rows that are needed are read, for a book may hold many large jobs.
 */
export function readAcceptedElsewhere(database: Database, jobKey: string): readonly AcceptedElsewhere[] {
  const rows = database
    .prepare<[string], { readonly jobKey: string; readonly timeZone: string; readonly body: string }>(
      `SELECT other.job_key AS jobKey, other.header ->> '$.timeZone' AS timeZone,
         (SELECT body FROM ${tableNames.issued} AS plan
          WHERE plan.job_key = other.job_key AND body ->> '$.kind' = 'plan'
          ORDER BY body ->> '$.issuedAt' DESC, position DESC LIMIT 1) AS body
       FROM jobs AS other, jobs AS own
       WHERE own.job_key = ? AND other.job_key <> own.job_key
         AND other.header ->> '$.id' <> own.header ->> '$.id'
         AND coalesce(body ->> '$.body.plan.finishesOn', '') >= own.header ->> '$.startsOn'
       ORDER BY other.job_key`,
    )
    .all(jobKey)
  return rows.flatMap(({ jobKey: key, timeZone, body }) => {
    const plan = planIn(body)
    return plan === null ? [] : [{ jobKey: key, timeZone, plan, names: namesOf(database, key) }]
  })
}

/** Null where this program cannot open what was accepted. */
function planIn(body: string): PlanBody['plan'] | null {
  const issued = readRecord(issuedSchema, body) as Issued | null
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
