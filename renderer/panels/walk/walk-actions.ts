import { type Job, records } from '../../../core/project/job.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import { surfaceKey } from '../../../core/project/surface-ref.ts'
import type { Condition } from '../../../core/project/survey-records.ts'
import type { SurfaceQuantity } from '../../../core/quantities/takeoff-types.ts'
import { lookedAtWith, pieceKey, type WalkPiece, walkPieces } from '../../../core/specification/looked-at.ts'
import { conditionWords } from '../../../core/specification/trade-words.ts'
import { type UsualFinding, usualAmounts, usualFindings } from '../../../core/specification/usual-findings.ts'
import { type Length, sumLengths, zeroLength } from '../../../core/units/length.ts'
import { jobStore, viewStore } from '../../state/app.ts'
import { takeoffOf } from '../../state/derived.ts'
import { todayByClock } from '../../state/planner-now.ts'
import { command, putRecord } from '../parts/edits.ts'
import { newCondition } from '../parts/found/condition-records.ts'

/** Where the walk stands: the job, the room and the surface picked in it. */
interface Place {
  readonly job: Job
  readonly room: Room
  readonly surface: SurfaceQuantity | null
}

function placeNow(): Place | null {
  const { job } = jobStore.store.getState()
  if (job === null) return null
  const { roomId, surfaceKey: key } = viewStore.getState()
  const room = roomAt(job, roomId)
  if (room === undefined) return null
  const picked = takeoffOf(job).byKey.get(key ?? '')
  return { job, room, surface: picked?.roomId === room.id ? picked : null }
}

/** The room the walk is in; the first one until somebody picks another. */
export function roomAt(job: Job, roomId: RoomId | null): Room | undefined {
  return job.rooms[roomId ?? ''] ?? records(job.rooms)[0]
}

/** Writes a usual finding down with its usual amount; once more on the same surface, it adds that amount. */
export function recordUsual(job: Job, surface: SurfaceQuantity, usual: UsualFinding): void {
  const amounts = usualAmounts(usual, surface, job.header.unitSystem)
  const there = records(job.conditions).find(
    ({ kind, on }) => kind === usual.kind && on.level === 'surface' && surfaceKey(on.surface) === surface.key,
  )
  const now = todayByClock()
  const condition: Condition =
    there === undefined
      ? { ...newCondition(surface, now), kind: usual.kind, ...amounts }
      : {
          ...there,
          length: lengthSum(there.length, amounts.length),
          areaMm2: sum(there.areaMm2, amounts.areaMm2),
          count: sum(there.count, amounts.count),
        }
  putRecord(`Record: ${conditionWords[usual.kind]}`, 'conditions', condition)
}

function lengthSum(one: Length | null, more: Length | null): Length | null {
  return more === null ? one : sumLengths([one ?? zeroLength, more])
}

function sum(one: number | null, more: number | null): number | null {
  return more === null ? one : (one ?? 0) + more
}

/** The finding behind the number keys on the picked surface. */
export function recordUsualAt(index: number): void {
  const place = placeNow()
  if (place === null || place.surface === null) return
  const { job, surface } = place
  const usual = usualFindings(job.header.yearBuilt, surface.surfaceClass)[index]
  if (usual !== undefined) recordUsual(job, surface, usual)
}

/** Says of pieces of a room that nothing is wrong with them, or takes that back. */
export function setSound(room: Room, keys: readonly string[], isSound: boolean): void {
  const change = { lookedAt: lookedAtWith(room, keys, isSound) }
  const action = isSound ? `Nothing wrong: ${room.name}` : `Not looked at after all: ${room.name}`
  command(action, { kind: 'setRoom', roomId: room.id, change })
}

/** Nothing is wrong with what is picked; goes on to the next piece of the room that nobody looked at. */
export function soundAndNext(): void {
  const place = placeNow()
  if (place === null) return
  const { job, room, surface } = place
  const pieces = walkPieces(job, takeoffOf(job).surfaces).get(room.id) ?? []
  const picked = surface === null ? null : pieceKey(surface.surface)
  const at = pieces.findIndex(({ key }) => key === picked)
  const next = nextOpen(pieces, at)
  if (pieces[at]?.state === 'open') setSound(room, [pieces[at].key], true)
  if (next !== null) pickPiece(room.id, next)
}

function nextOpen(pieces: readonly WalkPiece[], at: number): WalkPiece | null {
  const others = [...pieces.slice(at + 1), ...pieces.slice(0, Math.max(0, at))]
  return others.find(({ state }) => state === 'open') ?? null
}

/** Picks a piece by its first surface. */
function pickPiece(roomId: RoomId, piece: WalkPiece): void {
  viewStore.setState({ roomId, surfaceKey: piece.surfaces[0]?.key ?? null })
}

/** The next room in the order of the job, or with -1 the one before; round again at the ends. Its ceiling is picked. */
export function goToRoom(step: 1 | -1): void {
  const place = placeNow()
  if (place === null) return
  const rooms = records(place.job.rooms)
  const at = rooms.findIndex(({ id }) => id === place.room.id)
  const next = rooms.at((at + step + rooms.length) % rooms.length)
  if (next !== undefined) enterRoom(place.job, next.id)
}

/** Goes into a room with the first piece picked that nobody looked at, else its first one. */
export function enterRoom(job: Job, roomId: RoomId): void {
  const pieces = walkPieces(job, takeoffOf(job).surfaces).get(roomId) ?? []
  const piece = pieces.find(({ state }) => state === 'open') ?? pieces[0]
  if (piece === undefined) viewStore.setState({ roomId, surfaceKey: null })
  else pickPiece(roomId, piece)
}
