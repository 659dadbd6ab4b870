import { presentWindows, subtractWindows } from '../../../core/schedule/calendar.ts'
import type { ScheduleProblem } from '../../../core/schedule/model.ts'
import type { LocalTime } from '../../../core/time/local-time.ts'
import type { Lane } from './lanes.ts'
import type { TimeAxis } from './time-axis.ts'

/** When a person of a lane is not there within the hours drawn: breaks, part days, days off. Empty for a room. */
export function absences(
  problem: ScheduleProblem,
  local: LocalTime,
  axis: TimeAxis,
  lane: Lane,
): readonly { readonly from: number; readonly to: number }[] {
  const { clock } = problem
  const person = problem.people.find((each) => each.id === lane.id)
  if (lane.kind !== 'person' || person === undefined || clock.kind !== 'site') return []
  return axis.parts.flatMap((part) => {
    if (part.kind !== 'hours') return []
    const day = local.dayAt(part.from)
    const midnight = local.instantOf(day, 0)
    const drawn = { from: part.from - midnight, to: part.to - midnight }
    return subtractWindows([drawn], presentWindows(clock, person, day)).map((gap) => ({
      from: midnight + gap.from,
      to: midnight + gap.to,
    }))
  })
}
