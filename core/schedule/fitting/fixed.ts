import type { ScheduleProblem, Task } from '../model.ts'
import { commonWindows, type TickAxis, tickOf, type Windows, windowsWithout } from './axis.ts'
import { bitsOf, countBits, doneTask, none, pinnedTask, startedTask, ticksUp } from './numbers.ts'

/** Work from one tick to another. */
export interface Piece {
  readonly from: number
  readonly to: number
}

/** A task that is done, under way or pinned, and where it lies. */
export interface FixedPiece {
  readonly task: number
  readonly team: number
  readonly room: number
  readonly product: number
  readonly start: number
  readonly end: number
  /** Facts have one, which nobody is paid for any more. */
  readonly pieces: readonly Piece[]
  readonly isFact: boolean
  /** A pin that the hours of its people do not allow; it lies there in one piece for the judge to say so. */
  readonly isMisfit: boolean
}

interface Parts {
  readonly kind: Uint8Array
  readonly work: Float64Array
  readonly product: Int16Array
  readonly ablePeople: Int32Array
  readonly moving: number
  readonly changing: number
}

/** Places what is not free: facts where they were, work under way from now on, pins at their moment with time to move in. */
export function layFixed(
  problem: ScheduleProblem,
  axis: TickAxis,
  whole: readonly Windows[],
  personIndex: ReadonlyMap<string, number>,
  roomIndex: ReadonlyMap<string, number>,
  parts: Parts,
): readonly FixedPiece[] {
  const laid: FixedPiece[] = []
  const free = whole.slice()
  for (const kind of [doneTask, startedTask, pinnedTask]) {
    for (const [index, task] of problem.tasks.entries()) {
      if (parts.kind[index] !== kind || task.state.kind === 'open') continue
      const room = task.room === null ? none : (roomIndex.get(task.room) ?? none)
      const about = { task: index, room, product: parts.product[index] as number }
      const teams = teamsFor(problem, task, personIndex, parts.ablePeople[index] as number)
      if (task.state.kind === 'done') {
        const start = Math.floor((task.state.start - axis.origin) / axis.grid)
        const end = tickOf(axis, task.state.end)
        laid.push({ ...about, team: teams[0] ?? 0, start, end, pieces: [], isFact: true, isMisfit: false })
        continue
      }
      const work = parts.work[index] as number
      const tried = teams.map((team) => {
        const lead = isFirstOfAll(laid, team, kind) ? 0 : parts.moving + parts.changing
        return layOne(axis, free, task, team, lead + ticksUp(work / Math.max(1, countBits(team)), axis.grid))
      })
      const best = tried.find(({ isMisfit }) => !isMisfit) ?? tried[0]
      if (best === undefined) continue
      for (const person of free.keys())
        if ((best.team >> person) & 1)
          free[person] = windowsWithout(axis, free[person] as Windows, best.pieces)
      laid.push({ ...about, ...best, isFact: false })
    }
  }
  return laid
}

/** Who may do a task at a fixed time: those named, else those of the plan that is kept, else anybody able, one by one. */
function teamsFor(
  { people, keeping }: ScheduleProblem,
  { id, state, crew }: Task,
  personIndex: ReadonlyMap<string, number>,
  able: number,
): readonly number[] {
  const known = (names: readonly string[]): number =>
    bitsOf(
      names.filter((name) => personIndex.has(name)),
      personIndex,
    )
  const named = state.kind === 'open' ? 0 : known(state.people ?? [])
  if (named !== 0 || crew.max === 0 || people.length === 0) return [named]
  const kept = known(keeping.tasks.find(({ task }) => task === id)?.people ?? [])
  const alone = [...people.keys()].filter((person) => (able >> person) & 1).map((person) => 1 << person)
  return [...(kept === 0 ? [] : [kept]), ...alone, ...(alone.length === 0 ? [1] : [])]
}

function layOne(axis: TickAxis, free: readonly Windows[], { state }: Task, team: number, length: number) {
  const windows = free
    .filter((_, person) => (team >> person) & 1)
    .reduce((one, other) => commonWindows(axis, one, other), allWindows(axis))
  const isPinned = state.kind === 'pinned'
  const from = isPinned ? tickOf(axis, state.start) : axis.firstTick
  const found = layFrom(windows, from, length)
  const isMisfit = found.length === 0 || (isPinned && found[0]?.from !== from)
  const pieces = isMisfit ? [{ from, to: from + length }] : found
  const start = state.kind === 'started' ? Math.floor((state.start - axis.origin) / axis.grid) : from
  return { team, pieces, isMisfit, start, end: pieces.at(-1)?.to ?? from }
}

/** What somebody is at goes on first thing, without moving in. */
function isFirstOfAll(laid: readonly FixedPiece[], team: number, kind: number): boolean {
  return kind === startedTask && !laid.some((each) => !each.isFact && (each.team & team) !== 0)
}

function allWindows(axis: TickAxis): Windows {
  const one = (value: number): Int32Array => Int32Array.of(value)
  return {
    from: one(axis.firstTick),
    to: one(axis.horizon),
    stretchLast: one(0),
    firstOfDay: new Int32Array(axis.dayStart.length),
  }
}

/** Length laid into windows from a tick on, over breaks and nights alike; empty when there is not that much time. */
function layFrom(windows: Windows, from: number, length: number): readonly Piece[] {
  const pieces: Piece[] = []
  let left = length
  for (let at = 0; left > 0 && at < windows.from.length; at++) {
    const begin = Math.max(from, windows.from[at] as number)
    const end = Math.min(windows.to[at] as number, begin + left)
    if (begin >= end) continue
    pieces.push({ from: begin, to: end })
    left -= end - begin
  }
  return left === 0 ? pieces : []
}
