import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, extname, join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { boundOf } from '../../core/schedule/bound/bound.ts'
import { createSearch } from '../../core/schedule/tries/search.ts'
import { type BestKnown, instanceName, readBestKnown, unknownBest } from './best-known.ts'
import {
  countViolations,
  criticalPathOf,
  type ProjectInstance,
  problemOf,
  readSch,
  readSm,
} from './project-files.ts'

const usage =
  'bench:rcpsp <folder> ... [--limit 1s | --schedules 5000] [--sample N] [--seed 1] [--csv file.csv]\n'

/**
 * Runs the scheduling core over folders of PSPLIB `.sm` or ProGen/max `.sch` files with a `best_known.csv` beside them.
 *   npm run bench:rcpsp -- <folder> ... [--limit 1s | --schedules 5000] [--sample 100] [--seed 1] [--csv out.csv]
 * A folder without such files stands for its sub-folders. `--sample N` takes N files spread evenly over each folder. The search
 * stops early only when its own bound is reached. A file that cannot be read is named and left out.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    limit: { type: 'string', default: '1s' },
    schedules: { type: 'string' },
    sample: { type: 'string' },
    seed: { type: 'string', default: '1' },
    csv: { type: 'string' },
  },
})

interface Row {
  readonly set: string
  readonly instance: string
  /** The last end of the plan found, from the file's own numbers. */
  readonly found: number | undefined
  readonly bound: number | undefined
  readonly best: BestKnown
  readonly criticalPath: number
  readonly violations: number
  readonly schedules: number
  readonly milliseconds: number
}

/** Where a run stops: what comes first. */
interface Limit {
  readonly milliseconds: number
  readonly schedules: number
}

function limitOf(): Limit {
  if (values.schedules !== undefined)
    return { milliseconds: Number.POSITIVE_INFINITY, schedules: wholeNumber('--schedules', values.schedules) }
  const match = /^(\d+(?:\.\d+)?)(ms|s)$/.exec(values.limit)
  if (match === null) throw new Error(`--limit wants a time like 1s or 200ms, not ${values.limit}`)
  return {
    milliseconds: Number(match[1]) * (match[2] === 'ms' ? 1 : 1000),
    schedules: Number.POSITIVE_INFINITY,
  }
}

function wholeNumber(option: string, text: string): number {
  if (!/^\d+$/.test(text)) throw new Error(`${option} wants a whole number, not ${text}`)
  return Number(text)
}

function instanceFilesIn(folder: string): readonly string[] {
  const byNumber = new Intl.Collator('en', { numeric: true })
  return readdirSync(folder)
    .filter((name) => ['.sm', '.sch'].includes(extname(name).toLowerCase()))
    .sort(byNumber.compare)
}

/** The folder itself when it holds instances, else those below it that do. */
function setsIn(folder: string): readonly string[] {
  if (!existsSync(folder)) throw new Error(`no folder ${folder}`)
  if (instanceFilesIn(folder).length > 0) return [folder]
  const below = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  return below.flatMap((entry) => setsIn(join(folder, entry.name)))
}

function sampleOf(files: readonly string[]): readonly string[] {
  const wanted = values.sample === undefined ? files.length : wholeNumber('--sample', values.sample)
  if (wanted >= files.length) return files
  return Array.from(
    { length: wanted },
    (_, index) => files[Math.floor((index * files.length) / wanted)] ?? '',
  )
}

function run(set: string, file: string, instance: ProjectInstance, best: BestKnown, limit: Limit): Row {
  const begin = performance.now()
  const problem = problemOf(instance)
  const bound = boundOf(problem)
  const search = createSearch(problem, Number(values.seed))
  const isBest = (): boolean => (search.weight() ?? Number.POSITIVE_INFINITY) <= bound.cents
  const slice = 32
  let schedules = 0
  while (schedules < limit.schedules && !isBest() && performance.now() - begin < limit.milliseconds) {
    const next = Math.min(slice, limit.schedules - schedules)
    search.step(next)
    schedules += next
  }
  const milliseconds = performance.now() - begin
  const starts = search.best()?.tasks.map((task) => task.start as number)
  return {
    set,
    instance: basename(file, extname(file)),
    found: starts && Math.max(...starts.map((start, task) => start + (instance.durations[task] ?? 0))),
    bound: bound.finish,
    best,
    criticalPath: criticalPathOf(instance),
    violations: starts === undefined ? 0 : countViolations(instance, starts),
    schedules,
    milliseconds,
  }
}

function runSet(folder: string, limit: Limit): readonly Row[] {
  const known = readBestKnown(folder)
  if (known === undefined)
    complain(`${folder} has no best_known.csv; only the critical path is compared with.`)
  const files = sampleOf(instanceFilesIn(folder))
  const rows: Row[] = []
  let unread = 0
  for (const [index, file] of files.entries()) {
    const text = readFileSync(join(folder, file), 'utf8')
    try {
      const instance = extname(file).toLowerCase() === '.sm' ? readSm(text) : readSch(text)
      const best = known?.get(instanceName(file)) ?? unknownBest
      rows.push(run(basename(folder), file, instance, best, limit))
    } catch (error) {
      unread++
      complain(`${file} is left out: ${error instanceof Error ? error.message : error}.`)
    }
    showProgress(`${basename(folder)}: ${index + 1} of ${files.length}`)
  }
  showProgress('')
  process.stdout.write(report(basename(folder), rows, unread))
  return rows
}

function complain(sentence: string): void {
  process.stderr.write(`${sentence}\n`)
}

/** One line that writes over itself; nothing where nobody is watching. */
function showProgress(text: string): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\x1b[K${text}`)
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, value) => sum + value, 0) / Math.max(1, numbers.length)
}

function percent(numbers: readonly number[], pick: (numbers: readonly number[]) => number): string {
  return numbers.length === 0 ? 'none to compare with' : `${pick(numbers).toFixed(3)} %`
}

/** What contradicts the list of best known values: then that list, the reading or the core is wrong. */
function isImpossible({ best, bound, found }: Row): boolean {
  if (best.isInfeasible) return found !== undefined
  if (best.value === undefined) return false
  return (best.isOptimal && (found ?? best.value) < best.value) || (bound ?? 0) > best.value
}

function report(set: string, rows: readonly Row[], unread: number): string {
  const feasible = rows.filter((row) => !row.best.isInfeasible)
  const solved = feasible.filter((row) => row.found !== undefined)
  const known = solved.filter((row) => row.best.value !== undefined)
  const above = (of: readonly Row[], base: (row: Row) => number | undefined): readonly number[] =>
    of.map((row) => {
      const from = base(row) ?? 0
      return from === 0 ? 0 : (100 * ((row.found ?? 0) - from)) / from
    })
  const aboveKnown = above(known, (row) => row.best.value)
  const aboveBound = above(solved, (row) => row.bound)
  const wrong = rows.filter(isImpossible)
  const lines = [
    `set                         ${set} (${rows.length} instances, ${rows.length - feasible.length} known infeasible${unread > 0 ? `, ${unread} not read` : ''})`,
    `solved                      ${solved.length} of ${feasible.length}`,
    `at best known               ${known.filter((row) => (row.found ?? 0) <= (row.best.value ?? 0)).length} of ${known.length}`,
    `mean above best known       ${percent(aboveKnown, mean)}`,
    `worst above best known      ${percent(aboveKnown, (all) => Math.max(...all))}`,
    `mean above critical path    ${percent(
      above(solved, (row) => row.criticalPath),
      mean,
    )}`,
    `mean above own bound        ${percent(aboveBound, mean)}`,
    `violations                  ${rows.reduce((sum, row) => sum + row.violations, 0)}`,
    `answers that cannot be      ${wrong.length}${wrong.length > 0 ? ` (${wrong.map((row) => row.instance).join(' ')})` : ''}`,
    `proved best by own bound    ${solved.filter((row) => row.found === row.bound).length}`,
    `mean time, schedules        ${mean(rows.map((row) => row.milliseconds)).toFixed(0)} ms, ${mean(rows.map((row) => row.schedules)).toFixed(0)}`,
  ]
  return `${lines.join('\n')}\n`
}

function writeCsv(path: string, rows: readonly Row[]): void {
  const head = 'set,instance,found,bound,best_known,critical_path,violations,schedules,milliseconds'
  const lines = rows.map((row) => {
    const cells = [row.set, row.instance, row.found ?? '', row.bound ?? '', row.best.value ?? '']
    return [...cells, row.criticalPath, row.violations, row.schedules, row.milliseconds.toFixed(1)].join(',')
  })
  writeFileSync(path, `${[head, ...lines].join('\n')}\n`)
}

function main(): void {
  try {
    if (positionals.length === 0) throw new Error(usage.trim())
    const limit = limitOf()
    wholeNumber('--seed', values.seed)
    const sets = positionals.flatMap((folder) => setsIn(resolve(folder)))
    if (sets.length === 0) throw new Error(`no .sm or .sch files in ${positionals.join(', ')}`)
    const rows = sets.flatMap((folder) => runSet(folder, limit))
    if (values.csv !== undefined) writeCsv(values.csv, rows)
  } catch (error) {
    complain(error instanceof Error ? error.message : `${error}`)
    process.exitCode = 2
  }
}

main()
