import { type Job, records } from '../../core/project/job.ts'
import { writeJobFile } from '../../core/project/job-file.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import { createTakeOff, takeOff } from '../../core/quantities/take-off.ts'
import { feet, inches, lengthFromUnits } from '../../core/units/length.ts'
import { manyRooms } from './many-rooms.ts'

/**
 * Times the takeoff of a 300-room, 3,000-opening job and of one edit in it, as milliseconds and as ratios to `JSON.parse` of the same job
 * file in the same run, and how the cost grows with the number of rooms. Best of several
 * rounds, since other work on the machine only ever adds; full takeoffs start from records never seen before.
 *   npm run bench:takeoff
 */
const rounds = 12

function time<Input>(prepare: (round: number) => Input, run: (input: Input) => unknown): number {
  const times: number[] = []
  for (let round = 0; round < rounds; round++) {
    const input = prepare(round)
    const start = performance.now()
    run(input)
    times.push(performance.now() - start)
  }
  return Math.min(...times)
}

/** `repeats` takeoffs in one stretch, so that short ones are interrupted by other work as often as long ones. */
function fullTime(job: Job, repeats = 1): number {
  const elapsed = time(
    () => Array.from({ length: repeats }, () => structuredClone(job)),
    (jobs) => {
      for (const fresh of jobs) takeOff(fresh)
    },
  )
  return elapsed / repeats
}

/** A new ceiling height in a room in the middle of the house. */
function raiseCeiling(job: Job, round: number): Job {
  const room = records(job.rooms)[Math.floor(records(job.rooms).length / 2)] as Job['rooms'][string]
  const ceiling = { kind: 'flat', height: lengthFromUnits(feet(9) + inches(round / 8)) } as const
  return { ...job, rooms: { ...job.rooms, [room.id]: { ...room, ceiling } } }
}

/** A door between two rooms slides along its wall. */
function slideDoor(job: Job, round: number): Job {
  const doors = records(job.openings).filter((opening) => opening.far !== null)
  const door = doors[Math.floor(doors.length / 2)] as Job['openings'][string]
  const offset = lengthFromUnits(door.offset + inches(round / 16))
  return { ...job, openings: { ...job.openings, [door.id]: { ...door, offset } } }
}

function editTime(job: Job, edit: (job: Job, round: number) => Job): number {
  const measure = createTakeOff()
  let last = measure(job)
  const elapsed = time(
    (round) => edit(job, round + 1),
    (changed) => {
      last = measure(changed)
      return last.byKey.get('ceiling:room-0')
    },
  )
  return elapsed
}

function show(name: string, milliseconds: number, parse: number, target: number): void {
  const ratio = milliseconds / parse
  const verdict = ratio <= target ? 'met' : 'MISSED'
  console.log(
    `${name.padEnd(24)} ${milliseconds.toFixed(2).padStart(8)} ms  ${ratio.toFixed(3).padStart(7)} x JSON.parse  (target ${target}: ${verdict})`,
  )
}

const job = manyRooms(300)
const problems = sketchProblems(job)
if (problems.length > 0) throw new Error(`the benchmark house has problems: ${problems[0]?.sentence}`)
const file = writeJobFile(job)
for (let round = 0; round < 3; round++) takeOff(structuredClone(job))

/** Parsed several times in one stretch, about as long as a takeoff takes. */
const parses = 5
const parse =
  time(
    () => file,
    (text) => {
      for (let index = 0; index < parses; index++) JSON.parse(text)
    },
  ) / parses
const counts = `${records(job.rooms).length} rooms, ${records(job.openings).length} openings, ${takeOff(job).surfaces.length} surfaces`
console.log(`${counts}; job file ${(file.length / 1e6).toFixed(2)} MB; Node ${process.version}`)
console.log(`${'JSON.parse'.padEnd(24)} ${parse.toFixed(2).padStart(8)} ms`)
show('full takeoff', fullTime(job), parse, 8)
show('edit: ceiling of a room', editTime(job, raiseCeiling), parse, 0.1)
show('edit: door slides', editTime(job, slideDoor), parse, 0.1)
show(
  'refusals of whole sketch',
  time(
    () => structuredClone(job),
    (fresh) => sketchProblems(fresh),
  ),
  parse,
  8,
)

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
