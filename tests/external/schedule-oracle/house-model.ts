import type { ScheduleProblem } from '../../../core/schedule/model.ts'

/**
 * The rules of a small house written for MiniZinc from their wording, on wall-clock tables of its own. Knows this much: one
 * company calendar (Monday to Friday, 8:00-12:00 and 12:30-16:00, UTC, from a Monday on), people who all can do everything,
 * fixed crews, tasks at once per room, drying, open times, dust and wet, rooms out of use. Nothing here comes from the search.
 */
export function houseModel(problem: ScheduleProblem, days: number): string {
  const grid = problem.gridMinutes
  const slots = workingMoments(days, grid)
  const count = problem.tasks.length
  const crews = problem.tasks.map((task) => task.crew.min)
  const lengths = problem.tasks.map((task, index) =>
    Math.ceil(task.work / Math.max(1, crews[index] ?? 1) / grid),
  )
  const place = (id: string): number => problem.tasks.findIndex((task) => task.id === id) + 1
  const last = slots.starts.length
  const lines = [
    'include "globals.mzn";',
    `int: last = ${last};`,
    `array[0..last] of int: starts = array1d(0..last, ${JSON.stringify([...slots.starts, 1_000_000])});`,
    `array[0..last] of int: ends = array1d(0..last, ${JSON.stringify([0, ...slots.starts.map((start) => start + grid)])});`,
    `array[0..last] of int: runs = array1d(0..last, ${JSON.stringify([...slots.runs, 1_000_000])});`,
    `array[0..last] of int: days = array1d(0..last, ${JSON.stringify([...slots.days, 1_000_000])});`,
    `array[1..${count}] of int: length = ${JSON.stringify(lengths)};`,
    `array[1..${count}] of int: crew = ${JSON.stringify(crews)};`,
    `array[1..${count}] of var 0..last: x;`,
    `array[1..${count}] of var 0..${days * 1440}: from;`,
    `array[1..${count}] of var 0..${days * 1440}: to;`,
    `constraint forall(i in 1..${count})(x[i] + length[i] <= last /\\ from[i] = starts[x[i]] /\\ to[i] = ends[x[i] + length[i]]);`,
    `constraint cumulative(x, length, crew, ${problem.people.length});`,
    ...problem.tasks.flatMap((task, index) => pauseLines(task.splitting, index + 1, lengths[index] ?? 0)),
    ...problem.links.map((link) => linkLine(place(link.from), place(link.to), link)),
    ...problem.rooms.flatMap((room) => roomLines(problem, room.id, room.tasksAtOnce)),
    ...dustLines(problem),
    ...outOfUseLines(problem, days),
    `var 0..${days}: finish = max(i in 1..${count})(days[x[i] + length[i] - 1]);`,
    `solve minimize 1000 * finish + roomDays;`,
    'output ["{\\"finish\\": \\(finish), \\"roomDays\\": \\(roomDays), \\"from\\": \\(from), \\"to\\": \\(to)}"];',
  ]
  return lines.join('\n')
}

function workingMoments(days: number, grid: number) {
  const starts: number[] = []
  const runs: number[] = []
  const dayOf: number[] = []
  for (let day = 0; day < days; day++) {
    if (day % 7 >= 5) continue
    for (const [run, from, to] of [
      [0, 8 * 60, 12 * 60],
      [1, 12 * 60 + 30, 16 * 60],
    ] as const) {
      for (let minute = from; minute < to; minute += grid) {
        starts.push(day * 1440 + minute)
        runs.push(2 * day + run)
        dayOf.push(day)
      }
    }
  }
  return { starts, runs, days: dayOf }
}

function pauseLines(splitting: string, task: number, length: number): readonly string[] {
  if (splitting === 'night') return []
  const table = splitting === 'none' ? 'runs' : 'days'
  return [`constraint ${table}[x[${task}]] = ${table}[x[${task}] + ${length - 1}];`]
}

function linkLine(from: number, to: number, link: ScheduleProblem['links'][number]): string {
  const least = link.atLeast === null ? 'true' : `from[${to}] >= to[${from}] + ${link.atLeast}`
  const most = link.atMost === null ? 'true' : `from[${to}] <= to[${from}] + ${link.atMost}`
  return `constraint ${least} /\\ ${most};`
}

function tasksIn(problem: ScheduleProblem, room: string): readonly number[] {
  return problem.tasks.flatMap((task, index) => (task.room === room ? [index + 1] : []))
}

function roomLines(problem: ScheduleProblem, room: string, tasksAtOnce: number | null): readonly string[] {
  const tasks = tasksIn(problem, room)
  if (tasksAtOnce === null || tasks.length === 0) return []
  const pick = (table: string): string => `[${tasks.map((task) => `${table}[${task}]`).join(', ')}]`
  return [
    `constraint cumulative(${pick('x')}, ${pick('length')}, [1 | i in 1..${tasks.length}], ${tasksAtOnce});`,
  ]
}

function dustLines(problem: ScheduleProblem): readonly string[] {
  if (!problem.rules.noDustNearWet) return []
  return problem.tasks.flatMap((dusty, one) => {
    if (!dusty.effects.dusty) return []
    return problem.tasks.flatMap((wet, other) => {
      const isNear = one !== other && dusty.room === wet.room && wet.effects.wetFor !== null
      if (!isNear) return []
      return [
        `constraint to[${one + 1}] <= from[${other + 1}] \\/ from[${one + 1}] >= to[${other + 1}] + ${wet.effects.wetFor};`,
      ]
    })
  })
}

/** From the first task in a room until the last is dry. */
function outOfUseLines(problem: ScheduleProblem, days: number): readonly string[] {
  const dry = (task: number): string => `to[${task}] + ${problem.tasks[task - 1]?.effects.wetFor ?? 0}`
  const rooms = problem.rooms.map((room) => tasksIn(problem, room.id))
  const most = days * 1440
  const opening = rooms.map((tasks) => `min([${tasks.map((task) => `from[${task}]`).join(', ')}])`)
  const closing = rooms.map((tasks) => `max([${tasks.map(dry).join(', ')}])`)
  const firstDay = rooms.map((tasks) => `min([${tasks.map((task) => `days[x[${task}]]`).join(', ')}])`)
  const sum = rooms.map((_, room) => `(shuts[${room + 1}] - 1) div 1440 - ${firstDay[room]} + 1`)
  const limit = problem.rules.roomsOutOfUse
  return [
    `array[1..${rooms.length}] of var 0..${most}: opens;`,
    `array[1..${rooms.length}] of var 1..${most + 2 * 1440}: shuts;`,
    ...rooms.map(
      (_, room) =>
        `constraint opens[${room + 1}] = ${opening[room]} /\\ shuts[${room + 1}] = ${closing[room]};`,
    ),
    ...(limit === null
      ? []
      : [
          `array[1..${rooms.length}] of var 0..${most + 2 * 1440}: spans;`,
          `constraint forall(r in 1..${rooms.length})(spans[r] = shuts[r] - opens[r]);`,
          `constraint cumulative(opens, spans, [1 | r in 1..${rooms.length}], ${limit});`,
        ]),
    `var 0..${days * rooms.length}: roomDays = ${sum.join(' + ')};`,
  ]
}
