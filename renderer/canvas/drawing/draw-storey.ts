import { type Job, records } from '../../../core/project/job.ts'
import { openingSides } from '../../../core/project/walls.ts'
import { partitions } from '../partitions.ts'
import { drawGrid } from './draw-grid.ts'
import { drawLetters } from './draw-letters.ts'
import { drawOpening } from './draw-opening.ts'
import { drawFloor, drawRoom, drawRoomBelow, drawSolid } from './draw-room.ts'
import { drawTitle } from './draw-title.ts'
import { drawUnderlay } from './draw-underlay.ts'
import type { Pen } from './pen.ts'
import type { StoreyLook } from './storey-look.ts'

/** One storey on the sheet, from the ground up: the picture it is traced from, grid, walls, floors, the storey below, outlines, openings, names. */
export function drawStorey(pen: Pen, look: StoreyLook): void {
  const { job, storeyId, system, view, colors, underlayImage } = look
  const underlay = job.storeys[storeyId]?.underlay
  const thickness = partitions[system]
  const rooms = records(job.rooms).filter((room) => room.storeyId === storeyId)
  const openings = records(job.openings).map((opening) => ({ opening, sides: openingSides(job, opening) }))
  if (underlay?.isShown && underlayImage !== null) drawUnderlay(pen, underlay, underlayImage, view)
  if (look.showsGrid) drawGrid(pen, view, look.size, system, colors.paperSunk)
  for (const room of rooms) drawSolid(pen, room, view, thickness, colors.line)
  pen.globalAlpha = underlay?.isShown ? 0.4 : 1
  for (const room of rooms) drawFloor(pen, room, look)
  pen.globalAlpha = 1
  for (const room of roomsBelow(job, storeyId)) drawRoomBelow(pen, room, view, colors)
  for (const room of rooms) drawRoom(pen, room, look)
  for (const { opening, sides } of openings) drawOpening(pen, opening, sides, thickness, look)
  for (const { opening, sides } of openings) drawLetters(pen, opening, sides, look)
  for (const room of rooms) drawTitle(pen, room, look)
}

function roomsBelow(job: Job, storeyId: string) {
  const level = job.storeys[storeyId]?.level
  const below = records(job.storeys).find((storey) => storey.level === (level ?? 0) - 1)
  return records(job.rooms).filter((room) => room.storeyId === below?.id)
}
