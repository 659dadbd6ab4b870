import { isFields } from '../lists/lists.ts'
import type { Job, SingleName } from './job.ts'
import { jobProblems } from './job-problems.ts'
import { type Outcome, succeed } from './problem.ts'
import { isSafetyRule } from './safety-limits.ts'
import { sameValue } from './same-value.ts'

/** The lists of a shop that a job has a copy of. */
const shopTables = ['products', 'crew', 'rates', 'rules'] as const
type ShopTable = (typeof shopTables)[number]
const shopSingles = ['business', 'houseRules'] as const satisfies readonly SingleName[]

/** One line in which two copies of the shop sheet differ; undefined where one of them has nothing. */
export interface ShopDifference {
  readonly key: string
  readonly part: (typeof shopSingles)[number] | ShopTable
  /** Names of the fields down to the value, or the id of the record. */
  readonly path: readonly string[]
  readonly here: unknown
  readonly there: unknown
}

/** Numbers are counted on the shop sheet alone, and days without work are dates of one job. */
const ofOneAlone: readonly string[] = ['nextNumbers', 'holidays']

/** Where the copy `here` differs from `there`: every field of the business and the house rules, every record of the lists. Settings of safety rules belong to one house. */
export function shopDifferences(here: Job, there: Job): readonly ShopDifference[] {
  const singles = shopSingles.flatMap((part) => leafDifferences(part, [], here[part], there[part]))
  const tables = shopTables.flatMap((part) => {
    const ids = new Set([...Object.keys(here[part]), ...Object.keys(there[part])])
    return [...ids]
      .filter((id) => part !== 'rules' || !isSafetyRule(id))
      .filter((id) => !sameValue(here[part][id], there[part][id]))
      .map((id) => difference(part, [id], here[part][id], there[part][id]))
  })
  return [...singles.filter(({ path: [name = ''] }) => !ofOneAlone.includes(name)), ...tables]
}

function leafDifferences(
  part: ShopDifference['part'],
  path: readonly string[],
  here: unknown,
  there: unknown,
): readonly ShopDifference[] {
  if (!isFields(here) || !isFields(there)) {
    return sameValue(here, there) ? [] : [difference(part, path, here, there)]
  }
  return Object.keys(here).flatMap((name) => leafDifferences(part, [...path, name], here[name], there[name]))
}

function difference(
  part: ShopDifference['part'],
  path: readonly string[],
  here: unknown,
  there: unknown,
): ShopDifference {
  return { key: [part, ...path].join('/'), part, path, here, there }
}

/** `here` with the chosen lines as they stand in the other copy; a problem where such a job could not be stored. */
export function withLines(here: Job, chosen: readonly ShopDifference[]): Outcome<Job> {
  let next = here
  for (const { part, path, there } of chosen) next = { ...next, [part]: withValue(next[part], path, there) }
  const wrong = jobProblems(next)[0]
  return wrong === undefined ? succeed(next) : { ok: false, problem: wrong }
}

function withValue(group: unknown, path: readonly string[], value: unknown): unknown {
  const [name, ...rest] = path
  if (name === undefined) return value
  const fields = isFields(group) ? group : {}
  const inner = withValue(fields[name], rest, value)
  if (inner !== undefined) return { ...fields, [name]: inner }
  return Object.fromEntries(Object.entries(fields).filter(([each]) => each !== name))
}
