import { pointBetween } from '../../../core/geometry/point.ts'
import { type Job, records } from '../../../core/project/job.ts'
import { type Outcome, succeed } from '../../../core/project/problem.ts'
import type { Room, RoomId } from '../../../core/project/sketch-records.ts'
import type { OpeningKind } from '../../../core/project/vocabulary.ts'
import { roomWalls, type Wall } from '../../../core/project/walls.ts'
import { applyCommands } from '../../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { facingWall } from '../../../core/sketch/facing-wall.ts'
import { roomKindOf, usualHardware } from '../../../core/sketch/room-kinds.ts'
import { surroundings } from '../../canvas/sketch-input.ts'
import { addOpeningAt } from '../../canvas/tools/opening.ts'
import { jobStore, viewStore } from '../../state/app.ts'
import { newId } from '../../state/new-id.ts'
import { keptItemWords } from '../parts/words.ts'

/** What a room of this use usually has and this one does not, in words; empty where it has openings or hardware already. */
export function usualWords(job: Job, room: Room): string {
  const kind = roomKindOf(job, room)
  const hasOwn =
    records(job.openings).some(({ roomId }) => roomId === room.id) ||
    records(job.keptItems).some(({ roomId }) => roomId === room.id)
  if (room.use === 'other' || hasOwn) return ''
  const counts: readonly (readonly [number, string])[] = [
    [kind.doors, 'door'],
    [kind.windows, 'window'],
    ...usualHardware(kind, kind.doors).map((item) => [item.count, keptItemWords[item.kind]] as const),
  ]
  return counts
    .filter(([count]) => count > 0)
    .map(([count, noun]) => `${count} ${noun}${count === 1 ? '' : 's'}`)
    .join(', ')
}

/** Gives a room what its use usually has, as one action: height, openings where they fit, and hardware that stays. */
export function giveUsual(room: Room): void {
  const { job } = jobStore.store.getState()
  if (job === null) return
  const kind = roomKindOf(job, room)
  const change: Partial<Room> = {
    ...(kind.height === null ? {} : { ceiling: { kind: 'flat' as const, height: kind.height } }),
    ...(kind.above === null ? {} : { above: kind.above }),
  }
  let outcome: Outcome<Job> = applyCommands(job, [{ kind: 'setRoom', roomId: room.id, change }])
  for (let count = 0; count < kind.doors; count++) outcome = withOpening(outcome, room.id, 'door')
  for (let count = 0; count < kind.windows; count++) outcome = withOpening(outcome, room.id, 'window')
  if (outcome.ok) outcome = applyCommands(outcome.value, hardware(outcome.value, room))
  jobStore.perform(`give ${room.name} what is usual`, outcome)
}

function hardware(job: Job, room: Room): readonly SketchCommand[] {
  const doors = records(job.openings).filter(
    ({ kind, roomId }) => kind === 'door' && roomId === room.id,
  ).length
  return usualHardware(roomKindOf(job, room), doors).map((item) => ({
    kind: 'putRecord',
    collection: 'keptItems',
    record: { ...item, id: newId('kept'), roomId: room.id, on: { kind: 'room' }, wired: false, note: '' },
  }))
}

/** Where along a wall an opening is tried, as shares of its length: the middle first. */
const shares = [0.5, 0.25, 0.75, 0.125, 0.375, 0.625, 0.875]

/** The job with one more opening in this room, in the first place where it fits; as it was where none does. */
function withOpening(outcome: Outcome<Job>, roomId: RoomId, kind: OpeningKind): Outcome<Job> {
  if (!outcome.ok) return outcome
  const job = outcome.value
  const room = job.rooms[roomId]
  if (room === undefined) return outcome
  for (const wall of wallsFor(job, room, kind)) {
    for (const share of shares) {
      const next = openingAt(job, room, wall, share, kind)
      if (next?.outcome.ok) return next.outcome
    }
  }
  return outcome
}

function openingAt(job: Job, room: Room, wall: Wall, share: number, kind: OpeningKind) {
  const around = { ...surroundings(job), storeyId: room.storeyId, selectedIds: [room.id] }
  const add = addOpeningAt(kind, pointBetween(wall.start, wall.end, share), around)
  if (add === null || add.opening.roomId !== room.id) return null
  return { id: add.opening.id, outcome: applyCommands(job, [add]) }
}

/** Doors go first where another room is behind, windows where none is; walls with few openings before others, long before short. */
function wallsFor(job: Job, room: Room, kind: OpeningKind): readonly Wall[] {
  const isWay = kind === 'door' || kind === 'casedOpening'
  const rank = (wall: Wall) => {
    const middle = wall.length / 2
    const isBacked = facingWall(job, room.id, wall.id, middle, middle) !== null
    const here = records(job.openings).filter(({ wallId }) => wallId === wall.id).length
    return (isBacked === isWay ? 0 : 10) + here
  }
  return [...roomWalls(room)].sort((a, b) => rank(a) - rank(b) || b.length - a.length)
}

/** Sets the opening that was set last once more: in the selected room, else in its own; on its own wall first. */
export function repeatLastOpening(): void {
  const { job } = jobStore.store.getState()
  const last = job === null ? undefined : records(job.openings).at(-1)
  if (job === null || last === undefined) return
  const chosen = viewStore.getState().selectedIds.find((id) => job.rooms[id] !== undefined)
  const room = job.rooms[chosen ?? last.roomId]
  if (room === undefined) return
  const walls = [...wallsFor(job, room, last.kind)].sort(
    (a, b) => Number(b.id === last.wallId) - Number(a.id === last.wallId),
  )
  for (const wall of walls) {
    for (const share of shares) {
      const next = openingAt(job, room, wall, share, last.kind)
      if (!next?.outcome.ok) continue
      if (jobStore.perform('set the last opening again', succeed(next.outcome.value))) {
        viewStore.setState({ selectedIds: [next.id], roomId: room.id })
      }
      return
    }
  }
}
