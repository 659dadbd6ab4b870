import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { basename, extname, join } from 'node:path'
import { parseArgs } from 'node:util'
import { createSearch } from '../../core/schedule/search.ts'
import {
  countViolations,
  criticalPathOf,
  type ProjectInstance,
  problemOf,
  readSch,
  readSm,
} from './project-files.ts'

/**
 * Runs the scheduling core over a folder of PSPLIB `.sm` or ProGen/max `.sch` files with a `best_known.csv` beside them.
 *   npm run bench:rcpsp -- <folder> [--limit 1s | --schedules 5000] [--sample 100] [--seed 1] [--csv out.csv]
 * `--sample N` takes about N files spread evenly over the folder. The search stops early only when its own bound is reached.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    limit: { type: 'string' },
    schedules: { type: 'string' },
    sample: { type: 'string' },
    seed: { type: 'string', default: '1' },
    csv: { type: 'string' },
  },
})

interface BestKnown {
  readonly value: number | undefined
  readonly isInfeasible: boolean
  readonly isOptimal: boolean
}

interface Row {
  readonly instance: string
  readonly found: number | undefined
  readonly bound: number | undefined
  readonly best: BestKnown
  readonly criticalPath: number
  readonly violations: number
  readonly schedules: number
  readonly milliseconds: number
}

function readBestKnown(folder: string): ReadonlyMap<string, BestKnown> {
  const lines = readFileSync(join(folder, 'best_known.csv'), 'utf8').trim().split(/\r?\n/).slice(1)
  return new Map(
    lines.map((line) => {
      const [instance = '', , best = '', status] = line.split(',')
      const value = best === '' ? undefined : Number(best)
      return [
        instance.toLowerCase(),
        { value, isInfeasible: status === 'infeasible', isOptimal: status === 'optimal' },
      ]
    }),
  )
}

function filesOf(folder: string): readonly string[] {
  const byNumber = new Intl.Collator('en', { numeric: true })
  const files = readdirSync(folder).filter((name) => ['.sm', '.sch'].includes(extname(name).toLowerCase()))
  files.sort((one, other) => byNumber.compare(one, other))
  const wanted = values.sample === undefined ? files.length : Math.min(files.length, Number(values.sample))
  return Array.from(
    { length: wanted },
    (_, index) => files[Math.floor((index * files.length) / wanted)] ?? '',
  )
}

function secondsOf(limit: string): number {
  const match = /^([\d.]+)(ms|s)$/.exec(limit)
  if (match === null) throw new Error(`--limit wants a time like 1s or 200ms, not ${limit}`)
  return Number(match[1]) / (match[2] === 'ms' ? 1000 : 1)
}

function run(file: string, instance: ProjectInstance, best: BestKnown): Row {
  const limit =
    values.schedules === undefined ? secondsOf(values.limit ?? '1s') * 1000 : Number.POSITIVE_INFINITY
  const most = values.schedules === undefined ? Number.POSITIVE_INFINITY : Number(values.schedules)
  const begin = performance.now()
  const search = createSearch(problemOf(instance), Number(values.seed))
  const slice = 32
  let schedules = 0
  while (schedules < most && !search.isFinished() && performance.now() - begin < limit) {
    search.step(Math.min(slice, most - schedules))
    schedules += slice
  }
  const milliseconds = performance.now() - begin
  const plan = search.best()
  const starts = plan?.tasks.map((task) => task.start as number)
  return {
    instance: basename(file, extname(file)),
    found: plan?.value.finish,
    bound: search.bound()?.finish,
    best,
    criticalPath: criticalPathOf(instance),
    violations: starts === undefined ? 0 : countViolations(instance, starts),
    schedules: Math.min(schedules, most),
    milliseconds,
  }
}

function mean(numbers: readonly number[]): number {
  return numbers.reduce((sum, value) => sum + value, 0) / Math.max(1, numbers.length)
}

function report(folder: string, rows: readonly Row[]): void {
  const feasible = rows.filter((row) => !row.best.isInfeasible)
  const solved = feasible.filter((row) => row.found !== undefined)
  const above = (row: Row, base: number | undefined): number =>
    (100 * ((row.found ?? 0) - (base ?? 0))) / (base ?? 1)
  const known = solved.filter((row) => row.best.value !== undefined)
  const wrong = rows.filter((row) => {
    const isTooGood = row.best.isOptimal && row.found !== undefined && row.found < (row.best.value ?? 0)
    const isBoundHigh = row.best.value !== undefined && (row.bound ?? 0) > row.best.value
    return isTooGood || isBoundHigh || (row.best.isInfeasible && row.found !== undefined)
  })
  const percent = (value: number): string => `${value.toFixed(3)} %`
  const lines = [
    `set                         ${basename(folder)} (${rows.length} instances, ${rows.length - feasible.length} known infeasible)`,
    `solved                      ${solved.length} of ${feasible.length}`,
    `at best known               ${known.filter((row) => (row.found ?? 0) <= (row.best.value ?? 0)).length} of ${known.length}`,
    `mean above best known       ${percent(mean(known.map((row) => above(row, row.best.value))))}`,
    `worst above best known      ${percent(Math.max(0, ...known.map((row) => above(row, row.best.value))))}`,
    `mean above critical path    ${percent(mean(solved.map((row) => above(row, row.criticalPath))))}`,
    `violations                  ${rows.reduce((sum, row) => sum + row.violations, 0)}`,
    `answers that cannot be      ${wrong.length}${wrong.length > 0 ? ` (${wrong.map((row) => row.instance).join(' ')})` : ''}`,
    `proved best by own bound    ${solved.filter((row) => row.found === row.bound).length}`,
    `mean time, schedules        ${mean(rows.map((row) => row.milliseconds)).toFixed(0)} ms, ${mean(rows.map((row) => row.schedules)).toFixed(0)}`,
  ]
  process.stdout.write(`${lines.join('\n')}\n`)
}

function writeCsv(path: string, rows: readonly Row[]): void {
  const head = 'instance,found,bound,best_known,critical_path,violations,schedules,milliseconds'
  const lines = rows.map((row) => {
    const cells = [row.instance, row.found ?? '', row.bound ?? '', row.best.value ?? '', row.criticalPath]
    return [...cells, row.violations, row.schedules, row.milliseconds.toFixed(1)].join(',')
  })
  writeFileSync(path, `${[head, ...lines].join('\n')}\n`)
}

function main(): void {
  const folder = positionals[0]
  if (folder === undefined) {
    process.stderr.write(
      'bench:rcpsp <folder> [--limit 1s | --schedules 5000] [--sample N] [--seed 1] [--csv file]\n',
    )
    process.exitCode = 2
    return
  }
  const known = readBestKnown(folder)
  const rows = filesOf(folder).map((file) => {
    const text = readFileSync(join(folder, file), 'utf8')
    const instance = extname(file).toLowerCase() === '.sm' ? readSm(text) : readSch(text)
    const best = known.get(basename(file, extname(file)).toLowerCase())
    return run(file, instance, best ?? { value: undefined, isInfeasible: false, isOptimal: false })
  })
  report(folder, rows)
  if (values.csv !== undefined) writeCsv(values.csv, rows)
}

main()
