import { presentWindows } from '../../../core/schedule/calendar.ts'
import type { DayWindow, ScheduleProblem } from '../../../core/schedule/model.ts'
import { dateOfDay } from '../../../core/time/local-date.ts'
import type { LocalTime } from '../../../core/time/local-time.ts'

/** A stretch of the axis. Working hours are drawn to scale; nights and days off are drawn narrow, so that drying shows through. */
interface AxisPart {
  readonly kind: 'hours' | 'night' | 'off'
  /** Epoch minutes. */
  readonly from: number
  readonly to: number
  /** Pixels. */
  readonly left: number
  readonly right: number
}

export interface AxisDay {
  readonly date: string
  readonly isOff: boolean
  readonly left: number
  readonly right: number
  /** Full hours of the day that are drawn, with their place. */
  readonly hours: readonly { readonly hour: number; readonly at: number }[]
}

export interface TimeAxis {
  readonly parts: readonly AxisPart[]
  readonly days: readonly AxisDay[]
  readonly width: number
}

const minutesPerDay = 1440

/** Nights and days off keep a width to be seen by, and give way where hours are drawn narrow. */
function nightWidth(pixelsPerHour: number): number {
  return Math.max(0.5, Math.min(16, pixelsPerHour * 0.6))
}

function offWidth(pixelsPerHour: number): number {
  return Math.max(1, Math.min(34, pixelsPerHour * 1.5))
}

interface AxisInput {
  readonly problem: ScheduleProblem
  readonly local: LocalTime
  /** Epoch minutes of the first and last thing drawn. */
  readonly from: number
  readonly to: number
  readonly pixelsPerHour: number
}

/** One axis for all lanes, from the first to the last day with anything on it. */
export function timeAxis({ problem, local, from, to, pixelsPerHour }: AxisInput): TimeAxis {
  const firstDay = local.dayAt(from)
  const lastDay = Math.max(firstDay, local.dayAt(Math.max(from, to - 1)))
  const span = hoursSpan(problem, firstDay, lastDay)
  const parts: AxisPart[] = []
  const days: AxisDay[] = []
  const [night, off] = [nightWidth(pixelsPerHour), offWidth(pixelsPerHour)]
  let x = 0
  const add = (kind: AxisPart['kind'], start: number, end: number, width: number) => {
    if (end > start) parts.push({ kind, from: start, to: end, left: x, right: x + width })
    x += end > start ? width : 0
  }
  for (let day = firstDay; day <= lastDay; day++) {
    const left = x
    const at = (minute: number) =>
      minute === minutesPerDay ? local.instantOf(day + 1, 0) : local.instantOf(day, minute)
    const isOff = problem.people.every((person) => windowsOf(problem, person, day).length === 0)
    if (isOff) add('off', at(0), at(minutesPerDay), off)
    else {
      add('night', at(0), at(span.from), night / 2)
      add('hours', at(span.from), at(span.to), ((span.to - span.from) / 60) * pixelsPerHour)
      add('night', at(span.to), at(minutesPerDay), night / 2)
    }
    const hours = isOff ? [] : hourMarks(parts, at, span)
    days.push({ date: dateOfDay(day), isOff, left, right: x, hours })
  }
  return { parts, days, width: x }
}

function windowsOf(
  problem: ScheduleProblem,
  person: ScheduleProblem['people'][number],
  day: number,
): readonly DayWindow[] {
  return problem.clock.kind === 'site' ? presentWindows(problem.clock, person, day) : []
}

/** The hours of the day in which anybody is ever there, widened to whole hours. */
function hoursSpan(problem: ScheduleProblem, firstDay: number, lastDay: number): DayWindow {
  const windows: DayWindow[] = []
  for (let day = firstDay; day <= lastDay; day++) {
    for (const person of problem.people) windows.push(...windowsOf(problem, person, day))
  }
  if (windows.length === 0) return { from: 480, to: 1020 }
  const from = Math.min(...windows.map((window) => window.from))
  const to = Math.max(...windows.map((window) => window.to))
  return { from: Math.floor(from / 60) * 60, to: Math.min(minutesPerDay, Math.ceil(to / 60) * 60) }
}

function hourMarks(parts: readonly AxisPart[], at: (minute: number) => number, span: DayWindow) {
  const part = parts.findLast((each) => each.kind === 'hours')
  if (part === undefined) return []
  const marks: { hour: number; at: number }[] = []
  for (let minute = span.from; minute <= span.to; minute += 60) {
    marks.push({ hour: minute / 60, at: placeIn(part, at(minute)) })
  }
  return marks
}

function placeIn(part: AxisPart, instant: number): number {
  return part.left + ((instant - part.from) / (part.to - part.from)) * (part.right - part.left)
}

/** The pixel of an instant; before the first and after the last part it stays at the edge. */
export function placeOf(axis: TimeAxis, instant: number): number {
  const part = axis.parts.find((each) => instant < each.to)
  if (part === undefined) return axis.width
  return instant <= part.from ? part.left : placeIn(part, instant)
}

/** The instant at a pixel, on the given grid of minutes. */
export function instantAt(axis: TimeAxis, place: number, grid: number): number {
  const inside = Math.max(0, Math.min(axis.width - 1, place))
  const part = axis.parts.find((each) => inside < each.right) ?? axis.parts.at(-1)
  if (part === undefined) return 0
  const share = (inside - part.left) / (part.right - part.left)
  return Math.round((part.from + share * (part.to - part.from)) / grid) * grid
}

/** Days too narrow for hours and a date carry only their number; their week is named instead. */
export function hasNarrowDays({ days }: TimeAxis): boolean {
  return Math.max(...days.map((day) => day.right - day.left)) < roomForDate
}

const roomForDate = 76

/** The first day drawn, and every first working day after days off. */
export function startsWeek(axis: TimeAxis, index: number): boolean {
  const [day, before] = [axis.days[index], axis.days[index - 1]]
  return before === undefined || (before.isOff && day?.isOff === false)
}
