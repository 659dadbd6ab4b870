import { type Job, records } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import { createTakeOff, takeOff } from '../../core/quantities/take-off.ts'
import { feet, inches, lengthFromUnits } from '../../core/units/length.ts'
import { manyRooms } from './many-rooms.ts'

/**
 * Times the takeoff of a 300-room, 3,000-opening job and of one edit in it, as milliseconds and as ratios to `JSON.parse` of the same job
 * file in the same run, and how the cost grows with the number of rooms. Parsing and measuring take turns, so that other work on
 * the machine slows both; the ratio is the median over all turns. Full takeoffs start from records never seen before.
 *   npm run bench:takeoff
 */
const rounds = 25

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number
}

function elapsed(run: () => unknown): number {
  const start = performance.now()
  run()
  return performance.now() - start
}

interface Timing {
  /** Milliseconds, median and best. */
  readonly median: number
  readonly best: number
  /** Median of the ratios to parsing in the same turn. */
  readonly ratio: number
}

/** `parses` parsings before each run, about as long as the run itself. */
function compare<Input>(
  file: string,
  parses: number,
  prepare: (round: number) => Input,
  run: (input: Input) => unknown,
): Timing {
  const times: number[] = []
  const ratios: number[] = []
  for (let round = 0; round < rounds; round++) {
    const input = prepare(round)
    const parse =
      elapsed(() => {
        for (let index = 0; index < parses; index++) JSON.parse(file)
      }) / parses
    const time = elapsed(() => run(input))
    times.push(time)
    ratios.push(time / parse)
  }
  return { median: median(times), best: Math.min(...times), ratio: median(ratios) }
}

/** `repeats` takeoffs in one stretch, so that small jobs are interrupted by other work as often as large ones. */
function fullTime(job: Job, repeats: number): number {
  const times = Array.from({ length: rounds }, () => {
    const jobs = Array.from({ length: repeats }, () => structuredClone(job))
    return elapsed(() => jobs.map(takeOff))
  })
  return median(times) / repeats
}

/** A new ceiling height in a room in the middle of the house. */
function raiseCeiling(job: Job, round: number): Job {
  const room = records(job.rooms)[Math.floor(records(job.rooms).length / 2)] as Job['rooms'][string]
  const ceiling = { kind: 'flat', height: lengthFromUnits(feet(9) + inches(round / 16)) } as const
  return { ...job, rooms: { ...job.rooms, [room.id]: { ...room, ceiling } } }
}

/** A door between two rooms slides along its wall. */
function slideDoor(job: Job, round: number): Job {
  const doors = records(job.openings).filter((opening) => opening.far !== null)
  const door = doors[Math.floor(doors.length / 2)] as Job['openings'][string]
  const offset = lengthFromUnits(door.offset + inches(round / 64))
  return { ...job, openings: { ...job.openings, [door.id]: { ...door, offset } } }
}

/** Edits come several in a turn, so that what parsing leaves to be cleared away does not fall on a single one. */
const editsInTurn = 10

function editTiming(file: string, job: Job, edit: (job: Job, round: number) => Job): Timing {
  const measure = createTakeOff()
  measure(job)
  const prepare = (round: number) =>
    Array.from({ length: editsInTurn }, (_, index) => edit(job, 1 + round * editsInTurn + index))
  const timing = compare(file, 1, prepare, (jobs) => jobs.map(measure))
  return {
    median: timing.median / editsInTurn,
    best: timing.best / editsInTurn,
    ratio: timing.ratio / editsInTurn,
  }
}

function show(name: string, timing: Timing, target: number): void {
  const times = `${timing.median.toFixed(2).padStart(8)} ms (best ${timing.best.toFixed(2)})`
  const verdict = timing.ratio <= target ? 'met' : 'MISSED'
  console.log(
    `${name.padEnd(26)} ${times.padEnd(30)} ${timing.ratio.toFixed(3).padStart(7)} x JSON.parse  (target ${target}: ${verdict})`,
  )
}

const job = manyRooms(300)
const problems = sketchProblems(job)
if (problems.length > 0) throw new Error(`the benchmark house has problems: ${problems[0]?.sentence}`)
const file = writeJobFile(job)
for (let round = 0; round < 3; round++) takeOff(structuredClone(job))

const counts = `${records(job.rooms).length} rooms, ${records(job.openings).length} openings, ${takeOff(job).surfaces.length} surfaces`
console.log(`${counts}; job file ${(file.length / 1e6).toFixed(2)} MB; Node ${process.version}`)
show(
  'JSON.parse',
  compare(file, 5, () => file, JSON.parse),
  1.5,
)
const fresh = () => structuredClone(job)
show('full takeoff', compare(file, 5, fresh, takeOff), 8)
show('full, every line worded', compare(file, 5, fresh, wordAll), 20)
show('edit: ceiling of a room', editTiming(file, job, raiseCeiling), 0.1)
show('edit: door slides', editTiming(file, job, slideDoor), 0.1)
show('refusals of the sketch', compare(file, 5, fresh, sketchProblems), 8)

/** How every figure came about is worded only when asked for; this asks for all of them. */
function wordAll(job: Job): number {
  return takeOff(job).surfaces.reduce((sum, surface) => sum + surface.derivation.length, 0)
}

const sizes = [10, 30, 100, 300, 1000]
const costs = sizes.map((size) => fullTime(manyRooms(size), Math.round(1000 / size)))
sizes.forEach((size, index) => {
  const cost = costs[index] as number
  console.log(
    `${String(size).padStart(5)} rooms ${cost.toFixed(2).padStart(9)} ms ${((cost / size) * 1000).toFixed(1).padStart(8)} us a room`,
  )
})
console.log(`slope of log cost over log rooms, 10 to 1,000: ${slope(sizes, costs).toFixed(3)} (1 is linear)`)

/** Least squares through the logarithms. */
function slope(rooms: readonly number[], times: readonly number[]): number {
  const xs = rooms.map(Math.log)
  const ys = times.map(Math.log)
  const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length
  const [x, y] = [mean(xs), mean(ys)]
  const over = xs.reduce((sum, each, index) => sum + (each - x) * ((ys[index] as number) - y), 0)
  return over / xs.reduce((sum, each) => sum + (each - x) ** 2, 0)
}
