import type { Job } from '../project/job.ts'
import { openingNameIn } from '../project/opening-letters.ts'
import type { Opening, Room, RoomId } from '../project/sketch-records.ts'
import { openingNouns, trimNouns } from '../project/sketch-words.ts'
import type { SurfaceRef } from '../project/surface-ref.ts'
import type { Condition } from '../project/survey-records.ts'
import { wallLetter } from '../project/walls.ts'
import type { Takeoff } from '../quantities/takeoff-types.ts'
import { surfaceClassWords } from '../specification/trade-words.ts'
import type { Step } from '../specification/types.ts'

/** The room a surface is worked from; null where the record it names is gone. */
function roomOfSurface(job: Job, surface: SurfaceRef): RoomId | null {
  if (surface.kind !== 'opening') return surface.roomId
  const opening = job.openings[surface.openingId]
  return (surface.side === 'near' ? opening?.roomId : opening?.far?.roomId) ?? null
}

/** Null where its surface is no longer in the sketch. */
export function roomOfCondition(job: Job, condition: Condition): RoomId | null {
  return condition.on.level === 'room' ? condition.on.roomId : roomOfSurface(job, condition.on.surface)
}

/** `wall B`, `ceiling`, `baseboard`, `window (east): sash`. */
export function surfaceWords(job: Job, surface: SurfaceRef): string {
  switch (surface.kind) {
    case 'wall': {
      const letter = letterOf(job.rooms[surface.roomId], surface.wallId)
      return surface.zone === 'whole' ? `wall ${letter}` : `wall ${letter}, ${surface.zone} part`
    }
    case 'ceiling':
    case 'floor':
      return surface.kind
    case 'trim': {
      const run = job.trimRuns[surface.trimRunId]
      return run === undefined ? 'trim' : trimNouns[run.kind]
    }
    case 'opening':
      return `${openingWords(job, surface)}: ${surface.part}`
    case 'built':
      return job.builtItems[surface.builtItemId]?.name || 'built work'
  }
}

function openingWords(job: Job, surface: Extract<SurfaceRef, { readonly kind: 'opening' }>): string {
  const opening = job.openings[surface.openingId]
  const roomId = roomOfSurface(job, surface)
  return opening === undefined || roomId === null ? openingName(opening) : openingNameIn(job, opening, roomId)
}

/** Its own name, else what it is, in lower case. */
export function openingName(opening: Opening | undefined): string {
  if (opening === undefined) return 'opening'
  return opening.name === '' ? openingNouns[opening.kind] : opening.name
}

function letterOf(room: Room | undefined, wallId: string): string {
  const index = room?.corners.findIndex((corner) => corner.wallId === wallId) ?? -1
  return index < 0 ? '?' : wallLetter(index)
}

/** `Walls`, or `Walls A, C` or `Wall B` where not all of the room's walls are meant; `Room` for a step on the whole room. */
export function stepPlace(job: Job, takeoff: Takeoff, step: Step): string {
  if (step.surfaceClass === null) return 'Room'
  const word = surfaceClassWords[step.surfaceClass]
  const letters = wallLetters(job, takeoff, step)
  const room = job.rooms[step.roomId]
  if (letters.length === 0 || letters.length === (room?.corners.length ?? 0)) return word
  return letters.length === 1 ? `Wall ${letters[0]}` : `${word} ${letters.join(', ')}`
}

/** The same in the middle of a sentence: `walls A, C`. */
export function placeInSentence(place: string): string {
  return place.slice(0, 1).toLowerCase() + place.slice(1)
}

function wallLetters(job: Job, takeoff: Takeoff, step: Step): readonly string[] {
  const room = job.rooms[step.roomId]
  const wallIds = step.surfaceKeys.flatMap((key) => {
    const surface = takeoff.byKey.get(key)?.surface
    return surface?.kind === 'wall' ? [surface.wallId] : []
  })
  return (room?.corners ?? []).flatMap((corner, index) =>
    wallIds.includes(corner.wallId) ? [wallLetter(index)] : [],
  )
}
