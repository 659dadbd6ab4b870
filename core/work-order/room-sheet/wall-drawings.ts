import type { Job } from '../../project/job.ts'
import type { OpeningId, RoomId } from '../../project/sketch-records.ts'
import { roomElevations, type WallElevation } from '../../quantities/elevation.ts'
import { toMillimetres } from '../../units/length.ts'
import { type NumberedCondition, type PlanMarker, type PlanPoint, wallOf } from '../room-plan.ts'
import type { SetContext } from './set-context.ts'
import type { WallDrawing } from './sheet-types.ts'

/** Fewer findings than this on a wall are found without a drawing of it. */
const leastFindings = 2

/** The walls of the set on which there are many findings; where on the wall a finding lies is not known, only that it is on it. */
export function wallDrawings(
  context: SetContext,
  found: readonly NumberedCondition[],
): readonly WallDrawing[] {
  if (found.length < leastFindings) return []
  return context.set.roomIds.flatMap((roomId) =>
    roomElevations(context.job, roomId).flatMap((elevation) => {
      const here = found.filter(
        ({ condition }) => wallOf(context.job, roomId, condition) === elevation.wallId,
      )
      return here.length < leastFindings ? [] : [drawnWall(context, roomId, elevation, here)]
    }),
  )
}

function drawnWall(
  { job, set, letters }: SetContext,
  roomId: RoomId,
  elevation: WallElevation,
  found: readonly NumberedCondition[],
): WallDrawing {
  const top = Math.max(...elevation.ceiling.map(({ height }) => height))
  const length = elevation.length
  const at = (along: number, height: number): PlanPoint => ({
    x: toMillimetres(elevation.startsAt === 'left' ? along : length - along),
    y: toMillimetres(top - height),
  })
  const openings = elevation.openings.map(({ openingId, hole, side: _ }) => ({
    openingId,
    letter: letters.get(openingId) ?? '',
    from: at(hole.from, headTop(hole.head)),
    to: at(hole.to, hole.bottom),
  }))
  const widthMm = toMillimetres(length)
  const heightMm = toMillimetres(top - Math.min(...elevation.floor.map(({ height }) => height)))
  const name = elevation.name.slice(0, 1).toUpperCase() + elevation.name.slice(1)
  return {
    name: roomId === set.id ? name : `${job.rooms[roomId]?.name ?? roomId}, ${elevation.name}`,
    widthMm,
    heightMm,
    outline: [
      ...endsOf(elevation.floor, length).map(({ at: along, height }) => at(along, height)),
      ...endsOf(elevation.ceiling, length)
        .toReversed()
        .map(({ at: along, height }) => at(along, height)),
    ],
    openings: openings.map(({ letter, from, to }) => ({ letter, ...ordered(from, to) })),
    markers: markersOn(job, found, openings, widthMm, heightMm),
  }
}

interface HeightAt {
  readonly at: number
  readonly height: number
}

/** A level line may be one point; drawn, it has two ends. */
function endsOf(line: readonly HeightAt[], length: number): readonly HeightAt[] {
  const [first, last] = [line[0], line.at(-1)]
  if (first === undefined || last === undefined) return []
  return [{ at: 0, height: first.height }, ...line.slice(1, -1), { at: length, height: last.height }]
}

function headTop(head: WallElevation['openings'][number]['hole']['head']): number {
  return head.kind === 'level' ? head.height : head.centreHeight + head.radius
}

function ordered(one: PlanPoint, other: PlanPoint): { readonly from: PlanPoint; readonly to: PlanPoint } {
  return {
    from: { x: Math.min(one.x, other.x), y: Math.min(one.y, other.y) },
    to: { x: Math.max(one.x, other.x), y: Math.max(one.y, other.y) },
  }
}

/** Findings on an opening stand in it, those on the wall beside one another at half height. */
function markersOn(
  job: Job,
  found: readonly NumberedCondition[],
  openings: readonly { readonly openingId: OpeningId; readonly from: PlanPoint; readonly to: PlanPoint }[],
  widthMm: number,
  heightMm: number,
): readonly PlanMarker[] {
  const openingOf = ({ condition }: NumberedCondition) => {
    const { on } = condition
    if (on.level !== 'surface' || on.surface.kind !== 'opening') return undefined
    const { openingId } = on.surface
    return job.openings[openingId] === undefined
      ? undefined
      : openings.find((each) => each.openingId === openingId)
  }
  const onWall = found.filter((each) => openingOf(each) === undefined)
  return found.map((each) => {
    const opening = openingOf(each)
    if (opening === undefined) {
      const share = (onWall.indexOf(each) + 1) / (onWall.length + 1)
      return { number: each.number, at: { x: widthMm * share, y: heightMm * 0.22 } }
    }
    const inside = found.filter((other) => openingOf(other) === opening)
    const share = (inside.indexOf(each) + 1) / (inside.length + 1)
    return {
      number: each.number,
      at: {
        x: opening.from.x + (opening.to.x - opening.from.x) * share,
        y: (opening.from.y + opening.to.y) / 2,
      },
    }
  })
}
