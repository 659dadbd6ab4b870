import fc from 'fast-check'
import { expect, test } from 'vitest'
import { applyDiff, diffJobs, type JobDiff, reverseDiff } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import type { OpeningId, RoomId, StoreyId, WallId } from '../../core/project/sketch-records.ts'
import { applyCommand } from '../../core/sketch/apply-command.ts'
import type { RecordTarget, SketchCommand } from '../../core/sketch/commands.ts'
import { openingTemplateFor } from '../../core/sketch/opening-templates.ts'
import { recordsOfRooms } from '../../core/sketch/room-copies.ts'
import { roomDefaultsFor } from '../../core/sketch/room-defaults.ts'
import { inches, lengthFromUnits } from '../../core/units/length.ts'
import { twoRooms } from './two-rooms.ts'

/** Four numbers are turned into a command on whatever the job holds just then; `serial` makes its new ids. */
type Choice = readonly [kind: number, which: number, amount: number, other: number]

const choices = fc.array(fc.tuple(fc.nat(19), fc.nat(50), fc.integer({ min: -120, max: 400 }), fc.nat(400)), {
  minLength: 1,
  maxLength: 14,
})

function pick<Item>(items: readonly Item[], which: number): Item | undefined {
  return items[which % Math.max(1, items.length)]
}

function commandFor(job: Job, [kind, which, amount, other]: Choice, serial: number): SketchCommand {
  const room = pick(Object.values(job.rooms), which)
  const opening = pick(Object.values(job.openings), which)
  const roomId = room?.id ?? ('none' as RoomId)
  const wallId = (room && pick(room.corners, other)?.wallId) ?? ('none' as WallId)
  const openingId = opening?.id ?? ('none' as OpeningId)
  const length = inches(Math.abs(amount))
  const ground = 'ground' as StoreyId
  switch (kind) {
    case 0: {
      const at = (x: number, y: number, name: string) =>
        ({ wallId: name as WallId, x: inches(x), y: inches(y), behind: 'heated' }) as const
      const corners = [
        at(other, 400, 'a'),
        at(other + amount, 400, 'b'),
        at(other + amount, 500 + which, 'c'),
        at(other, 500 + which, 'd'),
      ]
      const defaults = roomDefaultsFor(job, ground, () => `run-${serial}`)
      return {
        kind: 'addRoom',
        id: `room-${serial}` as RoomId,
        storeyId: ground,
        name: 'New',
        use: 'other',
        corners,
        defaults,
      }
    }
    case 1:
      return { kind: 'moveCorner', roomId, wallId, x: inches(amount), y: inches(other) }
    case 2:
    case 3:
      return { kind: 'moveWall', roomId, wallId, by: inches(amount / 10), withFacing: kind === 3 }
    case 4:
      return { kind: 'setWallLength', roomId, wallId, length, fixed: other % 2 === 0 ? 'start' : 'end' }
    case 5:
      return { kind: 'moveRooms', roomIds: [roomId], dx: inches(amount), dy: inches(other - 200) }
    case 6:
      return { kind: 'insertCorner', roomId, wallId, at: length, newWallId: `wall-${serial}` as WallId }
    case 7:
      return { kind: 'removeCorner', roomId, wallId }
    case 8:
    case 9: {
      const template = openingTemplateFor(job, kind === 8 ? 'window' : 'door')
      const id = `opening-${serial}` as OpeningId
      return {
        kind: 'addOpening',
        opening: { ...template, id, name: '', roomId, wallId, offset: length, far: null, casingFar: null },
      }
    }
    case 10:
      return { kind: 'moveOpening', openingId, offset: length }
    case 11:
      return {
        kind: 'resizeOpening',
        openingId,
        offset: length,
        width: inches(other / 8 + 1),
        height: inches(which + 1),
        sill: inches(which),
      }
    case 12:
      return { kind: 'joinOpening', openingId, far: amount < 0 ? null : { roomId, wallId }, casingFar: null }
    case 13:
      return { kind: 'setOpening', openingId, change: { sash: null, slab: null, casingNear: null } }
    case 14:
      return {
        kind: 'setCeiling',
        roomId,
        ceiling: { kind: 'shed', along: 'x', startHeight: length, endHeight: inches(other) },
      }
    case 15: {
      const ids = recordsOfRooms(job, [roomId])
      const newIds = Object.fromEntries(ids.map((id, index) => [id, `copy-${serial}-${index}`]))
      return {
        kind: 'duplicateRooms',
        roomIds: [roomId],
        storeyId: null,
        dx: inches(amount),
        dy: inches(600),
        newIds,
        names: {},
      }
    }
    case 16: {
      const targets: readonly RecordTarget[] = [
        { collection: other % 2 === 0 ? 'openings' : 'rooms', id: other % 2 === 0 ? openingId : roomId },
      ]
      return { kind: 'removeRecords', targets }
    }
    case 17:
      return { kind: 'moveWall', roomId, wallId, by: lengthFromUnits(amount * 7 + 1), withFacing: true }
    case 18:
      return { kind: 'renameRoom', roomId, name: `Room ${amount}` }
    default:
      return {
        kind: 'removeRecord',
        collection: 'trimRuns',
        id: pick(Object.keys(job.trimRuns), which) ?? 'none',
      }
  }
}

function edited(picked: readonly Choice[]) {
  let job = twoRooms()
  const diffs: JobDiff[] = []
  const kinds = new Set<string>()
  for (const [serial, choice] of picked.entries()) {
    const command = commandFor(job, choice, serial)
    const before = structuredClone(job)
    const outcome = applyCommand(job, command)
    expect(job).toEqual(before)
    if (!outcome.ok) {
      expect(outcome.problem.sentence).not.toBe('')
      continue
    }
    kinds.add(command.kind)
    diffs.push(diffJobs(job, outcome.value))
    job = outcome.value
  }
  return { job, diffs, kinds }
}

test('whatever a hand does, the job stays sound, and its file gives it back', () => {
  const seen = new Set<string>()
  fc.assert(
    fc.property(choices, (picked) => {
      const { job, kinds } = edited(picked)
      for (const kind of kinds) seen.add(kind)
      expect(jobProblems(job)).toEqual([])
      expect(readJobFile(writeJobFile(job))).toEqual({ ok: true, value: job })
    }),
    { numRuns: 200, seed: 20270331 },
  )
  // The test is worth something only if every kind of edit went through at least once.
  expect(seen.size).toBe(17)
})

test('taking every edit back leads to the very job it began with, and doing them again to where it ended', () => {
  fc.assert(
    fc.property(choices, (picked) => {
      const { job, diffs } = edited(picked)
      const start = diffs.toReversed().reduce((later, diff) => applyDiff(later, reverseDiff(diff)), job)
      expect(start).toEqual(twoRooms())
      // Records stand in the order in which they stood, too.
      expect(JSON.stringify(start)).toBe(JSON.stringify(twoRooms()))
      expect(diffs.reduce((earlier, diff) => applyDiff(earlier, diff), start)).toEqual(job)
    }),
    { numRuns: 100, seed: 19280401 },
  )
})
