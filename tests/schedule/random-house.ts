import type { Link, ScheduleProblem, Task } from '../../core/schedule/model.ts'
import { type RandomStream, randomBelow, randomStream } from '../../core/schedule/random.ts'
import { workingMinutes } from '../../core/units/duration.ts'
import { link, person, problem, room, task, weekOf } from './builders.ts'

export interface HouseShape {
  readonly rooms: number
  readonly crew: number
  /** Different calendars and skills, halls, fumes, small rooms, time between and set-ups too. */
  readonly isRich: boolean
  readonly roomLimit: number | null
}

/**
 * A house of rooms to repaint pass by pass: set up, repair and sand, prime, ceiling twice, woodwork twice, walls twice, put back. All numbers
 * are invented.
 */
export function randomHouse(seed: number, shape: HouseShape): ScheduleProblem {
  const random = randomStream(seed)
  const tasks: Task[] = []
  const links: Link[] = []
  const hall = `room${shape.rooms - 1}`
  const rooms = Array.from({ length: shape.rooms }, (_, index) => {
    const id = `room${index}`
    addPasses(random, shape, id, tasks, links)
    return room(id, {
      sleeping: shape.isRich && index === 0,
      openTo: shape.isRich && index === 1 ? ['room0'] : [],
      reachedThrough: shape.isRich && id !== hall ? [hall] : [],
      peopleAtOnce: shape.isRich && index % 3 === 2 ? 1 : 2,
      setUpAgain: workingMinutes(shape.isRich ? 30 : 0),
    })
  })
  const people = Array.from({ length: shape.crew }, (_, index) =>
    person(`person${index}`, {
      week: shape.isRich && index === 1 ? weekOf(9, 15) : weekOf(8, 16),
      breaks: [{ from: 12 * 60, to: 12 * 60 + 30 }],
      skills: index === 0 || !shape.isRich ? ['paint', 'prepare'] : ['prepare'],
      centsPerHour: 4500 - 500 * index,
    }),
  )
  return problem({
    tasks,
    links,
    people,
    rooms,
    spending: { moving: 10, changingProduct: 10, leastPaid: 240 },
    rules: {
      roomsOutOfUse: shape.roomLimit,
      leadAndOneMore: true,
      noDustNearWet: true,
      wayOutKeptOpen: shape.isRich,
      hallsLast: shape.isRich,
      noFumesWhileSleeping: shape.isRich ? { from: 22 * 60, to: 6 * 60 } : null,
      dailyChores: shape.isRich ? { setUp: 15, cleanUp: 20 } : null,
    },
  })
}

function addPasses(
  random: RandomStream,
  shape: HouseShape,
  room: string,
  tasks: Task[],
  links: Link[],
): void {
  const work = (least: number, most: number): number =>
    5 * (least / 5 + randomBelow(random, (most - least) / 5 + 1))
  const dry = { prepare: ['prepare'], crew: { min: 1, max: 2 } }
  const add = (name: string, values: Parameters<typeof task>[1]): string => {
    const id = `${room}/${name}`
    tasks.push(task(id, { room, crew: dry.crew, skills: ['prepare'], ...values }))
    return id
  }
  const coat = (name: string, least: number, most: number, values: Parameters<typeof task>[1] = {}): string =>
    add(name, {
      work: work(least, most),
      skills: ['paint'],
      product: name.split('-')[0] ?? name,
      effects: { touchDry: 65 },
      ...values,
    })
  const natural = { breaking: 'natural' } as const
  const way = [
    add('set-up', { work: work(60, 150), ...natural }),
    add('sand', { work: work(90, 300), ...natural, effects: { dusty: true } }),
    coat('prime', 60, 240, {
      ...natural,
      effects: shape.isRich ? { touchDry: 120, fumesFor: 60 } : { touchDry: 120 },
    }),
    coat('ceiling-1', 60, 180),
    coat('ceiling-2', 60, 150),
    coat('wood-1', 90, 300, natural),
    coat('wood-2', 90, 300, natural),
    coat('walls-1', 90, 300),
    coat('walls-2', 90, 300),
    add('put-back', { work: work(30, 120), ...natural }),
  ]
  const waits = [0, 0, 240, 240, 0, 960, 240, 240, 240]
  for (const [index, wait] of waits.entries())
    links.push(link(way[index] as string, way[index + 1] as string, wait))
}
