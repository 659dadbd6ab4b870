import type { Job } from '../project/job.ts'
import { fail, type Outcome, succeed } from '../project/problem.ts'
import type { Room } from '../project/sketch-records.ts'
import { lengthFromUnits } from '../units/length.ts'
import { type Drawn, drawnNames, type JoinedWay, type SketchCommand } from './commands.ts'
import { findRoom, mapRecords, withRecords } from './job-edits.ts'
import { isPassage } from './room-kinds.ts'

type Command<Kind extends SketchCommand['kind']> = Extract<SketchCommand, { kind: Kind }>

/** Adds a room with the heights, trim and use it is begun with; refuses ids that are taken. */
export function addRoom(job: Job, command: Command<'addRoom'>): Outcome<Job> {
  const { id, storeyId, name, use, corners, defaults } = command
  if (Object.hasOwn(job.rooms, id))
    return fail('duplicateId', `There is already a room with the id "${id}".`, [id])
  const taken = defaults.trim.find((run) => Object.hasOwn(job.trimRuns, run.id))
  if (taken) return fail('duplicateId', `There is already a trim run with the id "${taken.id}".`, [taken.id])
  const room = newRoomRecord({
    id,
    storeyId,
    name,
    use,
    corners,
    ceiling: defaults.ceiling,
    above: defaults.above,
  })
  const trim = defaults.trim.map((run) => ({ ...run, roomId: id, walls: null }))
  return succeed(withRecords(withRecords(job, 'rooms', [room]), 'trimRuns', trim))
}

/** A level room of which nothing more is known; its ways out follow from its use. */
export function newRoomRecord(
  known: Pick<Room, 'id' | 'storeyId' | 'name' | 'use' | 'corners' | 'ceiling' | 'above'>,
): Room {
  return {
    ...known,
    floor: { kind: 'level' },
    order: 'houseRule',
    workedWith: null,
    wayOut: isPassage(known.use),
    backBy: null,
    allowances: null,
    lookedAt: [],
    note: '',
  }
}

/** Adds records of several collections; none of their ids may be taken. Ways that stood before may lead into what is new. */
export function addDrawn(job: Job, { drawn, joins }: Command<'addDrawn'>): Outcome<Job> {
  for (const name of drawnNames) {
    const ids = drawn[name].map(({ id }): string => id)
    const taken = ids.find((id, index) => Object.hasOwn(job[name], id) || ids.indexOf(id) !== index)
    if (taken !== undefined)
      return fail('duplicateId', `The id "${taken}" is already used in ${name}.`, [taken])
  }
  return succeed(withJoins(withDrawn(job, drawn), joins))
}

/** The job with ways that lead into another room, cased there as they are here. */
export function withJoins(job: Job, joins: readonly JoinedWay[]): Job {
  const openings = joins.flatMap(({ openingId, far }) => {
    const opening = job.openings[openingId]
    return opening === undefined ? [] : [{ ...opening, far, casingFar: opening.casingNear }]
  })
  return withRecords(job, 'openings', openings)
}

/** The job with records of several collections, whether or not it had them. */
export function withDrawn(job: Job, drawn: Drawn): Job {
  return drawnNames.reduce((next, name) => withRecords(next, name, drawn[name]), job)
}

/** Moves whole rooms with what is drawn in plan coordinates inside them; openings follow their walls. */
export function moveRooms(job: Job, command: Command<'moveRooms'>): Outcome<Job> {
  const moved = new Set<string>(command.roomIds)
  for (const roomId of command.roomIds) {
    const room = findRoom(job, roomId)
    if (!room.ok) return room
  }
  const rooms = mapRecords(job, 'rooms', (room) =>
    moved.has(room.id) ? shiftRoom(room, command.dx, command.dy) : room,
  )
  return succeed(
    mapRecords(rooms, 'ceilingOpenings', (hole) =>
      moved.has(hole.roomId) ? shiftPoint(hole, command.dx, command.dy) : hole,
    ),
  )
}

/** Moves its corners; openings and trim follow, for they are placed along walls. */
export function shiftRoom(room: Room, dx: number, dy: number): Room {
  return { ...room, corners: room.corners.map((corner) => shiftPoint(corner, dx, dy)) }
}

/** Anything with a place, moved; rounded to whole lengths. */
export function shiftPoint<Item extends { readonly x: number; readonly y: number }>(
  item: Item,
  dx: number,
  dy: number,
): Item {
  return { ...item, x: lengthFromUnits(item.x + dx), y: lengthFromUnits(item.y + dy) }
}
