import { levelOf, lineLength, lowestBetween, stretchesBelow } from '../geometry/band.ts'
import { type HeightPoint, heightAt } from '../geometry/height-line.ts'
import { type Interval, intervalsLeft, intervalsShared } from '../geometry/interval.ts'
import { present } from '../lists/lists.ts'
import { openingNoun, trimNoun, wallName } from '../project/sketch-words.ts'
import type { Edge, FinishMark } from './finish-marks.ts'
import { outerLengthByZone, stoolOutlineByZone } from './opening-outline.ts'
import type { BandView, WallView, ZoneView } from './wall-view.ts'

/** What every broad surface and trim run of a room meets, and along what length. Each meeting is noted on both surfaces. */
export interface RoomEdges {
  readonly ceiling: readonly Edge[]
  readonly zones: ReadonlyMap<ZoneView, readonly Edge[]>
  readonly bands: ReadonlyMap<BandView, readonly Edge[]>
}

interface RoomMarks {
  /** Undefined where the room is open above. */
  readonly ceiling: FinishMark | undefined
  readonly floor: FinishMark
  readonly bandMark: (band: BandView) => FinishMark
}

interface Notes {
  readonly ceiling: Edge[]
  readonly zones: Map<ZoneView, Edge[]>
  readonly bands: Map<BandView, Edge[]>
}

/** Works out from the walls of a room, as they are seen from inside, which surfaces meet along what length. */
export function roomEdges(views: readonly WallView[], marks: RoomMarks): RoomEdges {
  const notes: Notes = { ceiling: [], zones: new Map(), bands: new Map() }
  views.forEach((view, index) => {
    noteTop(notes, view, marks)
    noteBottom(notes, view, marks)
    noteRails(notes, view, marks)
    noteOpenings(notes, view)
    noteCorner(notes, view, present(views[(index + 1) % views.length]))
  })
  return notes
}

function noteZone(notes: Notes, zone: ZoneView, neighbour: FinishMark, length: number, along: string): void {
  if (length > 0) noteOn(notes.zones, zone, { neighbour, length, along })
}

function noteBand(notes: Notes, band: BandView, neighbour: FinishMark, length: number, along: string): void {
  if (length > 0) noteOn(notes.bands, band, { neighbour, length, along })
}

function noteOn<Face>(edges: Map<Face, Edge[]>, face: Face, edge: Edge): void {
  const known = edges.get(face)
  if (known === undefined) edges.set(face, [edge])
  else known.push(edge)
}

/** Ceiling, crown and wall meet along the ceiling line, except where an opening reaches up to it. */
function noteTop(notes: Notes, view: WallView, marks: RoomMarks): void {
  const crown = view.bands.find((band) => band.run.kind === 'crown')
  const crowned = crown?.stretches ?? []
  const bare = intervalsLeft({ from: 0, to: view.wall.length }, [...crowned, ...holesAtCeiling(view)])
  view.zones.forEach((zone, index) => {
    const own = topStretches(view, index)
    if (crown !== undefined) {
      const length = lengthAlong(view.ceiling, crowned, own)
      noteZone(notes, zone, marks.bandMark(crown), length, 'crown')
      noteBand(notes, crown, zone.mark, length, wallName(view.wall))
    }
    if (marks.ceiling !== undefined) {
      const length = lengthAlong(view.ceiling, bare, own)
      noteZone(notes, zone, marks.ceiling, length, 'ceiling')
      if (length > 0) notes.ceiling.push({ neighbour: zone.mark, length, along: wallName(view.wall) })
    }
  })
  if (crown === undefined || marks.ceiling === undefined) return
  noteBand(notes, crown, marks.ceiling, crown.length, 'ceiling')
  if (crown.length > 0) {
    notes.ceiling.push({ neighbour: marks.bandMark(crown), length: crown.length, along: 'crown' })
  }
}

/** Where a zone reaches up to the ceiling: the upper one over the rail, the lower one where a slope comes below the rail. */
export function topStretches(view: WallView, index: number): readonly Interval[] {
  const whole = { from: 0, to: view.wall.length }
  const [lower, upper] = view.zones
  if (lower === undefined || upper === undefined) return [whole]
  const over = stretchesBelow(upper.lower, upper.upper, 0, view.wall.length)
  return index === 1 ? over : intervalsLeft(whole, over)
}

/** Half a length unit: openings up to the ceiling may miss it by a rounding. */
const hair = 0.5

/** Stretches of a wall in which an opening reaches the ceiling, so that no wall meets it there. */
export function holesAtCeiling(view: WallView): readonly Interval[] {
  return view.holes.flatMap(({ placed: { place } }) => {
    const ceiling = levelOf(view.ceiling)
    if (ceiling !== null) return place.top + hair >= ceiling ? [place] : []
    if (place.top + hair <= lowestBetween(view.ceiling, place.from, place.to)) return []
    const top = [{ at: place.from, height: place.top + hair }]
    return stretchesBelow(view.ceiling, top, place.from, place.to)
  })
}

function lengthAlong(
  line: readonly HeightPoint[],
  stretches: readonly Interval[],
  within: readonly Interval[],
): number {
  let sum = 0
  for (const one of stretches) {
    for (const other of within) {
      const from = Math.max(one.from, other.from)
      const to = Math.min(one.to, other.to)
      if (from < to) sum += lineLength(line, from, to)
    }
  }
  return sum
}

/** The wall ends at the baseboard, else at the floor; doors interrupt both. */
function noteBottom(notes: Notes, view: WallView, marks: RoomMarks): void {
  const lowest = present(view.zones[0])
  const base = view.bands.find((band) => band.run.kind === 'baseboard')
  if (base !== undefined) {
    noteZone(notes, lowest, marks.bandMark(base), base.length, 'baseboard')
    noteBand(notes, base, lowest.mark, base.length, wallName(view.wall))
    noteBand(notes, base, marks.floor, base.length, 'floor')
  }
  const onFloor = view.holes.filter((hole) => hole.onFloor).map((hole) => hole.outer)
  const bare = intervalsLeft({ from: 0, to: view.wall.length }, [...(base?.stretches ?? []), ...onFloor])
  noteZone(
    notes,
    lowest,
    marks.floor,
    bare.reduce((sum, each) => sum + lineLength(view.floor, each.from, each.to), 0),
    'floor',
  )
}

/** A rail has the wall above and below it; the one that divides the wall has a zone on each side. */
function noteRails(notes: Notes, view: WallView, marks: RoomMarks): void {
  for (const band of view.bands) {
    if (band.run.kind === 'baseboard' || band.run.kind === 'crown') continue
    const [below, above] = zonesAtRail(view, band)
    for (const zone of [below, above]) {
      noteZone(notes, zone, marks.bandMark(band), band.length, trimNoun(band.run))
      noteBand(notes, band, zone.mark, band.length, wallName(view.wall))
    }
  }
}

/** The zones of the wall below and above a rail; the same one twice where the rail does not part the wall. */
export function zonesAtRail(view: WallView, band: BandView): readonly [ZoneView, ZoneView] {
  const lower = present(view.zones[0])
  const upper = view.zones[1] ?? lower
  if (band.run === view.divider) return [lower, upper]
  const middle = view.wall.length / 2
  return heightAt(band.lower, middle) < heightAt(lower.upper, middle) ? [lower, lower] : [upper, upper]
}

function noteOpenings(notes: Notes, view: WallView): void {
  for (const hole of view.holes) {
    const { rim, stool } = hole.marks
    outerLengthByZone(view, hole).forEach((length, index) => {
      noteZone(notes, present(view.zones[index]), rim, length, openingNoun(hole.placed.opening))
    })
    if (stool === undefined) continue
    stoolOutlineByZone(view, hole).forEach((length, index) => {
      noteZone(notes, present(view.zones[index]), stool, length, 'stool')
    })
  }
}

/** Walls of different finish meet in the corner, zone by zone as far as they stand beside one another. */
function noteCorner(notes: Notes, view: WallView, next: WallView): void {
  for (const one of view.zones) {
    const ofOne = uprightAt(one, view.wall.length)
    for (const other of next.zones) {
      if (one.mark === other.mark) continue
      const length = intervalsShared(ofOne, uprightAt(other, 0))
      noteZone(notes, one, other.mark, length, wallName(next.wall))
      noteZone(notes, other, one.mark, length, wallName(view.wall))
    }
  }
}

function uprightAt(zone: ZoneView, at: number): Interval {
  return { from: heightAt(zone.lower, at), to: heightAt(zone.upper, at) }
}
