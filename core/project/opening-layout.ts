import { type Head, type Hole, segmentHead } from '../geometry/hole.ts'
import { inches } from '../units/length.ts'
import type { Opening, Sash } from './sketch-records.ts'
import type { OpeningPlace } from './walls.ts'

/** The whole hole of an opening where it sits on a wall, its head included. */
export function openingHole(opening: Opening, place: OpeningPlace): Hole {
  return { from: place.from, to: place.to, bottom: place.bottom, head: openingHead(opening, place) }
}

function openingHead(opening: Opening, place: OpeningPlace): Head {
  switch (opening.head.kind) {
    case 'square':
      return { kind: 'level', height: place.top }
    case 'segment':
      return segmentHead(place.from, place.to, place.top, opening.head.rise)
    case 'halfRound':
      return segmentHead(place.from, place.to, place.top, (place.to - place.from) / 2)
  }
}

/** A rectangle of an opening, from its lower first corner; its upper edge may be cut by the opening's head. Length units. */
export interface Light {
  readonly from: number
  readonly to: number
  readonly bottom: number
  readonly top: number
}

/** What fills an opening: the transom over everything, sidelights at the sides under it, the door or sash in what is left. */
export interface OpeningLayout {
  readonly main: Light
  readonly transom: Light | null
  readonly sidelights: readonly Light[]
}

/** Width and height of the opening include its transom and sidelights. Two sidelights stand one at each side, one at the first edge. */
export function openingLayout(opening: Opening, place: OpeningPlace): OpeningLayout {
  const { from, to, bottom, top } = place
  const split = top - (opening.transom?.height ?? 0)
  const { count, width } = opening.sidelights ?? { count: 0, width: 0 }
  const main = { from: from + (count > 0 ? width : 0), to: to - (count > 1 ? width : 0), bottom, top: split }
  return {
    main,
    transom: opening.transom === null ? null : { from, to, bottom: split, top },
    sidelights: [
      ...(count > 0 ? [{ from, to: from + width, bottom, top: split }] : []),
      ...(count > 1 ? [{ from: to - width, to, bottom, top: split }] : []),
    ],
  }
}

/** Widths of the members around and between lights. */
interface Members {
  readonly stile: number
  readonly topRail: number
  readonly bottomRail: number
  readonly muntin: number
}

/**
 * Transoms and sidelights without a sash record beside them: stiles and rails 2 1/4 in (typical widths, seen in a joinery supplier's
 * guide), muntins 7/8 in (stock width, from memory).
 */
const usualMembers: Members = {
  stile: inches(2.25),
  topRail: inches(2.25),
  bottomRail: inches(2.25),
  muntin: inches(0.875),
}

function membersOf(sash: Sash | null): Members {
  return sash ?? usualMembers
}

/** One sash: a frame with its lights, and how wide its members are. */
export interface SashFrame {
  readonly frame: Light
  readonly members: Members
  readonly lightsAcross: number
  readonly lightsDown: number
}

/** Sash frames of an opening, units side by side; a double-hung unit has two that share the meeting rail. */
export function sashFrames(opening: Opening, layout: OpeningLayout): readonly SashFrame[] {
  const { sash } = opening
  if (sash === null) return []
  const width = (layout.main.to - layout.main.from) / sash.units
  const frames: SashFrame[] = []
  for (let index = 0; index < sash.units; index++) {
    const from = layout.main.from + index * width
    const { bottom, top } = layout.main
    frames.push(...unitFrames(sash, { from, to: from + width, bottom, top }))
  }
  return frames
}

/**
 * The two sash of a double-hung unit have lights of equal height. The meeting rails lie behind one another, so one width of them
 * shows; it is put to the lower sash.
 */
function unitFrames(sash: Sash, frame: Light): readonly SashFrame[] {
  const { stile, topRail, meetingRail, bottomRail, muntin, lightsAcross, lightsDown } = sash
  if (sash.operation !== 'doubleHung')
    return [{ frame, members: { stile, topRail, bottomRail, muntin }, lightsAcross, lightsDown }]
  const { from, to, bottom, top } = frame
  const daylight = (top - bottom - topRail - meetingRail - bottomRail) / 2
  const split = bottom + bottomRail + daylight + meetingRail
  return [
    {
      frame: { from, to, bottom: split, top },
      members: { stile, topRail, bottomRail: 0, muntin },
      lightsAcross,
      lightsDown,
    },
    {
      frame: { from, to, bottom, top: split },
      members: { stile, topRail: meetingRail, bottomRail, muntin },
      lightsAcross,
      lightsDown,
    },
  ]
}

/** The fixed lights beside and over the main part. */
export function sideFrames(opening: Opening, layout: OpeningLayout): readonly SashFrame[] {
  const members = membersOf(opening.sash)
  const { transom, sidelights } = opening
  return [
    ...(transom && layout.transom ? [{ frame: layout.transom, members, ...lightsOf(transom) }] : []),
    ...(sidelights ? layout.sidelights.map((frame) => ({ frame, members, ...lightsOf(sidelights) })) : []),
  ]
}

function lightsOf(record: { readonly lightsAcross: number; readonly lightsDown: number }) {
  return { lightsAcross: record.lightsAcross, lightsDown: record.lightsDown }
}

/** Width and height of one light of a square-headed frame; not above 0 when the members leave no room. */
export function lightSize(frame: SashFrame): { readonly width: number; readonly height: number } {
  const { members, lightsAcross, lightsDown } = frame
  const { from, to, bottom, top } = frame.frame
  return {
    width: (to - from - 2 * members.stile - (lightsAcross - 1) * members.muntin) / lightsAcross,
    height:
      (top - bottom - members.topRail - members.bottomRail - (lightsDown - 1) * members.muntin) / lightsDown,
  }
}

/** Every light of a frame, row by row from the bottom. */
export function lightCells(frame: SashFrame): readonly Light[] {
  const { width, height } = lightSize(frame)
  const { members, lightsAcross, lightsDown } = frame
  return Array.from({ length: lightsAcross * lightsDown }, (_, index) => {
    const from = frame.frame.from + members.stile + (index % lightsAcross) * (width + members.muntin)
    const bottom =
      frame.frame.bottom + members.bottomRail + Math.floor(index / lightsAcross) * (height + members.muntin)
    return { from, to: from + width, bottom, top: bottom + height }
  })
}
