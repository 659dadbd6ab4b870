import type { Link, ScheduleProblem, Task } from '../../core/schedule/model.ts'
import { type RandomStream, randomBelow, randomStream } from '../../core/schedule/random.ts'
import { link, person, problem, room, task, weekOf } from './builders.ts'

export interface JobShape {
  readonly rooms: number
  readonly crew: number
  readonly gridMinutes: number
  readonly roomLimit: number | null
  /** Different calendars, skills, halls, fumes and quiet hours too. */
  readonly isRich: boolean
}

/**
 * A house of rooms to repaint: prepare, degloss, within half an hour trim coat 1, dry, coat 2, dry, walls; the ceiling beside.
 * The numbers are invented.
 */
export function randomJob(seed: number, shape: JobShape): ScheduleProblem {
  const random = randomStream(seed)
  const tasks: Task[] = []
  const links: Link[] = []
  const rooms = Array.from({ length: shape.rooms }, (_, index) => {
    const id = `room${index}`
    addRoom(random, shape, id, tasks, links)
    const isLast = shape.isRich && index === shape.rooms - 1
    return room(id, {
      tasksAtOnce: 1,
      sleeping: shape.isRich && index === 0,
      openTo: shape.isRich && index === 1 ? ['room0'] : [],
      reachedThrough: shape.isRich && !isLast ? [`room${shape.rooms - 1}`] : [],
    })
  })
  const people = Array.from({ length: shape.crew }, (_, index) => {
    const week = shape.isRich && index === 1 ? weekOf(9, 15) : weekOf(8, 16)
    const breaks = [{ from: 12 * 60, to: 12 * 60 + 30 }]
    return person(`person${index}`, {
      week,
      breaks,
      skills: index === 0 || !shape.isRich ? ['paint', 'sand'] : ['paint'],
    })
  })
  return problem({
    gridMinutes: shape.gridMinutes,
    tasks,
    links,
    people,
    rooms,
    rules: {
      roomsOutOfUse: shape.roomLimit,
      noDustNearWet: shape.isRich,
      wayOutKeptOpen: shape.isRich,
      hallsLast: shape.isRich,
      noFumesWhileSleeping: shape.isRich ? { from: 22 * 60, to: 6 * 60 } : null,
    },
  })
}

function addRoom(random: RandomStream, shape: JobShape, room: string, tasks: Task[], links: Link[]): void {
  const steps = (least: number, most: number): number =>
    shape.gridMinutes *
    (Math.ceil(least / shape.gridMinutes) + randomBelow(random, (most - least) / shape.gridMinutes + 1))
  const effects = (wetFor: number | undefined, dusty: boolean) => ({
    closedFor: 0,
    dusty,
    ...(wetFor === undefined ? {} : { wetFor }),
  })
  const add = (name: string, work: number, values: Parameters<typeof task>[1] = {}): string => {
    tasks.push(task(`${room}.${name}`, { work, room, skills: ['paint'], ...values }))
    return `${room}.${name}`
  }
  const crew = { min: 1, max: shape.isRich ? Math.min(2, shape.crew) : 1 }
  const dry = steps(360, 960)
  const prepare = add('prepare', steps(60, 240), {
    splitting: 'night',
    crew,
    effects: effects(undefined, true),
  })
  const degloss = add('degloss', steps(30, 60), {
    effects: { ...effects(undefined, false), ...(shape.isRich ? { fumesFor: 120 } : {}) },
  })
  const trimOne = add('trim 1', steps(45, 120), { product: 'trim', effects: effects(dry, false) })
  const trimTwo = add('trim 2', steps(45, 120), { product: 'trim', effects: effects(dry, false) })
  const walls = add('walls', steps(60, 180), {
    splitting: 'break',
    crew,
    product: 'wall',
    effects: effects(120, false),
  })
  const ceiling = add('ceiling', steps(45, 120), {
    splitting: 'break',
    product: 'ceiling',
    effects: effects(120, false),
  })
  links.push(
    link(prepare, degloss),
    link(degloss, trimOne, 0, 30),
    link(trimOne, trimTwo, dry),
    link(trimTwo, walls, 240),
  )
  links.push(link(prepare, ceiling), link(ceiling, walls, 120))
  if (random() < 0.5)
    links.push(
      link(
        walls,
        add('walls 2', steps(60, 180), { crew, product: 'wall', effects: effects(120, false) }),
        240,
      ),
    )
}
