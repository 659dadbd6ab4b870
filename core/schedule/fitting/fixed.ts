import type { ScheduleProblem } from '../model.ts'
import { type Axis, commonWindows, tickOf, type Windows, windowsWithout } from './axis.ts'
import { bitsOf, doneTask, pinnedTask, startedTask, ticksUp } from './net.ts'

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
  axis: Axis,
  whole: readonly Windows[],
  personIndex: ReadonlyMap<string, number>,
  roomIndex: ReadonlyMap<string, number>,
  parts: Parts,
): readonly FixedPiece[] {
  const laid: FixedPiece[] = []
  const free = whole.slice()
  for (const kind of [doneTask, startedTask, pinnedTask]) {
    for (const [index, task] of problem.tasks.entries()) {
      const { state } = task
      if (parts.kind[index] !== kind || state.kind === 'open') continue
      const known = bitsOf(
        (state.people ?? []).filter((id) => personIndex.has(id)),
        personIndex,
      )
      const able = (parts.ablePeople[index] as number) || 1
      const team = known === 0 && task.crew.max > 0 && problem.people.length > 0 ? able & -able : known
      const about = {
        task: index,
        team,
        room: task.room === null ? -1 : (roomIndex.get(task.room) ?? -1),
        product: parts.product[index] as number,
      }
      if (state.kind === 'done') {
        const start = Math.floor((state.start - axis.origin) / axis.grid)
        const end = tickOf(axis, state.end)
        laid.push({ ...about, start, end, pieces: [], isFact: true, isMisfit: false })
        continue
      }
      const people = [...free.keys()].filter((person) => (team >> person) & 1)
      const windows = people
        .map((person) => free[person] as Windows)
        .reduce((one, other) => commonWindows(axis, one, other), allWindows(axis))
      const size = Math.max(1, people.length)
      const lead = isFirstOfAll(laid, team, kind) ? 0 : parts.moving + parts.changing
      const length = lead + ticksUp((parts.work[index] as number) / size, axis.grid)
      const from = state.kind === 'pinned' ? tickOf(axis, state.start) : axis.firstTick
      const pieces = pieces_(windows, from, length)
      const isMisfit = pieces.length === 0 || (kind === pinnedTask && pieces[0]?.from !== from)
      const used = isMisfit ? [{ from, to: from + length }] : pieces
      for (const person of people) free[person] = windowsWithout(axis, free[person] as Windows, used)
      const start =
        kind === startedTask ? Math.floor((state.start - axis.origin) / axis.grid) : (used[0]?.from ?? from)
      laid.push({ ...about, start, end: used.at(-1)?.to ?? from, pieces: used, isFact: false, isMisfit })
    }
  }
  return laid
}

/** What somebody is at goes on first thing, without moving in. */
function isFirstOfAll(laid: readonly FixedPiece[], team: number, kind: number): boolean {
  return kind === startedTask && !laid.some((each) => !each.isFact && (each.team & team) !== 0)
}

function allWindows(axis: Axis): Windows {
  const one = (value: number): Int32Array => Int32Array.of(value)
  return {
    from: one(axis.firstTick),
    to: one(axis.horizon),
    stretchLast: one(0),
    firstOfDay: new Int32Array(axis.dayStart.length),
  }
}

/** Length laid into windows from a tick on, over breaks and nights alike; empty when there is not that much time. */
function pieces_(windows: Windows, from: number, length: number): readonly Piece[] {
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
