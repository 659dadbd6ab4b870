import { lineBetween } from '../geometry/band.ts'
import type { HeightPoint } from '../geometry/height-line.ts'
import { type Hole, headHeightAt } from '../geometry/hole.ts'
import type { Interval } from '../geometry/interval.ts'
import type { Light } from '../project/opening-layout.ts'

type Outline = readonly HeightPoint[]

/** What lies between two lines on a wall seen square on. */
export function bandOutline(lower: Outline, upper: Outline, stretch: Interval): Outline {
  return [...lineBetween(lower, stretch), ...[...lineBetween(upper, stretch)].reverse()]
}

/** A rectangle on a wall. */
export function lightOutline({ from, to, bottom, top }: Light): Outline {
  return [
    { at: from, height: bottom },
    { at: to, height: bottom },
    { at: to, height: top },
    { at: from, height: top },
  ]
}

/** A hole with its head; an arc is drawn in sixteen chords. */
export function holeOutline({ hole }: { readonly hole: Hole }): Outline {
  const chords = hole.head.kind === 'level' ? 1 : 16
  const head = Array.from({ length: chords + 1 }, (_, step) => {
    const at = hole.from + ((hole.to - hole.from) * step) / chords
    return { at, height: headHeightAt(hole.head, at) }
  })
  return [{ at: hole.to, height: hole.bottom }, { at: hole.from, height: hole.bottom }, ...head]
}
