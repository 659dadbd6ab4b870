import type { Axis } from './axis.ts'
import type { ScheduleProblem } from './model.ts'
import { countBits, type TeamCalendar } from './site-net.ts'

/** One calendar for each set of groups of people that may work together, the first for work that needs nobody. */
export function teamCalendars(axis: Axis, problem: ScheduleProblem): readonly TeamCalendar[] {
  const widest = problem.tasks.reduce((most, { crew, state }) => {
    return Math.max(most, crew.max, state.kind === 'open' ? 0 : new Set(state.people).size)
  }, 0)
  const people = axis.groups.length - 1
  const subsets = Array.from({ length: 2 ** Math.min(people, 12) }, (_, subset) => subset)
  return subsets
    .filter((subset) => countBits(subset) <= widest && (people <= 6 || countBits(subset) <= 2))
    .map((subset) => teamCalendar(axis, subset))
    .filter((calendar) => calendar.slots.length > 0)
}

function teamCalendar(axis: Axis, subset: number): TeamCalendar {
  const groups = axis.groups.flatMap((_, group) => (group > 0 && (subset >> (group - 1)) & 1 ? [group] : []))
  const slots = commonSlots((subset === 0 ? [0] : groups).map((group) => axis.works[group] as Uint8Array))
  return {
    groups: subset,
    peopleOfGroup: groups.map((group) => axis.groups[group] ?? 0),
    slots,
    ...pauseTables(axis, slots),
  }
}

function commonSlots([first, ...others]: readonly Uint8Array[]): Int32Array {
  const common = Uint8Array.from(first ?? [])
  for (const works of others) {
    for (let slot = 0; slot < common.length; slot++)
      common[slot] = (common[slot] as number) & (works[slot] as number)
  }
  const slots = new Int32Array(common.length)
  let count = 0
  for (let slot = 0; slot < common.length; slot++) if (common[slot] === 1) slots[count++] = slot
  return slots.slice(0, count)
}

export function pauseTables(axis: Axis, slots: Int32Array) {
  const { slotTick, dayOfTick } = axis
  const count = slots.length
  const ticks = new Int32Array(count)
  for (let index = 0; index < count; index++) ticks[index] = slotTick[slots[index] as number] as number
  const runEnd = new Int32Array(count + 1).fill(count)
  const dayEnd = new Int32Array(count + 1).fill(count)
  for (let index = count - 2; index >= 0; index--) {
    const tick = ticks[index] as number
    const next = ticks[index + 1] as number
    runEnd[index] = next === tick + 1 ? (runEnd[index + 1] as number) : index + 1
    dayEnd[index] = dayOfTick[next] === dayOfTick[tick] ? (dayEnd[index + 1] as number) : index + 1
  }
  const indexAt = new Int32Array(slotTick.length + 1)
  for (let slot = 0, index = 0; slot <= slotTick.length; slot++) {
    indexAt[slot] = index
    if (slots[index] === slot) index++
  }
  return { ticks, runEnd, dayEnd, indexAt }
}
