import { isOneOf, present } from '../../core/lists/lists.ts'
import type { JobDiff } from '../../core/project/diff.ts'
import {
  type CollectionName,
  collectionNames,
  type Job,
  recordSchemas,
  type SingleName,
  singleNames,
  singleSchemas,
} from '../../core/project/job.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { keepRecord } from './record-bodies.ts'

interface RowChange {
  readonly collection: CollectionName
  readonly id: string
  readonly body: string
}

/** One edit as rows to write, and the same edit with every record as it will be read back. */
export interface CheckedEdit {
  readonly diff: JobDiff
  readonly singles: readonly { readonly name: SingleName; readonly body: string }[]
  readonly added: readonly RowChange[]
  readonly updated: readonly RowChange[]
  readonly removed: readonly { readonly collection: CollectionName; readonly id: string }[]
  /** Ids of a collection in their new order, where the edit says one. */
  readonly ordered: readonly { readonly collection: CollectionName; readonly ids: readonly string[] }[]
}

type AnyRecord = { readonly id: string }
type AnyTable = Readonly<Record<string, AnyRecord>>
type CheckedPart = {
  readonly added: readonly AnyRecord[]
  readonly updated: readonly (readonly [AnyRecord, AnyRecord])[]
  readonly removed: readonly AnyRecord[]
  readonly order?: readonly [readonly string[], readonly string[]]
  readonly rows: Omit<CheckedEdit, 'diff' | 'singles'>
}

/**
 * Checks an edit record by record against the job it is made to: the shape, every record's own schema, that what is added is
 * new and what is updated or removed is there. Whether the whole job still makes sense afterwards is asked of the core.
 */
export function checkEdit(job: Job, diff: unknown): Outcome<CheckedEdit> {
  if (!isPlainObject(diff)) return misshapen('diff', 'an edit is an object')
  const stranger = Object.keys(diff).find((name) => !isPartName(name))
  if (stranger !== undefined) return misshapen(`diff.${stranger}`, 'a job has no such part')
  const singles = checkSingles(job, diff)
  if (!singles.ok) return singles
  const checkedDiff: Record<string, unknown> = { ...singles.value.diff }
  const rows: Omit<CheckedEdit, 'diff' | 'singles'>[] = []
  for (const collection of collectionNames) {
    if (diff[collection] === undefined) continue
    const part = checkPart(collection, job[collection], diff[collection])
    if (!part.ok) return part
    const { rows: partRows, ...checked } = part.value
    checkedDiff[collection] = checked
    rows.push(partRows)
  }
  return succeed({
    diff: checkedDiff as JobDiff,
    singles: singles.value.rows,
    added: rows.flatMap((part) => part.added),
    updated: rows.flatMap((part) => part.updated),
    removed: rows.flatMap((part) => part.removed),
    ordered: rows.flatMap((part) => part.ordered),
  })
}

function checkSingles(job: Job, diff: Readonly<Record<string, unknown>>) {
  const changes: Record<string, readonly [unknown, unknown]> = {}
  const rows: { readonly name: SingleName; readonly body: string }[] = []
  for (const name of singleNames) {
    const change = diff[name]
    if (change === undefined) continue
    if (!isPair(change)) return misshapen(`diff.${name}`, 'a change is a pair of before and after')
    const kept = keepRecord(singleSchemas[name], change[1], name)
    if (!kept.ok) return kept
    changes[name] = [job[name], kept.value.record]
    rows.push({ name, body: kept.value.body })
  }
  return succeed({ diff: changes, rows })
}

function checkPart(collection: CollectionName, table: AnyTable, part: unknown): Outcome<CheckedPart> {
  const where = `diff.${collection}`
  if (!isChange(part)) {
    return misshapen(where, 'a change has the lists added, updated and removed')
  }
  const updates = part.updated
  if (!updates.every(isPair)) return misshapen(`${where}.updated`, 'an update is a pair of before and after')
  const added = keepAll(collection, part.added)
  if (!added.ok) return added
  const updated = keepAll(
    collection,
    updates.map((pair) => pair[1]),
  )
  if (!updated.ok) return updated
  const removed = part.removed.map(idOf)
  const misplaced = findMisplaced(collection, table, {
    added: added.value.map((kept) => kept.row.id),
    updated: updated.value.map((kept) => kept.row.id),
    removed,
  })
  if (!misplaced.ok) return misplaced
  const { order } = part
  if (order !== undefined && !isOrder(order)) {
    return misshapen(`${where}.order`, 'an order is a pair of lists of ids, before and after')
  }
  return succeed({
    added: added.value.map((kept) => kept.record),
    updated: updated.value.map((kept) => [present(table[kept.row.id]), kept.record] as const),
    removed: removed.map((id) => present(table[id])),
    ...(order && { order }),
    rows: {
      added: added.value.map((kept) => kept.row),
      updated: updated.value.map((kept) => kept.row),
      removed: removed.map((id) => ({ collection, id })),
      ordered: order === undefined ? [] : [{ collection, ids: order[1] }],
    },
  })
}

function keepAll(
  collection: CollectionName,
  candidates: readonly unknown[],
): Outcome<readonly { readonly record: AnyRecord; readonly row: RowChange }[]> {
  const kept: { readonly record: AnyRecord; readonly row: RowChange }[] = []
  for (const candidate of candidates) {
    const one = keepRecord(recordSchemas[collection], candidate, `${collection}.${idOf(candidate)}`)
    if (!one.ok) return one
    const record = one.value.record as AnyRecord
    kept.push({ record, row: { collection, id: record.id, body: one.value.body } })
  }
  return succeed(kept)
}

/** Every id may occur once in an edit; additions must be new, updates and removals must be there. */
function findMisplaced(
  collection: CollectionName,
  table: AnyTable,
  ids: Readonly<Record<'added' | 'updated' | 'removed', readonly string[]>>,
): Outcome<null> {
  const all = [...ids.added, ...ids.updated, ...ids.removed]
  const seen = new Set<string>()
  const twice = all.find((id) => seen.has(id) || !seen.add(id))
  const again = twice ?? ids.added.find((id) => Object.hasOwn(table, id))
  if (again !== undefined) {
    return fail('duplicateId', `This edit was not stored: ${collection} would have ${again} twice.`, [again])
  }
  const missing = [...ids.updated, ...ids.removed].find((id) => !Object.hasOwn(table, id))
  if (missing === undefined) return succeed(null)
  return fail('notFound', `This edit was not stored: ${collection} has no ${missing}.`, [missing])
}

function isPartName(name: string): boolean {
  return isOneOf(singleNames, name) || isOneOf(collectionNames, name)
}

interface Change extends Readonly<Record<string, unknown>> {
  readonly added: readonly unknown[]
  readonly updated: readonly unknown[]
  readonly removed: readonly unknown[]
}

function isChange(part: unknown): part is Change {
  return isPlainObject(part) && ['added', 'updated', 'removed'].every((key) => Array.isArray(part[key]))
}

function isPlainObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function isPair(value: unknown): value is readonly [unknown, unknown] {
  return Array.isArray(value) && value.length === 2
}

function isOrder(value: unknown): value is readonly [readonly string[], readonly string[]] {
  const isList = (list: unknown) => Array.isArray(list) && list.every((id) => typeof id === 'string')
  return isPair(value) && value.every(isList)
}

function idOf(value: unknown): string {
  return isPlainObject(value) && typeof value.id === 'string' ? value.id : '?'
}

function misshapen(path: string, rule: string): Outcome<never> {
  return fail('notValid', `This edit was not stored: at ${path}, ${rule}.`, [], path)
}
