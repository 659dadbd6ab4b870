import { keysOf } from '../lists/lists.ts'
import type { CollectionName, Job } from './job.ts'

/** What is said of the work while it goes on, and what was given out: no quantity, step, pass or price follows from it. */
export const saidOfTheWork = ['marks', 'photos', 'pins', 'issued', 'dealings', 'receipts'] as const

/** Whether two values of a job hold the same records by identity, whatever is in these collections. */
export function isAlikeBut(one: Job, other: Job, collections: readonly CollectionName[]): boolean {
  const aside = new Set<string>(collections)
  return keysOf(one).every((name) => aside.has(name) || one[name] === other[name])
}
