import { groupedBy } from '../lists/lists.ts'
import { type Job, records } from '../project/job.ts'
import { resolveFinish } from '../project/scopes.ts'
import type { RoomId, WallId } from '../project/sketch-records.ts'
import { type SurfaceRef, surfaceKey } from '../project/surface-ref.ts'
import type { SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'

/** A color as a drawing shows it: by itself, and by its letter where there is only black. */
export interface ColorMark {
  /** `a` for the first color of the job that is on something. */
  readonly letter: string
  readonly name: string
  /** `#rrggbb`, for the screen and for a color printer only. */
  readonly shown: string
}

/** What a room is painted in; null is left as it is, or not chosen yet. */
export interface RoomColors {
  readonly ceiling: ColorMark | null
  readonly walls: ReadonlyMap<WallId, WallColors>
  /** Of most of its woodwork. */
  readonly woodwork: ColorMark | null
  /** By opening and side, `window-3 near`. */
  readonly openings: ReadonlyMap<string, ColorMark>
}

interface WallColors {
  readonly upper: ColorMark | null
  /** Below a rail or cap; undefined where the wall is not divided. */
  readonly lower: ColorMark | null | undefined
}

export interface HouseColors {
  /** All that are on something, by letter. */
  readonly marks: readonly ColorMark[]
  readonly rooms: ReadonlyMap<RoomId, RoomColors>
  readonly on: (surface: SurfaceRef) => ColorMark | null
}

/** The chosen color of every surface that is painted. */
export function houseColors(job: Job, takeoff: Takeoff): HouseColors {
  const colourOf = (surface: SurfaceRef) => {
    const finish = resolveFinish(job, surface)
    return finish?.paint === true ? finish.colourId : null
  }
  const chosen = new Map(takeoff.surfaces.map(({ key, surface }) => [key, colourOf(surface)]))
  const used = new Set(chosen.values())
  const marks = new Map(
    records(job.colours)
      .filter(({ id }) => used.has(id))
      .map(({ id, name, shown }, index) => [id, { letter: letterAt(index), name, shown }]),
  )
  const on = (surface: SurfaceRef) => {
    const key = surfaceKey(surface)
    const colour = chosen.has(key) ? chosen.get(key) : colourOf(surface)
    return (colour && marks.get(colour)) ?? null
  }
  const byRoom = groupedBy(takeoff.surfaces, ({ roomId }) => roomId)
  const rooms = new Map([...byRoom].map(([roomId, own]) => [roomId, roomColors(roomId, own, on)]))
  return { marks: [...marks.values()], rooms, on }
}

/** `a` to `z`, then `aa`. */
function letterAt(index: number): string {
  const letter = String.fromCharCode(97 + (index % 26))
  return index < 26 ? letter : letterAt(Math.floor(index / 26) - 1) + letter
}

function roomColors(roomId: RoomId, surfaces: readonly SurfaceQuantity[], on: HouseColors['on']): RoomColors {
  const walls = new Map<WallId, WallColors>()
  const openings = new Map<string, ColorMark>()
  const woodwork: ColorMark[] = []
  for (const { surface } of surfaces) {
    const mark = on(surface)
    if (surface.kind === 'wall') {
      const known = walls.get(surface.wallId) ?? { upper: null, lower: undefined }
      walls.set(
        surface.wallId,
        surface.zone === 'lower' ? { ...known, lower: mark } : { ...known, upper: mark },
      )
    }
    if (mark === null) continue
    if (surface.kind === 'trim') woodwork.push(mark)
    if (surface.kind !== 'opening') continue
    woodwork.push(mark)
    // Door and sash are what one sees of an opening; its casing stands in where it has neither.
    const key = `${surface.openingId} ${surface.side}`
    if (surface.part === 'slab' || surface.part === 'sash' || !openings.has(key)) openings.set(key, mark)
  }
  return { ceiling: on({ kind: 'ceiling', roomId }), walls, woodwork: mostUsed(woodwork), openings }
}

function mostUsed(marks: readonly ColorMark[]): ColorMark | null {
  const counts = new Map<ColorMark, number>()
  for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1)
  return [...counts].toSorted(([, one], [, other]) => other - one)[0]?.[0] ?? null
}

/** What stands in a room below its name: `ceiling a`, `walls b, c`, `woodwork d`. */
export function colorsByLetter(colors: RoomColors): readonly string[] {
  const walls = [...colors.walls.values()].flatMap(({ upper, lower }) => [
    upper,
    ...(lower === undefined ? [] : [lower]),
  ])
  const said = (what: string, marks: readonly (ColorMark | null)[]) => {
    const letters = [...new Set(marks.flatMap((mark) => (mark === null ? [] : [mark.letter])))].toSorted()
    return letters.length === 0 ? [] : [`${what} ${letters.join(', ')}`]
  }
  return [
    ...said('walls', walls),
    ...said('ceiling', [colors.ceiling]),
    ...said('woodwork', [colors.woodwork]),
  ]
}
