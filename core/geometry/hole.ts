import { bendsBetween, levelOf, lowestBetween, sortedPlaces } from './band.ts'
import { type HeightPoint, heightAt } from './height-line.ts'

/** The upper edge of a hole: level, or an arc of a circle (the upper half). */
export type Head =
  | { readonly kind: 'level'; readonly height: number }
  | {
      readonly kind: 'arc'
      readonly centreAt: number
      readonly centreHeight: number
      readonly radius: number
    }

/** A hole in a wall seen square on: upright sides, a level bottom, a head. Length units along the wall and up. */
export interface Hole {
  readonly from: number
  readonly to: number
  readonly bottom: number
  readonly head: Head
}

export interface HoleMeasure {
  /** Square length units. */
  readonly area: number
  readonly startSide: number
  readonly endSide: number
  readonly headLength: number
  readonly bottomLength: number
  /**
   * Sum of the tangents of half the turn at each corner of the upper outline. A mitred band of width b around sides and head is
   * longer than the outline by b x this on its centre line and 2b x this on its outer edge: 2 for a square head.
   */
  readonly mitres: number
  /** Radians the outline turns along arcs; a band's centre line is longer by b/2 x this. */
  readonly arcTurn: number
}

const nothing: HoleMeasure = {
  area: 0,
  startSide: 0,
  endSide: 0,
  headLength: 0,
  bottomLength: 0,
  mitres: 0,
  arcTurn: 0,
}

/** A circular segment of this rise over a width, its crown at `top`. */
export function segmentHead(from: number, to: number, top: number, rise: number): Head {
  const half = (to - from) / 2
  const radius = (half * half + rise * rise) / (2 * rise)
  return { kind: 'arc', centreAt: from + half, centreHeight: top - radius, radius }
}

/** The height of the head at a place along the wall; far outside of an arc it falls without end. */
export function headHeightAt(head: Head, at: number): number {
  if (head.kind === 'level') return head.height
  const away = at - head.centreAt
  const square = head.radius * head.radius - away * away
  // At its very ends rounding may leave a hair less than nothing; farther out there is no arc.
  if (square < 0) return Math.abs(away) - head.radius < 1e-3 ? head.centreHeight : Number.NEGATIVE_INFINITY
  return head.centreHeight + Math.sqrt(square)
}

/** Measures the part of a hole between two lines of the wall it is in; what lies beyond them is not there. */
export function measureHole(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): HoleMeasure {
  return plainRectangle(hole, lower, upper) ?? measurePieces(hole, lower, upper)
}

/** Most holes are rectangles clear of any rake. */
function plainRectangle(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): HoleMeasure | null {
  if (hole.head.kind !== 'level') return null
  const floor = levelOf(lower)
  if (floor === null) return null
  const ceiling = levelOf(upper) ?? lowestBetween(upper, hole.from, hole.to)
  if (ceiling < hole.head.height && levelOf(upper) === null) return null
  const side = Math.min(hole.head.height, ceiling) - Math.max(hole.bottom, floor)
  const width = hole.to - hole.from
  if (side <= 0 || width <= 0) return nothing
  return {
    area: width * side,
    startSide: side,
    endSide: side,
    headLength: width,
    bottomLength: width,
    mitres: 2,
    arcTurn: 0,
  }
}

interface Piece {
  readonly from: number
  readonly to: number
  readonly arc: boolean
  /** Heights of the bottom and, for a straight piece, of the top at both ends. */
  readonly bottoms: readonly [number, number]
  readonly tops: readonly [number, number]
  /** Direction of the top at both ends, radians from level, up positive. */
  readonly directions: readonly [number, number]
}

function measurePieces(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): HoleMeasure {
  const pieces = piecesOf(hole, lower, upper)
  const first = pieces[0]
  const last = pieces.at(-1)
  if (first === undefined || last === undefined) return nothing
  return {
    area: pieces.reduce((sum, piece) => sum + pieceArea(piece, hole.head), 0),
    startSide: first.tops[0] - first.bottoms[0],
    endSide: last.tops[1] - last.bottoms[1],
    headLength: pieces.reduce((sum, piece) => sum + topLength(piece, hole.head), 0),
    bottomLength: pieces.reduce((sum, piece) => sum + bottomLength(piece), 0),
    mitres: mitresOf(pieces),
    arcTurn: pieces.reduce(
      (sum, piece) => sum + (piece.arc ? piece.directions[0] - piece.directions[1] : 0),
      0,
    ),
  }
}

function piecesOf(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): readonly Piece[] {
  const places = holePlaces(hole, lower, upper)
  const pieces: Piece[] = []
  for (let index = 1; index < places.length; index++) {
    const from = places[index - 1] as number
    const to = places[index] as number
    const middle = (from + to) / 2
    const head = headHeightAt(hole.head, middle)
    const ceiling = heightAt(upper, middle)
    const floor = heightAt(lower, middle)
    if (Math.min(head, ceiling) <= Math.max(hole.bottom, floor)) continue
    pieces.push(makePiece(hole, lower, upper, from, to, head <= ceiling, floor > hole.bottom))
  }
  return pieces
}

function makePiece(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  from: number,
  to: number,
  underHead: boolean,
  onFloor: boolean,
): Piece {
  const topAt = (at: number) => (underHead ? headHeightAt(hole.head, at) : heightAt(upper, at))
  const bottomAt = (at: number) => (onFloor ? heightAt(lower, at) : hole.bottom)
  const tops = [topAt(from), topAt(to)] as const
  const slope = Math.atan2(tops[1] - tops[0], to - from)
  const arc = underHead && hole.head.kind === 'arc'
  return {
    from,
    to,
    arc,
    tops,
    bottoms: [bottomAt(from), bottomAt(to)],
    directions: arc ? [arcDirection(hole.head, from), arcDirection(hole.head, to)] : [slope, slope],
  }
}

function arcDirection(head: Head, at: number): number {
  if (head.kind === 'level') return 0
  const share = (head.centreAt - at) / head.radius
  return Math.asin(Math.max(-1, Math.min(1, share)))
}

/** Bends of the lines and every place where head, bottom and lines may cross. */
function holePlaces(
  hole: Hole,
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
): readonly number[] {
  const { from, to, head } = hole
  const straight = sortedPlaces([
    from,
    to,
    ...bendsBetween(lower, from, to),
    ...bendsBetween(upper, from, to),
  ])
  const found = [...straight]
  for (let index = 1; index < straight.length; index++) {
    const start = straight[index - 1] as number
    const end = straight[index] as number
    for (const line of [lower, upper]) {
      found.push(...headCrossings(head, line, start, end), ...levelCrossings(hole.bottom, line, start, end))
    }
    found.push(...levelCrossingOfHead(head, hole.bottom))
    const gap = levelCrossings(0, gapLine(lower, upper, start, end), start, end)
    found.push(...gap)
  }
  return sortedPlaces(found.filter((at) => at >= from && at <= to))
}

function gapLine(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  start: number,
  end: number,
): readonly HeightPoint[] {
  return [start, end].map((at) => ({ at, height: heightAt(upper, at) - heightAt(lower, at) }))
}

function levelCrossings(
  level: number,
  line: readonly HeightPoint[],
  start: number,
  end: number,
): readonly number[] {
  const atStart = heightAt(line, start) - level
  const atEnd = heightAt(line, end) - level
  return atStart * atEnd < 0 ? [start + (atStart / (atStart - atEnd)) * (end - start)] : []
}

function headCrossings(
  head: Head,
  line: readonly HeightPoint[],
  start: number,
  end: number,
): readonly number[] {
  if (head.kind === 'level') return levelCrossings(head.height, line, start, end)
  const slope = (heightAt(line, end) - heightAt(line, start)) / (end - start)
  // (x - c)^2 + (h + slope (x - c))^2 = r^2, with h the line's height over the centre at the centre's place.
  const over = heightAt(line, start) + slope * (head.centreAt - start) - head.centreHeight
  const a = 1 + slope * slope
  const b = slope * over
  const c = over * over - head.radius * head.radius
  const square = b * b - a * c
  if (square < 0) return []
  const root = Math.sqrt(square)
  return [(-b - root) / a, (-b + root) / a]
    .map((away) => head.centreAt + away)
    .filter((at) => at > start && at < end)
}

function levelCrossingOfHead(head: Head, level: number): readonly number[] {
  if (head.kind === 'level') return []
  const over = level - head.centreHeight
  const square = head.radius * head.radius - over * over
  if (square < 0) return []
  return [head.centreAt - Math.sqrt(square), head.centreAt + Math.sqrt(square)]
}

function pieceArea(piece: Piece, head: Head): number {
  const width = piece.to - piece.from
  const under = piece.arc
    ? arcIntegral(head, piece.to) - arcIntegral(head, piece.from) + headCentre(head) * width
    : ((piece.tops[0] + piece.tops[1]) / 2) * width
  return Math.max(0, under - ((piece.bottoms[0] + piece.bottoms[1]) / 2) * width)
}

function headCentre(head: Head): number {
  return head.kind === 'arc' ? head.centreHeight : head.height
}

/** Area under the arc over its centre line, from the centre to a place: half of t sqrt(r^2 - t^2) + r^2 asin(t / r). */
function arcIntegral(head: Head, at: number): number {
  if (head.kind === 'level') return 0
  const t = Math.max(-head.radius, Math.min(head.radius, at - head.centreAt))
  const upright = Math.sqrt(head.radius * head.radius - t * t)
  return (t * upright + head.radius * head.radius * Math.asin(t / head.radius)) / 2
}

function topLength(piece: Piece, head: Head): number {
  if (piece.arc && head.kind === 'arc') return head.radius * (piece.directions[0] - piece.directions[1])
  return straightLength(piece.to - piece.from, piece.tops[1] - piece.tops[0])
}

function bottomLength(piece: Piece): number {
  return straightLength(piece.to - piece.from, piece.bottoms[1] - piece.bottoms[0])
}

function straightLength(run: number, rise: number): number {
  return rise === 0 ? run : Math.sqrt(run * run + rise * rise)
}

function mitresOf(pieces: readonly Piece[]): number {
  let direction = Math.PI / 2
  let sum = 0
  for (const piece of pieces) {
    sum += Math.tan(Math.abs(direction - piece.directions[0]) / 2)
    direction = piece.directions[1]
  }
  return sum + Math.tan(Math.abs(direction + Math.PI / 2) / 2)
}
