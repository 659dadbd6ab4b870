import { z } from 'zod'
import { isGroup, isOneOf } from '../lists/lists.ts'
import { applyDiff, type CollectionDiff, diffJobs, type JobDiff } from './diff.ts'
import {
  type CollectionName,
  collectionNames,
  type Job,
  recordSchemas,
  type SingleName,
  singleNames,
  singleSchemas,
} from './job.ts'
import { jobProblems } from './job-problems.ts'
import type { Problem } from './problem.ts'
import { sameValue } from './same-value.ts'

/** What an edit does to one record; `undefined` before what it adds, after what it removes. A single's id is its name. */
export interface RecordChange {
  readonly part: CollectionName | SingleName
  readonly id: string
  readonly before: unknown
  readonly after: unknown
}

/** An own change that could not be put on the other state, and why in short. */
export interface EditClash {
  readonly change: RecordChange
  readonly why: 'changedThere' | 'removedThere' | 'doesNotFit'
  /** What the job would break, where it would. */
  readonly problem: Problem | null
}

interface Rebased {
  readonly job: Job
  readonly clashes: readonly EditClash[]
}

/** Every record an edit touches, in the order of the job's parts. */
export function changesOf(diff: JobDiff): readonly RecordChange[] {
  const singles = singleNames.flatMap((name): readonly RecordChange[] => {
    const change = diff[name]
    return change === undefined ? [] : [{ part: name, id: name, before: change[0], after: change[1] }]
  })
  const others = collectionNames.flatMap((part): readonly RecordChange[] => {
    const change: CollectionDiff<{ readonly id: string }> | undefined = diff[part]
    if (change === undefined) return []
    return [
      ...change.added.map((after) => ({ part, id: after.id, before: undefined, after })),
      ...change.updated.map(([before, after]) => ({ part, id: after.id, before, after })),
      ...change.removed.map((before) => ({ part, id: before.id, before, after: undefined })),
    ]
  })
  return [...singles, ...others]
}

/** The record a change is about, as it stands in a job. */
export function recordIn(job: Job, { part, id }: RecordChange): unknown {
  return isSingle(part) ? job[part] : job[part][id]
}

/**
 * Puts what leads from `base` to `mine` on top of `theirs`, another state made from `base`. A record both changed is merged field by
 * field; what cannot be had together, and what the job would break by, stays as it is in `theirs` and is told.
 *
 * @param earlier states of `mine` that `theirs` may hold already: they are nobody else's changes
 */
export function rebaseJob(base: Job, mine: Job, theirs: Job, earlier: readonly Job[] = []): Rebased {
  const own = diffJobs(base, mine)
  const clashes: EditClash[] = []
  let fitting: RecordChange[] = []
  for (const change of changesOf(own)) {
    const there = recordIn(theirs, change)
    const known = [change.before, ...earlier.map((job) => recordIn(job, change))]
    const after = merged(change, there, known)
    if (after === clashing) clashes.push({ change, why: whyNot(there), problem: null })
    else fitting.push({ ...change, before: there, after })
  }
  for (;;) {
    const job = applyDiff(theirs, diffFrom(fitting, own))
    const problem = fitting.length === 0 ? undefined : jobProblems(job)[0]
    if (problem === undefined) return { job, clashes }
    const guilty = fitting.filter((change) => problem.ids.includes(change.id))
    const dropped = guilty.length > 0 ? guilty : fitting.slice(-1)
    fitting = fitting.filter((change) => !dropped.includes(change))
    clashes.push(...dropped.map((change) => ({ change, why: 'doesNotFit' as const, problem })))
  }
}

const clashing = Symbol('two that cannot be had together')

/** What the record becomes on the other state. */
function merged(change: RecordChange, there: unknown, known: readonly unknown[]): unknown {
  const { part, before, after } = change
  if (known.some((one) => sameValue(one, there)) || sameValue(after, there)) return after
  if (!isGroup(before) || !isGroup(after) || !isGroup(there)) return clashing
  const fields: Record<string, unknown> = {}
  for (const key of new Set([...Object.keys(after), ...Object.keys(there)])) {
    const [was, is, now] = [before[key], after[key], there[key]]
    const isMine = known.some((one) => isGroup(one) && sameValue(one[key], now)) || sameValue(is, now)
    if (!isMine && !sameValue(was, is)) return clashing
    const value = isMine ? is : now
    if (value !== undefined) fields[key] = value
  }
  const schema: z.ZodType = isSingle(part) ? singleSchemas[part] : recordSchemas[part]
  return z.safeEncode(schema, fields as never).success ? fields : clashing
}

function isSingle(part: CollectionName | SingleName): part is SingleName {
  return isOneOf(singleNames, part)
}

function whyNot(there: unknown): EditClash['why'] {
  return there === undefined ? 'removedThere' : 'changedThere'
}

/** The edit that makes these changes; where the own edit put records in another order, it does so too. */
function diffFrom(changes: readonly RecordChange[], own: JobDiff): JobDiff {
  const diff: Record<string, unknown> = {}
  for (const name of singleNames) {
    const change = changes.find(({ part }) => part === name)
    if (change !== undefined) diff[name] = [change.before, change.after]
  }
  for (const name of collectionNames) {
    const of = changes.filter(({ part, before, after }) => part === name && before !== after)
    const order = own[name]?.order
    if (of.length === 0 && order === undefined) continue
    diff[name] = {
      added: of.flatMap(({ before, after }) => (before === undefined ? [after] : [])),
      updated: of.flatMap(({ before, after }) =>
        before === undefined || after === undefined ? [] : [[before, after]],
      ),
      removed: of.flatMap(({ before, after }) => (after === undefined ? [before] : [])),
      ...(order && { order }),
    }
  }
  return diff as JobDiff
}
