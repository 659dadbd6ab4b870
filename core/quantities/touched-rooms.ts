import { type Job, records, type Table } from '../project/job.ts'
import { roomOfSurface } from '../project/scopes.ts'
import type { Opening, Room, RoomId } from '../project/sketch-records.ts'
import type { Finish } from '../project/survey-records.ts'
import { tellApartAlike } from './finish-marks.ts'

/** Rooms whose figures an edit may change; `all` where it changes something of the whole house. */
type TouchedRooms = ReadonlySet<RoomId> | 'all'

/** Records never change in place, so that comparing them by identity finds every change. */
export function touchedRooms(before: Job, after: Job): TouchedRooms {
  if (rulesChanged(before, after)) return 'all'
  const touched = new Set<RoomId>()
  const facing = new Set<RoomId>()
  eachChange(before.rooms, after.rooms, (was, is) => noteRoom(was, is, touched, facing))
  for (const name of ['trimRuns', 'ceilingOpenings', 'builtItems'] as const) {
    eachChange<{ readonly id: string; readonly roomId: RoomId }>(before[name], after[name], (was, is) => {
      if (was !== undefined) touched.add(was.roomId)
      if (is !== undefined) touched.add(is.roomId)
    })
  }
  eachChange(before.openings, after.openings, (was, is) => {
    noteSides(was, touched)
    noteSides(is, touched)
  })
  if (finishesReachHouse(before, after, facing)) return 'all'
  addRoomsBehind(after, facing, touched)
  return touched
}

function rulesChanged(before: Job, after: Job): boolean {
  return (
    before.header.unitSystem !== after.header.unitSystem ||
    before.houseRules.openingPolicy !== after.houseRules.openingPolicy ||
    before.houseRules.girthPolicy !== after.houseRules.girthPolicy
  )
}

function eachChange<Item extends { readonly id: string }>(
  before: Table<Item>,
  after: Table<Item>,
  note: (was: Item | undefined, is: Item | undefined) => void,
): void {
  if (before === after) return
  const listBefore = records(before)
  const listAfter = records(after)
  listAfter.forEach((is, index) => {
    if (is !== listBefore[index] && is !== before[is.id]) note(before[is.id], is)
  })
  listBefore.forEach((was, index) => {
    if (was !== listAfter[index] && after[was.id] === undefined) note(was, undefined)
  })
}

/** The rooms behind a room's openings see its outline and floor, by which an opening's far side is found, but not its ceiling. */
function noteRoom(
  was: Room | undefined,
  is: Room | undefined,
  touched: Set<RoomId>,
  facing: Set<RoomId>,
): void {
  const room = is ?? was
  if (room === undefined) return
  touched.add(room.id)
  if (was?.corners !== is?.corners || was?.floor !== is?.floor) facing.add(room.id)
}

function noteSides(opening: Opening | undefined, touched: Set<RoomId>): void {
  if (opening === undefined) return
  touched.add(opening.roomId)
  if (opening.far !== null) touched.add(opening.far.roomId)
}

/** Finishes of a room or of a surface in it are seen from the rooms behind its openings too; true when one of the house changed. */
function finishesReachHouse(before: Job, after: Job, facing: Set<RoomId>): boolean {
  if (tellApartAlike(before.finishes, after.finishes)) return false
  let house = false
  const note = (job: Job, finish: Finish | undefined) => {
    if (finish === undefined) return
    const { scope } = finish
    if (scope.level === 'house') house = true
    else {
      const roomId = scope.level === 'room' ? scope.roomId : roomOfSurface(job, scope.surface)
      if (roomId !== null) facing.add(roomId)
    }
  }
  eachChange(before.finishes, after.finishes, (was, is) => {
    note(before, was)
    note(after, is)
  })
  return house || orderChanged(before.finishes, after.finishes)
}

/** Of two records with one scope the later counts. */
function orderChanged(before: Table<Finish>, after: Table<Finish>): boolean {
  if (before === after) return false
  const kept = records(before).filter(({ id }) => after[id] !== undefined)
  const keptAfter = records(after).filter(({ id }) => before[id] !== undefined)
  return kept.some(({ id }, index) => id !== keptAfter[index]?.id)
}

function addRoomsBehind(job: Job, facing: ReadonlySet<RoomId>, touched: Set<RoomId>): void {
  if (facing.size === 0) return
  for (const roomId of facing) touched.add(roomId)
  for (const opening of records(job.openings)) {
    if (opening.far === null) continue
    if (facing.has(opening.roomId)) touched.add(opening.far.roomId)
    if (facing.has(opening.far.roomId)) touched.add(opening.roomId)
  }
}
