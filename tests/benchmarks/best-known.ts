import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** What `best_known.csv` says of one instance; `value` is undefined where nothing is known or nothing can be found. */
export interface BestKnown {
  readonly value: number | undefined
  readonly isInfeasible: boolean
  readonly isOptimal: boolean
}

export const unknownBest: BestKnown = { value: undefined, isInfeasible: false, isOptimal: false }

/**
 * Reads `instance, best_known, status` by the names of the columns, which may stand in any order. A range `82..87` counts as
 * its upper end; an instance may be named with its file ending. Undefined without the file.
 */
export function readBestKnown(folder: string): ReadonlyMap<string, BestKnown> | undefined {
  const path = join(folder, 'best_known.csv')
  if (!existsSync(path)) return undefined
  const rows = readFileSync(path, 'utf8')
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((line) => line.split(/[,;]/).map((cell) => cell.trim().replace(/^"|"$/g, '').toLowerCase()))
  const [head = [], ...body] = rows
  const column = (name: string, otherwise: number): number =>
    head.includes(name) ? head.indexOf(name) : otherwise
  const [instance, best, status] = [column('instance', 0), column('best_known', 2), column('status', 3)]
  return new Map(
    body
      .filter((row) => (row[instance] ?? '') !== '')
      .map((row) => [instanceName(row[instance] ?? ''), bestKnownOf(row[best] ?? '', row[status] ?? '')]),
  )
}

/** The name that files and rows are matched by. */
export function instanceName(text: string): string {
  return text.toLowerCase().replace(/\.(sm|sch)$/, '')
}

function bestKnownOf(best: string, status: string): BestKnown {
  const [upper] = best.match(/\d+$/) ?? []
  return {
    value: upper === undefined ? undefined : Number(upper),
    isInfeasible: status === 'infeasible' || best.startsWith('infeas'),
    isOptimal: status === 'optimal' && upper !== undefined,
  }
}
