import { coatingOperations, type ReadSchedule, type ReadTask } from './read-schedule.ts'

/** What a plan looks like to whoever has to follow it, from the dates of `schedule.json` alone. Shares no code with the program. */
export interface Reading {
  readonly tasksPerRoomSet: number
  readonly roomDaysPer100Hours: number
  readonly longestRoomDays: number
  readonly calendarDays: number
  readonly personDays: number
  readonly visitsPerPersonDay: number
  /** Stays in a room of half an hour or less. */
  readonly shortStays: number
  /** Coats that stop for more than an hour and a half. */
  readonly splitCoats: number
  /** Tasks begun with less than an hour left of the day that go on the next. */
  readonly lateStarts: number
  /** Tasks of a quarter of an hour or less. */
  readonly shortTasks: number
  readonly peoplePerRoomSet: number
  readonly attendedOverWorked: number
  readonly attendedOverSpecified: number
}

const day = 1440
const noonPause = 30

interface Stay {
  readonly from: number
  readonly to: number
  readonly task: ReadTask
}

export function readPlan(schedule: ReadSchedule, specifiedMinutes: number): Reading {
  const { tasks } = schedule
  const sets = new Map<string, ReadTask[]>()
  for (const task of tasks) sets.set(task.set, [...(sets.get(task.set) ?? []), task])
  const days = staysByPersonAndDay(tasks)
  const visits = days.map(visitsOf)
  const used = [...sets.values()].map((inside) => daysUsed(inside).length)
  const worked = days.flat().reduce((sum, { from, to }) => sum + to - from, 0)
  const attended = days.reduce((sum, stays) => sum + attendedMinutes(stays), 0)
  const starts = tasks.flatMap(({ segments }) => segments.map(({ from }) => from))
  const ends = tasks.flatMap(({ segments, dryUntil }) => [...segments.map(({ to }) => to), dryUntil ?? 0])
  const people = [...sets.values()].map((inside) => new Set(inside.flatMap((task) => task.people)).size)
  return {
    tasksPerRoomSet: tasks.length / sets.size,
    roomDaysPer100Hours: (sumOf(used) * 6000) / specifiedMinutes,
    longestRoomDays: Math.max(...used),
    calendarDays: Math.floor(Math.max(...ends) / day) - Math.floor(Math.min(...starts) / day) + 1,
    personDays: days.length,
    visitsPerPersonDay: sumOf(visits.map((list) => list.length)) / days.length,
    shortStays: visits.flat().filter((minutes) => minutes <= 30).length,
    splitCoats: tasks.filter(isSplitCoat).length,
    lateStarts: days.flat().filter(isLateStart).length,
    shortTasks: tasks.filter(({ segments }) => sumOf(segments.map(({ from, to }) => to - from)) <= 15).length,
    peoplePerRoomSet: sumOf(people) / sets.size,
    attendedOverWorked: attended / worked,
    attendedOverSpecified: attended / specifiedMinutes,
  }
}

function sumOf(numbers: readonly number[]): number {
  return numbers.reduce((sum, each) => sum + each, 0)
}

function staysByPersonAndDay(tasks: readonly ReadTask[]): readonly (readonly Stay[])[] {
  const days = new Map<string, Stay[]>()
  for (const task of tasks) {
    for (const { from, to } of task.segments) {
      for (const person of task.people) {
        const key = `${person} ${Math.floor(from / day)}`
        days.set(key, [...(days.get(key) ?? []), { from, to, task }])
      }
    }
  }
  return [...days.values()].map((stays) => stays.toSorted((one, other) => one.from - other.from))
}

/** Minutes of each unbroken row of work in one room set. */
function visitsOf(stays: readonly Stay[]): readonly number[] {
  const visits: number[] = []
  let last = ''
  for (const { from, to, task } of stays) {
    if (task.set === last) visits[visits.length - 1] = (visits.at(-1) ?? 0) + to - from
    else visits.push(to - from)
    last = task.set
  }
  return visits
}

function attendedMinutes(stays: readonly Stay[]): number {
  const first = stays[0]?.from ?? 0
  const last = Math.max(...stays.map(({ to }) => to))
  const noon = Math.floor(first / day) * day + 720
  return last - first - (first < noon && last > noon + noonPause ? noonPause : 0)
}

/** Days with work or drying; shorter pauses than three whole days between them count too. */
function daysUsed(tasks: readonly ReadTask[]): readonly number[] {
  const busy = new Set<number>()
  for (const { segments, dryUntil } of tasks) {
    for (const { from } of segments) busy.add(Math.floor(from / day))
    const last = Math.max(...segments.map(({ to }) => to))
    for (let at = Math.floor(last / day); at <= Math.floor((dryUntil ?? 0) / day); at++) busy.add(at)
  }
  const days = [...busy].sort((one, other) => one - other)
  return days.flatMap((at, index) => {
    const gap = index === 0 ? 0 : at - (days[index - 1] ?? at) - 1
    return gap > 0 && gap < 3 ? Array.from({ length: gap + 1 }, (_, back) => at - back) : [at]
  })
}

function isSplitCoat({ segments, operations }: ReadTask): boolean {
  const isCoat = operations.some((operation) => coatingOperations.has(operation))
  return (
    isCoat && segments.some(({ from }, index) => index > 0 && from - (segments[index - 1]?.to ?? from) > 90)
  )
}

function isLateStart({ from, to, task }: Stay): boolean {
  const start = Math.min(...task.segments.map((segment) => segment.from))
  const end = Math.max(...task.segments.map((segment) => segment.to))
  return from === start && Math.floor(end / day) > Math.floor(from / day) && to - from < 60
}
