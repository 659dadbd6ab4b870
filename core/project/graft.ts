import { collectionNames, type Job, singleNames, type Table } from './job.ts'
import { sameValue } from './same-value.ts'

/**
 * The same job as `fresh`, made of the very records of `known` jobs wherever those say the same, the first of them first. What was
 * worked out from a record is then remembered, and `diffJobs` to one of them says no more than what differs.
 */
export function graftJob(fresh: Job, known: readonly Job[]): Job {
  const grafted: Record<string, unknown> = {}
  for (const name of singleNames) {
    const like = known.find((job) => sameValue(job[name], fresh[name]))
    grafted[name] = like === undefined ? fresh[name] : like[name]
  }
  for (const name of collectionNames) {
    grafted[name] = graftTable(
      fresh[name],
      known.map((job) => job[name]),
    )
  }
  return grafted as Job
}

function graftTable(fresh: Table<unknown>, known: readonly Table<unknown>[]): Table<unknown> {
  const records = Object.entries(fresh).map(([id, record]) => {
    const like = known.find((table) => sameValue(table[id], record))
    return [id, like === undefined ? record : like[id]] as const
  })
  const whole = known.find((table) => isMadeOf(table, records))
  return whole ?? Object.fromEntries(records)
}

function isMadeOf(table: Table<unknown>, records: readonly (readonly [string, unknown])[]): boolean {
  const entries = Object.entries(table)
  return (
    entries.length === records.length &&
    entries.every(([id, record], place) => records[place]?.[0] === id && records[place]?.[1] === record)
  )
}

/** Two jobs that a file or the book would hold alike, the order of records included. */
export function sameJob(one: Job, other: Job): boolean {
  return (
    singleNames.every((name) => sameValue(one[name], other[name])) &&
    collectionNames.every((name) => sameTable(one[name], other[name]))
  )
}

function sameTable(one: Table<unknown>, other: Table<unknown>): boolean {
  if (one === other) return true
  const [ids, others] = [Object.keys(one), Object.keys(other)]
  return (
    ids.length === others.length && ids.every((id, at) => id === others[at] && sameValue(one[id], other[id]))
  )
}
