import { type HeightPoint, heightAt } from './height-line.ts'
import type { Interval } from './interval.ts'

/**
 * Broken lines laid over one another: every figure is worked between the places where one of them bends or two of them cross,
 * so that within a piece both are straight and the order of the two does not change.
 */

/** The one height of a level line; null when it rises or falls. */
export function levelOf(points: readonly HeightPoint[]): number | null {
  const first = (points[0] as HeightPoint).height
  for (let index = 1; index < points.length; index++) {
    if ((points[index] as HeightPoint).height !== first) return null
  }
  return first
}

/** Where pieces begin and end: both ends, bends of either line, and crossings, in order and without doubles. */
export function piecePlaces(
  one: readonly HeightPoint[],
  other: readonly HeightPoint[],
  from: number,
  to: number,
): readonly number[] {
  const bends = sortedPlaces([from, to, ...bendsBetween(one, from, to), ...bendsBetween(other, from, to)])
  const crossings: number[] = []
  for (let index = 1; index < bends.length; index++) {
    const start = bends[index - 1] as number
    const end = bends[index] as number
    const gapAtStart = heightAt(one, start) - heightAt(other, start)
    const gapAtEnd = heightAt(one, end) - heightAt(other, end)
    if (gapAtStart * gapAtEnd < 0)
      crossings.push(start + (gapAtStart / (gapAtStart - gapAtEnd)) * (end - start))
  }
  return crossings.length === 0 ? bends : sortedPlaces([...bends, ...crossings])
}

/** Places at which the line may bend, its ends and `from` and `to` themselves left out. */
export function bendsBetween(points: readonly HeightPoint[], from: number, to: number): readonly number[] {
  return points.flatMap((point) => (point.at > from && point.at < to ? [point.at] : []))
}

/** Rising, each place once. */
export function sortedPlaces(places: readonly number[]): readonly number[] {
  return [...places].sort((a, b) => a - b).filter((at, index, sorted) => at !== sorted[index - 1])
}

/** Area between two lines where the upper is above the lower; where it is not, nothing. Square length units. */
export function areaBetween(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  from: number,
  to: number,
): number {
  const lowerLevel = levelOf(lower)
  const upperLevel = levelOf(upper)
  if (lowerLevel !== null && upperLevel !== null) return Math.max(0, upperLevel - lowerLevel) * (to - from)
  const places = piecePlaces(lower, upper, from, to)
  let sum = 0
  for (let index = 1; index < places.length; index++) {
    const start = places[index - 1] as number
    const end = places[index] as number
    const heights =
      Math.max(0, heightAt(upper, start) - heightAt(lower, start)) +
      Math.max(0, heightAt(upper, end) - heightAt(lower, end))
    sum += (heights / 2) * (end - start)
  }
  return sum
}

/** The lower of two lines at every place between two ends. */
export function lowerLine(
  one: readonly HeightPoint[],
  other: readonly HeightPoint[],
  from: number,
  to: number,
): readonly HeightPoint[] {
  const oneLevel = levelOf(one)
  const otherLevel = levelOf(other)
  if (oneLevel !== null && otherLevel !== null) return oneLevel <= otherLevel ? one : other
  return piecePlaces(one, other, from, to).map((at) => ({
    at,
    height: Math.min(heightAt(one, at), heightAt(other, at)),
  }))
}

/** The same line higher by `by`, or lower where that is negative. */
export function raisedLine(points: readonly HeightPoint[], by: number): readonly HeightPoint[] {
  return points.map((point) => ({ at: point.at, height: point.height + by }))
}

/** True length of a line between two places, along its slopes. */
export function lineLength(points: readonly HeightPoint[], from: number, to: number): number {
  if (levelOf(points) !== null) return to - from
  const places = sortedPlaces([from, to, ...bendsBetween(points, from, to)])
  let sum = 0
  for (let index = 1; index < places.length; index++) {
    const run = (places[index] as number) - (places[index - 1] as number)
    const rise = heightAt(points, places[index] as number) - heightAt(points, places[index - 1] as number)
    sum += Math.sqrt(run * run + rise * rise)
  }
  return sum
}

/** The stretches on which one line lies strictly below another. */
export function stretchesBelow(
  one: readonly HeightPoint[],
  other: readonly HeightPoint[],
  from: number,
  to: number,
): readonly Interval[] {
  const oneLevel = levelOf(one)
  const otherLevel = levelOf(other)
  if (oneLevel !== null && otherLevel !== null) return oneLevel < otherLevel ? [{ from, to }] : []
  const places = piecePlaces(one, other, from, to)
  const found: Interval[] = []
  for (let index = 1; index < places.length; index++) {
    const start = places[index - 1] as number
    const end = places[index] as number
    const middle = (start + end) / 2
    if (heightAt(one, middle) < heightAt(other, middle)) found.push({ from: start, to: end })
  }
  return found
}

/** The greatest height from `from` to `to`, both ends counted. */
export function highestBetween(points: readonly HeightPoint[], from: number, to: number): number {
  let highest = Math.max(heightAt(points, from), heightAt(points, to))
  for (const point of points) if (point.at > from && point.at < to) highest = Math.max(highest, point.height)
  return highest
}

/** The least height from `from` to `to`, both ends counted. */
export function lowestBetween(points: readonly HeightPoint[], from: number, to: number): number {
  let lowest = Math.min(heightAt(points, from), heightAt(points, to))
  for (const point of points) if (point.at > from && point.at < to) lowest = Math.min(lowest, point.height)
  return lowest
}

/** The largest height of one line over another between two places; negative where it lies under it throughout. */
export function largestGap(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  from: number,
  to: number,
): number {
  return Math.max(...gapsBetween(lower, upper, from, to))
}

/** The least distance from the lower line up to the upper one; negative where they cross. */
export function smallestGap(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  from: number,
  to: number,
): number {
  return Math.min(...gapsBetween(lower, upper, from, to))
}

/** Heights of one line over another wherever either bends: the largest and the smallest are among them. */
function gapsBetween(
  lower: readonly HeightPoint[],
  upper: readonly HeightPoint[],
  from: number,
  to: number,
): readonly number[] {
  const lowerLevel = levelOf(lower)
  const upperLevel = levelOf(upper)
  if (lowerLevel !== null && upperLevel !== null) return [upperLevel - lowerLevel]
  const places = [from, to, ...bendsBetween(lower, from, to), ...bendsBetween(upper, from, to)]
  return places.map((at) => heightAt(upper, at) - heightAt(lower, at))
}

/** A broken line cut to a stretch, with its bends. */
export function lineBetween(points: readonly HeightPoint[], { from, to }: Interval): readonly HeightPoint[] {
  return sortedPlaces([from, to, ...bendsBetween(points, from, to)]).map((at) => ({
    at,
    height: heightAt(points, at),
  }))
}
