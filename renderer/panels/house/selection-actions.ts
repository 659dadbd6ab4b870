import { type CollectionName, type Job, records } from '../../../core/project/job.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import type { RecordTarget } from '../../../core/sketch/commands.ts'
import { recordsOfRooms } from '../../../core/sketch/room-copies.ts'
import { unitsPerFoot } from '../../../core/units/length.ts'
import { fitStorey } from '../../canvas/sketch-input.ts'
import { jobStore, viewStore } from '../../state/app.ts'
import { freshName } from '../../state/new-id.ts'
import { command } from '../parts/edits.ts'

let copied: readonly RoomId[] = []

function openJob(): Job | null {
  return jobStore.store.getState().job
}

function selectedRooms(job: Job): readonly RoomId[] {
  return viewStore.getState().selectedIds.flatMap((id) => job.rooms[id]?.id ?? [])
}

export function removeSelected(): void {
  const job = openJob()
  if (job === null) return
  const targets = viewStore.getState().selectedIds.flatMap((id): RecordTarget[] => {
    const collection = (['rooms', 'openings'] as const satisfies readonly CollectionName[]).find(
      (name) => job[name][id] !== undefined,
    )
    return collection === undefined ? [] : [{ collection, id }]
  })
  if (targets.length === 0) return
  const done = command(
    targets.length === 1 ? `remove ${nameOf(job, targets[0])}` : `remove ${targets.length} things`,
    { kind: 'removeRecords', targets },
  )
  if (done) viewStore.setState({ selectedIds: [], roomId: null, surfaceKey: null })
}

function nameOf(job: Job, target: RecordTarget | undefined): string {
  if (target === undefined) return 'nothing'
  const record = target.collection === 'rooms' ? job.rooms[target.id] : job.openings[target.id]
  return record === undefined || record.name === '' ? 'it' : record.name
}

export function copySelected(): void {
  const job = openJob()
  if (job !== null) copied = selectedRooms(job)
}

/** Copies land beside their models, on the storey that is shown. */
export function pasteCopied(): void {
  duplicate(copied)
}

export function duplicateSelected(): void {
  const job = openJob()
  if (job !== null) duplicate(selectedRooms(job))
}

function duplicate(wanted: readonly RoomId[]): void {
  const job = openJob()
  if (job === null) return
  const roomIds = wanted.filter((id) => job.rooms[id] !== undefined)
  if (roomIds.length === 0) return
  const newIds = Object.fromEntries(
    recordsOfRooms(job, roomIds).map((id) => [id, freshName(id.split('-')[0] ?? 'copy')]),
  )
  const names = Object.fromEntries(
    roomIds.map((id) => [id, `${job.rooms[id]?.name ?? 'Room'} copy`.slice(0, 200)]),
  )
  const { storeyId } = viewStore.getState()
  const done = command(roomIds.length === 1 ? 'copy a room' : `copy ${roomIds.length} rooms`, {
    kind: 'duplicateRooms',
    roomIds,
    storeyId,
    dx: besideOf(job, roomIds),
    dy: 0,
    newIds,
    names,
  })
  if (!done) return
  const copied = jobStore.store.getState().job?.rooms ?? {}
  const copies = roomIds.flatMap((id) => copied[newIds[id] ?? '']?.id ?? [])
  viewStore.setState({ selectedIds: copies, roomId: copies[0] ?? null })
  fitStorey()
}

/** Far enough to the right to stand clear of everything on the sheet. */
function besideOf(job: Job, roomIds: readonly RoomId[]): number {
  const all = records(job.rooms).flatMap((room) => room.corners.map((corner) => corner.x))
  const own = roomIds.flatMap((id) => job.rooms[id]?.corners.map((corner) => corner.x) ?? [])
  return Math.max(...all) - Math.min(...own) + 2 * unitsPerFoot
}

export function selectAll(): void {
  const job = openJob()
  if (job === null) return
  const { storeyId } = viewStore.getState()
  const ids = records(job.rooms)
    .filter((room) => room.storeyId === storeyId)
    .map((room) => room.id)
  viewStore.setState({ selectedIds: ids, roomId: ids[0] ?? null })
}

/** Picks the room of this floor that comes `step` after the one picked, in the order of the list; the first or the last where none is. */
export function selectNextRoom(step: 1 | -1): void {
  const job = openJob()
  if (job === null) return
  const { storeyId } = viewStore.getState()
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  const [picked] = selectedRooms(job)
  const at = rooms.findIndex(({ id }) => id === picked)
  const next = rooms.at(at < 0 ? (step > 0 ? 0 : -1) : (at + step) % rooms.length)
  if (next !== undefined) viewStore.setState({ selectedIds: [next.id], roomId: next.id, surfaceKey: null })
}
