import { isBegun, minutesUntilUsable, type ScheduleProblem, type Task } from '../model.ts'
import { type Arcs, buildArcs } from './arcs.ts'
import {
  buildAxis,
  commonWindows,
  personWindows,
  type TickAxis,
  tickOf,
  type Windows,
  windowsWithout,
  workingDaysBefore,
} from './axis.ts'
import { conflictsOf } from './conflicts.ts'
import { type FixedPiece, layFixed } from './fixed.ts'
import {
  type Conflict,
  doneTask,
  none,
  openTask,
  type PeopleBits,
  pinnedTask,
  startedTask,
  ticksUp,
} from './numbers.ts'

/** The problem as the decoder reads it: tasks, rooms and people by index, times in ticks. */
export interface Net {
  readonly problem: ScheduleProblem
  readonly axis: TickAxis
  readonly count: number
  readonly kind: Uint8Array
  /** Person-minutes to do. */
  readonly work: Float64Array
  readonly mostPeople: Uint8Array
  /** Works without anybody. */
  readonly unmanned: Uint8Array
  readonly room: Int16Array
  /** May stop over a night. */
  readonly natural: Uint8Array
  readonly smallestPart: Int32Array
  readonly release: Int32Array
  readonly product: Int16Array
  /** Leaves something wet. */
  readonly wet: Uint8Array
  /** How long after its end it keeps its room out of use. */
  readonly tail: Int32Array
  /** Who has all skills it asks for, and who has one of them at least. */
  readonly ablePeople: Int32Array
  readonly helpers: Int32Array
  readonly arcs: Arcs
  /** Tasks each may not overlap with, and how much longer both then last. */
  readonly conflicts: readonly (readonly Conflict[])[]
  /** Daily hours that a task and what it leaves behind may not touch; null where any will do. */
  readonly quiet: readonly (Quiet | null)[]
  readonly demands: readonly (readonly { readonly resource: number; readonly amount: number }[])[]
  readonly capacities: readonly number[]
  readonly people: readonly NetPerson[]
  readonly rooms: readonly NetRoom[]
  /** Days before each day on which somebody could work. */
  readonly workingDays: Int32Array
  /** When each task begins in the plan that is to be kept; `none` where that does not say. */
  readonly keptStart: Int32Array
  /** Tasks that are not free, where they lie. */
  readonly fixed: readonly FixedPiece[]
  readonly moving: number
  readonly changing: number
  readonly windowsOf: (team: PeopleBits) => Windows
}

interface Quiet {
  readonly tail: number
  /** Ticks of each day, over midnight when `from` > `to`. */
  readonly from: number
  readonly to: number
}

interface NetPerson {
  /** Their hours, less what they do at fixed times. */
  readonly windows: Windows
  readonly hours: Windows
  /** Cents for a tick. */
  readonly price: number
  readonly fixed: readonly FixedPiece[]
}

export interface NetRoom {
  /** More than one may be in it at once. */
  readonly most: number
  readonly centsPerDay: number
  /** Begun and given back meanwhile. */
  readonly centsPerDayWaiting: number
  readonly setUpAgain: number
  /** Who may lead it; 0 where nobody has all it asks for, or anybody may come and go. */
  readonly leads: PeopleBits
  /** Before this tick it has to be given back. */
  readonly backBy: number
  /** Promised back. */
  readonly promised: number
  readonly tasks: readonly number[]
}

/** The problem as columns of whole numbers, one place a task, person or room. Needs a problem without faults. */
export function buildNet(problem: ScheduleProblem): Net {
  const axis = buildAxis(problem)
  const { people } = problem
  const roomIndex = new Map(problem.rooms.map(({ id }, index) => [id, index]))
  const columns = { ...taskColumns(problem, axis, roomIndex), ...limitsOf(problem, axis) }
  const { room, ablePeople } = columns
  const bare = { problem, axis, ...columns }
  const rooms = problem.rooms.map((each, index) => netRoom(problem, axis, each, index, room, ablePeople))
  const whole = people.map((person) => personWindows(problem, axis, person))
  const personIndex = new Map(people.map(({ id }, index) => [id, index]))
  const fixed = layFixed(problem, axis, whole, personIndex, roomIndex, bare)
  const netPeople = people.map(({ centsPerHour }, index) =>
    netPerson(axis, whole[index] as Windows, (centsPerHour * axis.grid) / 60, fixedOf(fixed, index)),
  )
  const workingDays = workingDaysBefore(axis, whole)
  return {
    ...bare,
    rooms,
    fixed,
    workingDays,
    people: netPeople,
    windowsOf: teamWindows(problem, axis, netPeople),
  }
}

/** What is said of each task, in the order of the problem. */
function taskColumns(problem: ScheduleProblem, axis: TickAxis, roomIndex: ReadonlyMap<string, number>) {
  const { tasks, people, gridMinutes: grid } = problem
  const ticks = (minutes: number | null): number => (minutes === null ? none : ticksUp(minutes, grid))
  const products = [...new Set(tasks.map(({ product }) => product))].filter((product) => product !== null)
  const skilled = (isEnough: (has: (skill: string) => boolean) => boolean): PeopleBits =>
    people.reduce((bits, { skills }, index) => {
      return isEnough((skill) => skills.includes(skill)) ? bits | (1 << index) : bits
    }, 0)
  const kinds = { open: openTask, pinned: pinnedTask, started: startedTask, done: doneTask } as const
  return {
    count: tasks.length,
    kind: Uint8Array.from(tasks, ({ state }) => kinds[state.kind]),
    work: Float64Array.from(tasks, ({ state, work }) =>
      state.kind === 'started' ? state.remainingWork : work,
    ),
    mostPeople: Uint8Array.from(tasks, ({ crew }) => crew.max),
    unmanned: Uint8Array.from(tasks, ({ crew, work }) => (crew.max === 0 || work === 0 ? 1 : 0)),
    room: Int16Array.from(tasks, (task) => (task.room === null ? none : (roomIndex.get(task.room) ?? none))),
    natural: Uint8Array.from(tasks, ({ breaking }) => (breaking === 'natural' ? 1 : 0)),
    smallestPart: Int32Array.from(tasks, ({ smallestPart }) => ticks(smallestPart)),
    release: Int32Array.from(tasks, ({ earliestStart }) =>
      Math.max(axis.firstTick, earliestStart === null ? 0 : tickOf(axis, earliestStart)),
    ),
    product: Int16Array.from(tasks, ({ product }) => (product === null ? none : products.indexOf(product))),
    wet: Uint8Array.from(tasks, ({ effects }) => (effects.touchDry === null ? 0 : 1)),
    tail: Int32Array.from(tasks, ({ effects }) => ticks(minutesUntilUsable(effects))),
    ablePeople: Int32Array.from(tasks, (task) => skilled((has) => task.skills.every(has))),
    helpers: Int32Array.from(tasks, (task) =>
      task.skills.length === 0 ? -1 : skilled((has) => task.skills.some(has)),
    ),
  }
}

/** What ties tasks to one another, to hours and to things of which there are few. */
function limitsOf(problem: ScheduleProblem, axis: TickAxis) {
  const { tasks, gridMinutes: grid, spending } = problem
  return {
    arcs: buildArcs(problem),
    conflicts: conflictsOf(problem, axis),
    quiet: tasks.map((task) => quietOf(problem, task)),
    demands: tasks.map(({ demands }) =>
      demands.map(({ resource, amount }) => ({
        resource: problem.resources.findIndex(({ id }) => id === resource),
        amount,
      })),
    ),
    keptStart: keptStarts(problem, axis),
    capacities: problem.resources.map(({ capacity }) => capacity),
    moving: ticksUp(spending.moving, grid),
    changing: ticksUp(spending.changingProduct, grid),
  }
}

function fixedOf(fixed: readonly FixedPiece[], person: number): readonly FixedPiece[] {
  return fixed.filter(({ team }) => (team >> person) & 1)
}

/** @param price cents for a tick */
function netPerson(axis: TickAxis, hours: Windows, price: number, own: readonly FixedPiece[]): NetPerson {
  return {
    hours,
    windows: windowsWithout(
      axis,
      hours,
      own.flatMap(({ pieces }) => pieces),
    ),
    price,
    fixed: own.toSorted((one, other) => one.start - other.start),
  }
}

function keptStarts({ tasks, keeping }: ScheduleProblem, axis: TickAxis): Int32Array {
  const starts = new Map(keeping.tasks.map(({ task, start }) => [task, tickOf(axis, start)]))
  return Int32Array.from(tasks, ({ id }) => starts.get(id) ?? none)
}

function netRoom(
  problem: ScheduleProblem,
  axis: TickAxis,
  each: ScheduleProblem['rooms'][number],
  index: number,
  room: Int16Array,
  able: Int32Array,
): NetRoom {
  const tasks = Array.from(room.keys()).filter((task) => room[task] === index)
  const open = tasks.filter((task) => problem.tasks[task]?.state.kind === 'open')
  const leads = open.reduce((bits, task) => bits & (able[task] as number), (1 << problem.people.length) - 1)
  const promised = problem.keeping.rooms.find((kept) => kept.room === each.id)
  return {
    most: each.peopleAtOnce ?? 30,
    centsPerDay: each.centsPerDay,
    centsPerDayWaiting: each.centsPerDayWaiting,
    setUpAgain: each.setUpAgain,
    leads: problem.rules.leadAndOneMore ? leads : 0,
    backBy:
      problem.rules.roomBackInTime && each.backBy !== null
        ? Math.floor((each.backBy - axis.origin) / axis.grid)
        : axis.horizon,
    promised: promised === undefined ? axis.horizon : Math.floor((promised.by - axis.origin) / axis.grid),
    tasks,
  }
}

/** Hours of sleep where fumes reach a bedroom beside, and hours in which the household needs a room that the task closes. */
function quietOf({ rooms, rules, gridMinutes: grid }: ScheduleProblem, task: Task): Quiet | null {
  const { fumesFor, closedFor } = task.effects
  const own = rooms.find(({ id }) => id === task.room)
  if (own === undefined || isBegun(task)) return null
  const isNearSleep = rooms.some(
    (other) =>
      other !== own && other.sleeping && (other.openTo.includes(own.id) || own.openTo.includes(other.id)),
  )
  const sleep = rules.noFumesWhileSleeping
  if (sleep !== null && fumesFor !== null && isNearSleep) {
    return { tail: ticksUp(fumesFor, grid), from: sleep.from / grid, to: sleep.to / grid }
  }
  if (!rules.roomBackInTime || own.neededDaily === null || closedFor === null) return null
  return { tail: ticksUp(closedFor, grid), from: own.neededDaily.from / grid, to: own.neededDaily.to / grid }
}

/** Hours of people together, worked out when a team is first thought of. */
function teamWindows(
  problem: ScheduleProblem,
  axis: TickAxis,
  people: readonly NetPerson[],
): (team: PeopleBits) => Windows {
  const known = new Map<PeopleBits, Windows>()
  function windowsOf(team: PeopleBits): Windows {
    const found = known.get(team)
    if (found !== undefined) return found
    const members = people.filter((_, index) => (team >> index) & 1)
    const [first, ...others] = members.map(({ windows }) => windows)
    const windows =
      first === undefined
        ? siteItself(problem, axis)
        : others.reduce((common, next) => commonWindows(axis, common, next), first)
    known.set(team, windows)
    return windows
  }
  return windowsOf
}

/** Work that needs nobody goes on whenever the site is open. */
function siteItself(problem: ScheduleProblem, axis: TickAxis): Windows {
  const everyHour = { week: problem.clock.kind === 'site' ? problem.clock.siteHours : [], breaks: [] }
  const nobody = { id: '', skills: [], daysOff: [], partDays: [], busy: [], centsPerHour: 0, ...everyHour }
  return personWindows(
    { ...problem, rules: { ...problem.rules, dailyChores: null, alarmsRestoredDaily: null } },
    axis,
    nobody as unknown as ScheduleProblem['people'][number],
  )
}
