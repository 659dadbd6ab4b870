import { type Job, records } from '../../project/job.ts'
import type { Corner, Opening, Room, TrimRun, TrimRunId } from '../../project/sketch-records.ts'
import type { TrimKind } from '../../project/vocabulary.ts'
import type { SketchCommand } from '../commands.ts'
import { firstTrimSizes } from '../trim-sizes.ts'
import type { Picked } from './picked.ts'

/** One command a room, to be made together. */
export function roomsOnMany(
  rooms: readonly Room[],
  change: Partial<Omit<Room, 'id' | 'corners'>>,
): readonly SketchCommand[] {
  return rooms.map(({ id }) => ({ kind: 'setRoom', roomId: id, change }))
}

/** Changes openings one by one, so that a part of a casing or a sash can be set where there is one. */
export function openingsOnMany(
  openings: readonly Opening[],
  change: (opening: Opening) => Partial<Omit<Opening, 'id'>>,
): readonly SketchCommand[] {
  return openings.map((opening) => ({ kind: 'setOpening', openingId: opening.id, change: change(opening) }))
}

/** One command a wall, to be made together. */
export function behindMany(walls: Picked['walls'], behind: Corner['behind']): readonly SketchCommand[] {
  return walls.map(({ id, roomId }) => ({ kind: 'setWallBehind', roomId, wallId: id, behind }))
}

/** The runs of a kind in what is picked: all of the picked rooms, and those along picked walls. */
export function runsOfPicked(job: Job, { rooms, walls }: Picked, kind: TrimKind): readonly TrimRun[] {
  return records(job.trimRuns).filter(
    (run) =>
      run.kind === kind &&
      (rooms.some(({ id }) => id === run.roomId) ||
        walls.some(({ id, roomId }) => roomId === run.roomId && (run.walls?.includes(id) ?? true))),
  )
}

/** Runs a kind of trim along all that is picked; runs that are there already keep their sizes. */
export function trimOnMany(
  job: Job,
  picked: Picked,
  kind: TrimKind,
  newId: () => TrimRunId,
): readonly SketchCommand[] {
  const model = records(job.trimRuns).findLast((run) => run.kind === kind)
  const { height, girth, level, profiled } = model ?? { ...firstTrimSizes[kind], profiled: true }
  return wallsByRoom(picked).flatMap(({ roomId, walls }): readonly SketchCommand[] => {
    const own = records(job.trimRuns).find((run) => run.kind === kind && run.roomId === roomId)
    const run = own ?? { id: newId(), roomId, kind, height, girth, level, profiled, walls }
    const along = run.walls === null || walls === null ? null : [...new Set([...run.walls, ...walls])]
    return [{ kind: 'putRecord', collection: 'trimRuns', record: { ...run, walls: along } }]
  })
}

/** Takes a kind of trim off all that is picked; a run that goes on along other walls stays there. */
export function noTrimOnMany(job: Job, picked: Picked, kind: TrimKind): readonly SketchCommand[] {
  return wallsByRoom(picked).flatMap(({ roomId, walls }) =>
    records(job.trimRuns)
      .filter((run) => run.kind === kind && run.roomId === roomId)
      .map((run): SketchCommand => {
        const along = run.walls ?? job.rooms[roomId]?.corners.map(({ wallId }) => wallId) ?? []
        const left = walls === null ? [] : along.filter((id) => !walls.includes(id))
        return left.length === 0
          ? { kind: 'removeRecord', collection: 'trimRuns', id: run.id }
          : { kind: 'putRecord', collection: 'trimRuns', record: { ...run, walls: left } }
      }),
  )
}

/** Each room with the walls of it that are meant; null is all of them. */
function wallsByRoom({ rooms, walls }: Picked): readonly Pick<TrimRun, 'roomId' | 'walls'>[] {
  const ofWalls = [...new Set(walls.map(({ roomId }) => roomId))].map((roomId) => ({
    roomId,
    walls: walls.filter((wall) => wall.roomId === roomId).map(({ id }) => id),
  }))
  return [...rooms.map(({ id }) => ({ roomId: id, walls: null })), ...ofWalls]
}
