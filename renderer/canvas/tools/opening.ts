import type { Point } from '../../../core/geometry/point.ts'
import { type Job, records } from '../../../core/project/job.ts'
import type { Opening } from '../../../core/project/sketch-records.ts'
import { openingNouns } from '../../../core/project/sketch-words.ts'
import type { OpeningKind } from '../../../core/project/vocabulary.ts'
import { findWall } from '../../../core/project/walls.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { facingWall } from '../../../core/sketch/facing-wall.ts'
import { openingTemplateFor } from '../../../core/sketch/opening-templates.ts'
import { lengthFromUnits } from '../../../core/units/length.ts'
import { capital } from '../../../core/words/text.ts'
import { targetAt, wallAt } from '../hit.ts'
import { type DrawnAction, resting, type Surroundings, type Tool } from './tool.ts'

/** How far from a wall the pointer may be for an opening to hang on it, in units of the catching tolerance. */
const reach = 3

/** An opening set on the wall under the pointer; shared with the room behind where the whole of it is backed by one. */
export function openingTool(kind: OpeningKind): Tool {
  return {
    step(gesture, input, around) {
      if (input.kind === 'key') return { gesture: resting }
      const command = addOpeningAt(kind, input.point, around)
      if (input.kind !== 'down') {
        const shown = isOverOpening(input.point, around) ? null : command
        return { gesture: { kind: 'placingOpening', command: shown, point: input.point } }
      }
      if (command === null) {
        return {
          gesture,
          refusal: {
            sentence: `No wall is here. Point at the wall the ${openingNouns[kind]} belongs in.`,
            at: input.point,
          },
        }
      }
      return { gesture: resting, action: actionOf(kind, command, input.point) }
    },
    draft: (gesture) =>
      gesture.kind === 'placingOpening' && gesture.command !== null ? [gesture.command] : [],
  }
}

/** Over one that is there already, nothing is offered: least of all over the one just set. */
function isOverOpening(point: Point, around: Surroundings): boolean {
  return targetAt(around.job, around.storeyId, point, around.tolerance * reach, [])?.kind === 'opening'
}

function actionOf(
  kind: OpeningKind,
  command: Extract<SketchCommand, { kind: 'addOpening' }>,
  at: Point,
): DrawnAction {
  return { name: `set a ${openingNouns[kind]}`, commands: [command], select: [command.opening.id], at }
}

/** The command that sets an opening of this kind with its middle under the pointer, kept inside the wall. */
export function addOpeningAt(
  kind: OpeningKind,
  point: Point,
  around: Surroundings,
): Extract<SketchCommand, { kind: 'addOpening' }> | null {
  const { job, storeyId, tolerance } = around
  const target = wallAt(job, storeyId, point, tolerance * reach)
  const room = target === null ? undefined : job.rooms[target.roomId]
  const wall = room === undefined || target === null ? null : findWall(room, target.wallId)
  if (target === null || wall === null) return null
  const template = openingTemplateFor(job, kind)
  const from = onGrid(target.at - template.width / 2, around.grid, wall.length - template.width)
  const facing =
    kind === 'door' || kind === 'casedOpening'
      ? facingWall(job, target.roomId, target.wallId, from, from + template.width)
      : null
  const opening: Opening = {
    ...template,
    id: around.newId(kind),
    name: `${capital(openingNouns[kind])} ${countOf(job, kind) + 1}`,
    roomId: target.roomId,
    wallId: target.wallId,
    offset: lengthFromUnits(from),
    far: facing === null ? null : { roomId: facing.roomId, wallId: facing.wallId },
    casingFar: facing === null ? null : template.casingNear,
  }
  return { kind: 'addOpening', opening }
}

export function onGrid(at: number, grid: number | null, most: number): number {
  const caught = grid === null ? at : Math.round(at / grid) * grid
  return Math.max(0, Math.min(caught, Math.floor(most)))
}

function countOf(job: Job, kind: OpeningKind): number {
  return records(job.openings).filter((opening) => opening.kind === kind).length
}
