import { expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { keptProposals } from '../../core/sketch/kept-proposals.ts'
import { demoJob } from '../renderer/station-jobs.ts'

const house = demoJob('old-house')
const bare: Job = { ...house, keptItems: {} }
const bedroom = Object.values(house.rooms).find(({ use }) => use === 'bedroom')
if (bedroom === undefined) throw new Error('the old house has a bedroom')

test('what usually stays follows from the openings and the use of the room', () => {
  const windows = Object.values(house.openings).filter(
    ({ kind, roomId }) => kind === 'window' && roomId === bedroom.id,
  ).length
  const proposed = keptProposals(bare, bedroom)
  expect(proposed.find(({ kind }) => kind === 'curtainHardware')?.count).toBe(windows)
  expect(proposed.map(({ kind }) => kind)).toContain('smokeAlarm')
  expect(keptProposals({ ...bare, openings: {} }, bedroom).map(({ kind }) => kind)).not.toContain('lockset')
  expect(keptProposals(bare, { ...bedroom, use: 'bath' }).map(({ kind }) => kind)).not.toContain('smokeAlarm')
})

test('what is written down is not proposed again', () => {
  const there = new Set(
    Object.values(house.keptItems).flatMap(({ roomId, kind }) => (roomId === bedroom.id ? [kind] : [])),
  )
  expect(there.size).toBeGreaterThan(0)
  expect(keptProposals(house, bedroom).filter(({ kind }) => there.has(kind))).toEqual([])
})
