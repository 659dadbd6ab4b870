import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { createTakeOff } from '../../core/quantities/take-off.ts'
import { lookedAtWith, walkPieces } from '../../core/specification/looked-at.ts'
import { conditionOn } from '../fixtures/job-builder.ts'
import { demoJob } from '../renderer/station-jobs.ts'

const bare: Job = { ...demoJob('plain-room'), conditions: {} }
const surfaces = createTakeOff()(bare).surfaces
const room = Object.values(bare.rooms)[0]
if (room === undefined) throw new Error('the plain room has a room')

const open = (job: Job) =>
  (walkPieces(job, surfaces).get(room.id) ?? []).filter(({ state }) => state === 'open').length

test('each wall, the ceiling and each opening is one piece to look at, with all its surfaces', () => {
  const pieces = walkPieces(bare, surfaces).get(room.id) ?? []
  expect(pieces.every(({ state }) => state === 'open')).toBe(true)
  expect(pieces.filter(({ key }) => key.startsWith('wall:'))).toHaveLength(room.corners.length)
  expect(pieces.flatMap((piece) => piece.surfaces)).toHaveLength(surfaces.length)
  expect(pieces.length).toBeLessThan(surfaces.length)
})

test('a piece was looked at once something was found on it, on its kind, or it was said to be sound', () => {
  const total = open(bare)
  const ceiling = surfaces.find(({ surface }) => surface.kind === 'ceiling')
  if (ceiling === undefined) throw new Error('the plain room has a ceiling')
  const stained: Job = {
    ...bare,
    conditions: { c1: conditionOn('c1', 'waterStain', ceiling.surface) },
  }
  expect(open(stained)).toBe(total - 1)
  const papered: Job = {
    ...bare,
    conditions: {
      c1: {
        ...conditionOn('c1', 'oldWallpaper', ceiling.surface),
        on: { level: 'room', roomId: room.id, surfaceClass: null },
      },
    },
  }
  expect(open(papered)).toBe(total - room.corners.length)
  const sound: Job = {
    ...bare,
    rooms: { ...bare.rooms, [room.id]: { ...room, lookedAt: lookedAtWith(room, ['ceiling'], true) } },
  }
  expect(open(sound)).toBe(total - 1)
  expect(lookedAtWith({ ...room, lookedAt: ['ceiling', 'wall:x'] }, ['ceiling'], false)).toEqual(['wall:x'])
})
