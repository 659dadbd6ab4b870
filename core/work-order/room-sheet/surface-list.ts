import type { RoomId } from '../../project/sketch-records.ts'
import type { SurfaceClass } from '../../project/vocabulary.ts'
import { wallLetter } from '../../project/walls.ts'
import type { SurfaceQuantity } from '../../quantities/takeoff-types.ts'
import { amountsSum } from '../../specification/amounts.ts'
import { surfaceNoun } from '../../specification/trade-words.ts'
import type { Step, StepAmounts } from '../../specification/types.ts'
import { partsSum, woodworkWords } from '../../specification/woodwork.ts'
import { inRoom } from '../by-room.ts'
import type { SetContext } from './set-context.ts'
import { shortArea, shortLength } from './sheet-words.ts'

const round: readonly SurfaceClass[] = [
  'sash',
  'doors',
  'trim',
  'wainscot',
  'builtWork',
  'radiators',
  'stairs',
  'ceiling',
  'walls',
]

/**
 * The surfaces of some steps as a hand reads them: `sash 6, doors E, F, crown 48 ft`, or without amounts `sash, doors E, F, trim`. Letters
 * where not all walls or doors of a room are meant, rooms where not all of the set are.
 */
export function surfaceList(context: SetContext, steps: readonly Step[], withAmounts: boolean): string {
  const classes = round.filter((each) => steps.some(({ surfaceClass }) => surfaceClass === each))
  const words = classes.map((each) =>
    classWords(
      context,
      each,
      steps.filter(({ surfaceClass }) => surfaceClass === each),
      withAmounts,
    ),
  )
  return `${words.join(', ')}${roomWords(context, steps)}`
}

function classWords(
  context: SetContext,
  surfaceClass: SurfaceClass,
  steps: readonly Step[],
  withAmounts: boolean,
): string {
  const letters = lettersOf(context, surfaceClass, steps)
  const noun = `${nounFor(surfaceClass, letters)}${letters.map((letter, at) => `${at === 0 ? ' ' : ', '}${letter}`).join('')}`
  if (!withAmounts) return noun
  const isWhole = steps.every(({ parts }) => parts.length > 0)
  if (surfaceClass === 'trim' && isWhole) {
    return partsSum(steps.flatMap(({ parts }) => parts))
      .map(({ kind, amounts }) => `${woodworkWords[kind]} ${shortLength(amounts.length, context.system)}`)
      .join(', ')
  }
  const amount = amountWords(context, amountsSum(steps.map(({ amounts }) => amounts)), surfaceClass)
  return amount === '' ? noun : `${noun} ${amount}`
}

/** Pieces for what is counted, else the area, else the length. */
export function amountWords(
  { system }: SetContext,
  { area, length, count }: StepAmounts,
  surfaceClass: SurfaceClass | null,
): string {
  const faces = count === 1 ? '1 face' : `${count} faces`
  if (surfaceClass === 'doors' && count > 0) return faces
  if ((surfaceClass === 'sash' || surfaceClass === 'builtWork') && count > 0) return String(count)
  if (area > 0) return shortArea(area, system)
  if (length > 0) return shortLength(length, system)
  return count > 0 ? String(count) : ''
}

/** `door` before one letter, `doors` before several or none. */
function nounFor(surfaceClass: SurfaceClass, letters: readonly string[]): string {
  const isOne = letters.length === 1
  if (surfaceClass === 'doors') return isOne ? 'door' : 'doors'
  return surfaceClass === 'walls' && isOne ? 'wall' : surfaceNoun(surfaceClass)
}

/** Of doors, of some of the windows, of some of the walls of a room worked alone; none where all are meant. */
function lettersOf(
  context: SetContext,
  surfaceClass: SurfaceClass,
  steps: readonly Step[],
): readonly string[] {
  if (surfaceClass === 'doors' || surfaceClass === 'sash') {
    const all = surfacesOfClass(context, surfaceClass)
    const letters = openingLetters(context, quantitiesOf(context, steps))
    const isAll = letters.length === openingLetters(context, all).length
    return isAll && surfaceClass === 'sash' ? [] : letters
  }
  if (surfaceClass !== 'walls') return []
  const rooms = new Set(steps.map(({ roomId }) => roomId))
  const [roomId] = rooms
  if (rooms.size !== 1 || roomId === undefined) return []
  const here = wallLettersOf(context, roomId, quantitiesOf(context, steps))
  const all = wallLettersOf(context, roomId, surfacesOfClass(context, 'walls'))
  return here.length === all.length ? [] : here
}

function quantitiesOf({ takeoff }: SetContext, steps: readonly Step[]): readonly SurfaceQuantity[] {
  return steps.flatMap(({ surfaceKeys }) => surfaceKeys.flatMap((key) => takeoff.byKey.get(key) ?? []))
}

function surfacesOfClass(
  { takeoff, set }: SetContext,
  surfaceClass: SurfaceClass,
): readonly SurfaceQuantity[] {
  return set.roomIds.flatMap((roomId) =>
    inRoom(takeoff.surfaces, roomId).filter((surface) => surface.surfaceClass === surfaceClass),
  )
}

function openingLetters({ openings }: SetContext, surfaces: readonly SurfaceQuantity[]): readonly string[] {
  const ids = new Set(
    surfaces.flatMap(({ surface }) => (surface.kind === 'opening' ? [surface.openingId] : [])),
  )
  return openings.filter(({ openingId }) => ids.has(openingId)).map(({ letter }) => letter)
}

function wallLettersOf(
  { job }: SetContext,
  roomId: RoomId,
  surfaces: readonly SurfaceQuantity[],
): readonly string[] {
  const ids = new Set(
    surfaces.flatMap(({ surface }) =>
      surface.kind === 'wall' && surface.roomId === roomId ? [surface.wallId] : [],
    ),
  )
  return (job.rooms[roomId]?.corners ?? []).flatMap(({ wallId }, index) =>
    ids.has(wallId) ? [wallLetter(index)] : [],
  )
}

/** ` (Rear closet)` where the steps do not go through all rooms of the set, ` (room only)` where they keep to the main one. */
function roomWords({ job, set }: SetContext, steps: readonly Step[]): string {
  const rooms = new Set(steps.map(({ roomId }) => roomId))
  if (set.roomIds.every((id) => rooms.has(id))) return ''
  const here = set.roomIds.filter((id) => rooms.has(id))
  if (here.length === 1 && here[0] === set.id) return ' (room only)'
  return ` (${here.map((id) => job.rooms[id]?.name ?? id).join(', ')})`
}
