import { beforeEach, expect, test } from 'vitest'
import { records } from '../../core/project/job.ts'
import { unitsPerFoot } from '../../core/units/length.ts'
import { addRoomOfSize, setOpeningInWall } from '../../renderer/panels/house/by-keys.ts'
import { openingTitle } from '../../renderer/panels/house/opening-title.ts'
import {
  copySelected,
  duplicateSelected,
  pasteCopied,
  removeSelected,
  selectAll,
} from '../../renderer/panels/house/selection-actions.ts'
import { jobStore, viewStore } from '../../renderer/state/app.ts'
import { door, window as light, parlour, south, study, twoRooms } from '../sketch/two-rooms.ts'
import { openOnPage, pageJob } from './open-on-page.ts'

beforeEach(() => {
  const job = twoRooms()
  openOnPage(job)
  viewStore.setState({ storeyId: records(job.storeys)[0]?.id ?? null, selectedIds: [], roomId: null })
})

function select(...selectedIds: readonly string[]): void {
  viewStore.setState({ selectedIds })
}

function reach(roomId: string): readonly [number, number] {
  const xs = pageJob().rooms[roomId]?.corners.map(({ x }) => x) ?? []
  return [Math.min(...xs), Math.max(...xs)]
}

test('what is selected is removed as one action, the openings of a room with it, and comes back by undo', () => {
  const before = pageJob()
  select(parlour)
  removeSelected()
  expect(Object.keys(pageJob().rooms)).toEqual([study])
  expect(pageJob().openings[light]).toBeUndefined()
  // The door to the study belongs to the study and stays.
  expect(pageJob().openings[door]).toMatchObject({ roomId: study, far: null })
  expect(viewStore.getState().selectedIds).toEqual([])
  jobStore.undo()
  expect(pageJob()).toEqual(before)
})

test('a copy stands clear of everything, has ids of its own and is what is selected', () => {
  select(study)
  duplicateSelected()
  const [copy] = viewStore.getState().selectedIds
  expect(records(pageJob().rooms)).toHaveLength(3)
  expect(copy).not.toBe(study)
  expect(viewStore.getState().roomId).toBe(copy)
  expect(pageJob().rooms[copy ?? '']?.name).toBe(`${pageJob().rooms[study]?.name} copy`)
  expect(reach(copy ?? '')[0]).toBe(reach(parlour)[1] + 2 * unitsPerFoot)
})

test('what was copied is pasted later, whatever is selected then', () => {
  select(study)
  copySelected()
  selectAll()
  expect(new Set(viewStore.getState().selectedIds)).toEqual(new Set([study, parlour]))
  pasteCopied()
  expect(records(pageJob().rooms)).toHaveLength(3)
})

test('a room of a typed size is drawn clear of the others; what is no size is answered with a sentence', () => {
  expect(addRoomOfSize(pageJob(), "12' x 10'")).toBeNull()
  const drawn = records(pageJob().rooms).find(({ id }) => id !== study && id !== parlour)
  expect(reach(drawn?.id ?? '')).toEqual([
    reach(parlour)[1] + 2 * unitsPerFoot,
    reach(parlour)[1] + 14 * unitsPerFoot,
  ])
  expect(addRoomOfSize(pageJob(), 'large')).toMatch(/large/)
  expect(addRoomOfSize(pageJob(), '1 x 2 x 3')).toMatch(/more than two sides/)
  expect(records(pageJob().rooms)).toHaveLength(3)
})

test('an opening is set in the middle of a wall, and a second one where there is room beside it', () => {
  setOpeningInWall(pageJob(), study, south, 'window')
  const [first] = viewStore.getState().selectedIds
  setOpeningInWall(pageJob(), study, south, 'window')
  const [second] = viewStore.getState().selectedIds
  const [one, other] = [pageJob().openings[first ?? ''], pageJob().openings[second ?? '']]
  if (one === undefined || other === undefined) throw new Error('two windows')
  expect(Math.abs(one.offset + one.width / 2 - 6 * unitsPerFoot)).toBeLessThanOrEqual(unitsPerFoot)
  expect(other.id).not.toBe(one.id)
  const [left, right] = one.offset < other.offset ? [one, other] : [other, one]
  expect(left.offset + left.width).toBeLessThanOrEqual(right.offset)
})

test('an opening without a name is called by what it is and its wall, from either room', () => {
  const job = pageJob()
  const named = job.openings[door]
  if (named === undefined) throw new Error('no door')
  const shared = { ...named, name: '' }
  expect(openingTitle(job, shared, study)).toBe('Door, wall B')
  expect(openingTitle(job, shared, parlour)).toBe('Door, wall D')
  expect(openingTitle(job, { ...shared, name: 'Pocket door' }, study)).toBe('Pocket door')
})
