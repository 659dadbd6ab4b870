import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { stepMinutes } from '../../core/price/labour.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { boundOf } from '../../core/schedule/bounds/bounds.ts'
import type { MinutesByStep } from '../../core/schedule/job/step-facts.ts'
import { tasksFromSpecification } from '../../core/schedule/job/tasks-from-specification.ts'
import { buildSiteNet } from '../../core/schedule/net/build-site-net.ts'
import { propagateHeads } from '../../core/schedule/net/heads.ts'
import { startPlanning } from '../../core/schedule/plan-job.ts'
import { planFromPlacements } from '../../core/schedule/site/site-plan.ts'
import { createSiteSearch } from '../../core/schedule/site/site-search.ts'
import { validateProblem } from '../../core/schedule/validate.ts'
import { verifyPlan } from '../../core/schedule/verify.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Specification } from '../../core/specification/types.ts'

/**
 * Times the first complete, judged plan of a job from its specification and minutes on, and each stage on the way to it.
 * Cold is the very first run in a fresh process (median of several processes), warm the median of later runs in one. Parsing the job file
 * takes turns with the rest, so that other work on the machine slows both; the ratio is warm, median over all turns. Processor time
 * leaves other work out, but has the compiler's and the collector's own threads in it.
 *   npm run bench:plan [-- <job.json>]
 */
const [path = join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json'), part] =
  process.argv.slice(2)
const text = readFileSync(path, 'utf8')
const coldProcesses = 7
const warmUps = 10
const rounds = 25

interface Input {
  readonly job: Job
  readonly specification: Specification
  readonly minutes: MinutesByStep
}

function readInput(text: string): Input {
  const read = readJobFile(text)
  if (!read.ok) throw new Error(read.problem.sentence)
  const job = read.value
  const specification = specify(job, takeOff(job))
  return {
    job,
    specification,
    minutes: new Map(specification.steps.map((step) => [step.key, stepMinutes(job, step)])),
  }
}

type Times = Readonly<Record<string, number>>
const parsing = 'JSON.parse of the job file'

function parsingTime(): number {
  const start = performance.now()
  JSON.parse(text)
  return performance.now() - start
}

/** As the program does it: started, one attempt after the other until there is a plan, judged. */
function firstPlanTime({ job, specification, minutes }: Input): Times {
  const start = performance.now()
  const startCpu = process.cpuUsage()
  const started = startPlanning(job, specification, minutes, 1)
  if (!started.ok) throw new Error(started.problem.sentence)
  while (!started.value.step(1) && !started.value.isFinished());
  const plan = started.value.current()
  const time = performance.now() - start
  const { user, system } = process.cpuUsage(startCpu)
  if (!plan.ok) throw new Error(plan.problem.sentence)
  if (plan.value.violations.length > 0) throw new Error('the first plan breaks a rule')
  return {
    [parsing]: parsingTime(),
    'first complete plan': time,
    '  in processor time': (user + system) / 1000,
  }
}

/** The same in parts, and the proof that follows the first plan. Milliseconds. */
function stageTimes({ job, specification, minutes }: Input): Times {
  const times: Record<string, number> = { [parsing]: parsingTime() }
  function timed<Result>(name: string, run: () => Result): Result {
    const start = performance.now()
    const result = run()
    times[name] = performance.now() - start
    return result
  }
  const { problem } = timed('  tasks from specification', () =>
    tasksFromSpecification(job, specification, minutes),
  )
  timed('  validate', () => validateProblem(problem))
  const net = timed('  net', () => buildSiteNet(problem))
  const heads = timed('  heads', () => propagateHeads(net))
  if (heads.kind !== 'heads') throw new Error('there can be no plan')
  const search = timed('  decoder', () => createSiteSearch(net, 1, heads.end, () => false))
  timed('  decodings to the first plan', () => {
    while (!search.step());
  })
  const plan = timed('  plan in words', () => planFromPlacements(net, search.best, search.bestValue))
  timed('  judge', () => verifyPlan(problem, plan))
  timed('bound, after the first plan', () => boundOf(net, heads, plan.value.finish))
  return times
}

function median(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[Math.floor(values.length / 2)] as number
}

function medians(runs: readonly Times[]): Times {
  const names = Object.keys(runs[0] ?? {})
  return Object.fromEntries(names.map((name) => [name, median(runs.map((run) => run[name] as number))]))
}

/** The whole and the parts are first runs of their own, so each has its process. */
function coldTimes(which: 'whole' | 'stages'): Times {
  const runs = Array.from({ length: coldProcesses }, (): Times => {
    const child = spawnSync(process.execPath, [import.meta.filename, path, which], { encoding: 'utf8' })
    if (child.status !== 0) throw new Error(child.stderr)
    return JSON.parse(child.stdout)
  })
  return medians(runs)
}

function show(which: 'whole' | 'stages', run: () => Times): void {
  const cold = coldTimes(which)
  for (let round = 0; round < warmUps; round++) run()
  const runs = Array.from({ length: rounds }, run)
  for (const [name, time] of Object.entries(medians(runs))) {
    const ratio = median(runs.map((each) => (each[name] as number) / (each[parsing] as number)))
    const cells = [(cold[name] as number).toFixed(1), time.toFixed(2), ratio.toFixed(1)]
    console.log(name.padEnd(30) + cells.map((cell) => cell.padStart(11)).join(''))
  }
}

function report(input: Input): void {
  const { tasks } = tasksFromSpecification(input.job, input.specification, input.minutes).problem
  console.log(`${input.specification.steps.length} steps, ${tasks.length} tasks; Node ${process.version}`)
  console.log(`${' '.repeat(30)}    cold ms    warm ms  x parsing`)
  show('whole', () => firstPlanTime(input))
  show('stages', () => stageTimes(input))
}

const input = readInput(text)
if (part === undefined) report(input)
else console.log(JSON.stringify(part === 'whole' ? firstPlanTime(input) : stageTimes(input)))
