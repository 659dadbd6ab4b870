import { present } from '../lists/lists.ts'
import {
  type CollectionName,
  collectionNames,
  type Job,
  type RecordOf,
  type SingleName,
  singleNames,
  type Table,
} from './job.ts'

type AnyRecord = { readonly id: string }

/** What one edit does to one collection. Records are compared by id; `updated` holds before and after. */
export interface CollectionDiff<Item> {
  readonly added: readonly Item[]
  readonly updated: readonly (readonly [before: Item, after: Item])[]
  readonly removed: readonly Item[]
  /** Ids in their order before and after; said only where making the edit, or taking it back, would otherwise put records elsewhere. */
  readonly order?: readonly [before: readonly string[], after: readonly string[]]
}

/** One edit as data: what was added, updated and removed. Reversed, it undoes; the same road stores it. */
export type JobDiff = {
  readonly [Name in CollectionName]?: CollectionDiff<RecordOf<Name>>
} & { readonly [Name in SingleName]?: readonly [before: Job[Name], after: Job[Name]] }

type LooseDiff = Record<string, CollectionDiff<AnyRecord> | readonly [unknown, unknown]>

/** The edit that leads from one job to another; collections that did not change are left out. */
export function diffJobs(before: Job, after: Job): JobDiff {
  const diff: LooseDiff = {}
  for (const name of singleNames) {
    if (before[name] !== after[name]) diff[name] = [before[name], after[name]]
  }
  for (const name of collectionNames) {
    if (before[name] === after[name]) continue
    const part = diffTables(before[name], after[name])
    if (part.added.length + part.updated.length + part.removed.length > 0 || part.order) diff[name] = part
  }
  return diff as JobDiff
}

function diffTables(before: Table<AnyRecord>, after: Table<AnyRecord>): CollectionDiff<AnyRecord> {
  const added: AnyRecord[] = []
  const updated: (readonly [AnyRecord, AnyRecord])[] = []
  for (const [id, item] of Object.entries(after)) {
    const was = before[id]
    if (was === undefined) added.push(item)
    else if (was !== item) updated.push([was, item])
  }
  const removed = Object.entries(before).flatMap(([id, item]) => (after[id] === undefined ? [item] : []))
  const forward = applyToTable(before, { added, updated: [], removed })
  const reversed = applyToTable(after, { added: removed, updated: [], removed: added })
  const isInPlace = hasOrderOf(forward, after) && hasOrderOf(reversed, before)
  if (isInPlace) return { added, updated, removed }
  return { added, updated, removed, order: [Object.keys(before), Object.keys(after)] }
}

function hasOrderOf(table: Table<unknown>, other: Table<unknown>): boolean {
  const ids = Object.keys(other)
  return Object.keys(table).every((id, place) => id === ids[place])
}

/** Applies an edit and answers the new job; collections it does not touch keep their identity. */
export function applyDiff(job: Job, diff: JobDiff): Job {
  const next: Record<string, unknown> = { ...job }
  for (const name of singleNames) {
    const change = diff[name]
    if (change) next[name] = change[1]
  }
  for (const name of collectionNames) {
    const part: CollectionDiff<AnyRecord> | undefined = diff[name]
    if (part) next[name] = applyToTable(job[name], part)
  }
  return next as Job
}

function applyToTable(table: Table<AnyRecord>, part: CollectionDiff<AnyRecord>): Table<AnyRecord> {
  const next: Record<string, AnyRecord> = { ...table }
  for (const item of part.removed) delete next[item.id]
  for (const [, item] of part.updated) next[item.id] = item
  for (const item of part.added) next[item.id] = item
  return part.order === undefined ? next : inOrder(next, part.order[1])
}

/** Records that the order does not name go behind those it does. */
function inOrder(table: Table<AnyRecord>, order: readonly string[]): Table<AnyRecord> {
  const ids = new Set([...order.filter((id) => Object.hasOwn(table, id)), ...Object.keys(table)])
  return Object.fromEntries([...ids].map((id) => [id, present(table[id])]))
}

/** The edit that takes this one back. */
export function reverseDiff(diff: JobDiff): JobDiff {
  const reversed: LooseDiff = {}
  for (const name of singleNames) {
    const change = diff[name]
    if (change) reversed[name] = [change[1], change[0]]
  }
  for (const name of collectionNames) {
    const part: CollectionDiff<AnyRecord> | undefined = diff[name]
    if (part === undefined) continue
    reversed[name] = {
      added: part.removed,
      updated: part.updated.map(([before, after]) => [after, before] as const),
      removed: part.added,
      ...(part.order && { order: [part.order[1], part.order[0]] as const }),
    }
  }
  return reversed as JobDiff
}

/** Nothing is changed, the order of records neither. */
export function isEmptyDiff(diff: JobDiff): boolean {
  return Object.keys(diff).length === 0
}
