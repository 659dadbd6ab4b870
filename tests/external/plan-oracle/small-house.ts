import type { Link, ScheduleProblem, Task } from '../../../core/schedule/model.ts'
import { type RandomStream, randomBelow, randomStream } from '../../../core/schedule/random.ts'
import { link, person, problem, room, task, weekOf } from '../../schedule/builders.ts'

export interface SmallShape {
  readonly passes: number
  readonly people: 2 | 3
}

/** A stage of a room: what it does to the room, and how long what follows waits for it at most; minutes. */
interface Stage {
  readonly name: string
  readonly product: string | null
  readonly wait: number
}

const stages: readonly Stage[] = [
  { name: 'prepare', product: null, wait: 0 },
  { name: 'prime', product: 'primer', wait: 240 },
  { name: 'ceiling', product: 'flat', wait: 120 },
  { name: 'woodwork', product: 'enamel', wait: 960 },
  { name: 'walls', product: 'eggshell', wait: 240 },
]

/**
 * Two or three rooms to prepare and coat in a few passes, on a grid of 15 minutes that calendars, waits and wages lie on. One person can do
 * everything, the others differ by chance; so do a break, chores, a room for one person, an open doorway, a hall. All numbers are invented.
 */
export function smallHouse(seed: number, { passes, people }: SmallShape): ScheduleProblem {
  const random = randomStream(1000 * seed + 10 * passes + people)
  const often = (share: number): boolean => random() < share
  const count = passes >= 10 && often(0.5) ? 3 : 2
  const ids = Array.from({ length: count }, (_, index) => `room${index}`)
  const tasks: Task[] = []
  const links: Link[] = []
  for (const [index, id] of ids.entries())
    addRoom(random, id, Math.floor((passes + index) / count), tasks, links)
  const isOpen = often(0.3)
  const hasHall = often(0.25)
  const rooms = ids.map((id, index) =>
    room(id, {
      peopleAtOnce: often(0.2) ? 1 : 2,
      openTo: isOpen && index === 1 ? ['room0'] : [],
      reachedThrough: hasHall && index > 0 ? ['room0'] : [],
    }),
  )
  const breaks = often(0.6) ? [{ from: 12 * 60, to: 12 * 60 + 30 }] : []
  const crew = Array.from({ length: people }, (_, index) =>
    person(`person${index}`, {
      skills: index === 0 || often(0.6) ? ['paint', 'prepare'] : ['prepare'],
      centsPerHour: 4800 - 800 * index,
      week: index > 0 && often(0.25) ? weekOf(9, 15) : weekOf(8, 16),
      breaks,
    }),
  )
  return problem({
    gridMinutes: 15,
    tasks,
    links,
    rooms,
    people: crew,
    spending: { moving: 15, changingProduct: often(0.5) ? 15 : 0, leastPaid: 240 },
    rules: {
      leadAndOneMore: true,
      noDustNearWet: true,
      hallsLast: hasHall,
      dailyChores: often(0.5) ? { setUp: 15, cleanUp: 15 } : null,
      roomsOutOfUse: often(0.15) ? 1 : null,
    },
  })
}

function addRoom(random: RandomStream, id: string, passes: number, tasks: Task[], links: Link[]): void {
  // The first stage, and some of the others in their order.
  const left = stages.slice(1)
  while (left.length > passes - 1) left.splice(randomBelow(random, left.length), 1)
  const chosen = [stages[0] as Stage, ...left]
  for (const [index, { name, product }] of chosen.entries()) {
    tasks.push(
      task(`${id}/${name}`, {
        room: id,
        work: 15 * (3 + randomBelow(random, 16)),
        crew: { min: 1, max: product === 'enamel' ? 1 : 2 },
        skills: [product === null ? 'prepare' : 'paint'],
        product,
        effects: product === null ? { dusty: true } : { touchDry: 60 },
      }),
    )
    const before = chosen[index - 1]
    if (before !== undefined)
      links.push(
        link(`${id}/${before.name}`, `${id}/${name}`, 60 * randomBelow(random, before.wait / 60 + 1)),
      )
  }
}
