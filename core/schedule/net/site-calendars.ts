import type { Axis, Span } from '../axis.ts'
import type { ScheduleProblem } from '../model.ts'
import { countBits, type TeamCalendar } from './site-net.ts'

/** One calendar for each set of groups of people that may work together, and one for work that needs nobody where there is some. */
export function teamCalendars(axis: Axis, problem: ScheduleProblem): readonly TeamCalendar[] {
  const widest = problem.tasks.reduce((most, { crew, state }) => {
    return Math.max(most, crew.max, state.kind === 'open' ? 0 : new Set(state.people).size)
  }, 0)
  const least = problem.tasks.some((task) => task.crew.max === 0) ? 0 : 1
  const people = axis.groups.length - 1
  const calendars: TeamCalendar[] = []
  for (let subset = least; subset < 2 ** Math.min(people, 12); subset++) {
    const size = countBits(subset)
    if (size > widest || (people > 6 && size > 2)) continue
    const length = slotCount(axis, subset)
    if (length === 0) continue
    const equal = calendars.find(({ groups, slots }) => {
      return groups > 0 && (groups & subset) === groups && slots.length === length
    })
    calendars.push(
      equal === undefined
        ? teamCalendar(axis, subset, length)
        : { ...equal, groups: subset, peopleOfGroup: peopleOfGroups(axis, subset) },
    )
  }
  return calendars
}

/** Bits of `Span.groups` that must be set where the groups of a subset work: bit 0 of the subset is the first group of people. */
function workingBits(subset: number): number {
  return subset === 0 ? 1 : subset << 1
}

function peopleOfGroups(axis: Axis, subset: number): readonly number[] {
  return axis.groups.filter((_, group) => group > 0 && (subset >> (group - 1)) & 1)
}

/** How many slots all groups of a subset work. */
function slotCount({ spans }: Axis, subset: number): number {
  const needed = workingBits(subset)
  let count = 0
  for (let span = 0; span < spans.length; span++) {
    const { from, to, groups } = spans[span] as Span
    if ((groups & needed) === needed) count += to - from
  }
  return count
}

/** The `length` slots that all groups of the subset work (the site itself where it is empty), and where a pause would begin. */
export function teamCalendar(axis: Axis, subset: number, length: number): TeamCalendar {
  const { spans, slotTick, slotAt, dayOfTick } = axis
  const needed = workingBits(subset)
  const slots = new Int32Array(length)
  const ticks = new Int32Array(length)
  const runEnd = new Int32Array(length + 1)
  const dayEnd = new Int32Array(length + 1)
  const indexAt = new Int32Array(slotTick.length + 1)
  let count = 0
  let runStart = 0
  let dayStart = 0
  let runTick = -1
  let day = -1
  for (let span = 0; span < spans.length; span++) {
    const { from, to, groups } = spans[span] as Span
    let slot = slotAt[from] as number
    if ((groups & needed) !== needed) {
      indexAt.fill(count, slot, slot + to - from)
      continue
    }
    if (from !== runTick) {
      runEnd.fill(count, runStart, count)
      runStart = count
    }
    runTick = to
    for (let tick = from; tick < to; tick++) {
      if (dayOfTick[tick] !== day) {
        dayEnd.fill(count, dayStart, count)
        dayStart = count
        day = dayOfTick[tick] as number
      }
      slots[count] = slot
      ticks[count] = tick
      indexAt[slot] = count
      count++
      slot++
    }
  }
  indexAt[slotTick.length] = count
  return {
    groups: subset,
    peopleOfGroup: peopleOfGroups(axis, subset),
    slots,
    ticks,
    runEnd: runEnd.fill(count, runStart),
    dayEnd: dayEnd.fill(count, dayStart),
    indexAt,
  }
}
