import { beforeEach, expect, test } from 'vitest'
import { records } from '../../core/project/job.ts'
import { usualFinishes } from '../../core/project/usual-finishes.ts'
import { chooseFinish, finishFor, inheritFinish } from '../../renderer/panels/finish/finish-records.ts'
import { scopesOf } from '../../renderer/panels/parts/scope-choices.ts'
import { east, north, study, twoRooms } from '../sketch/two-rooms.ts'
import { openOnPage, pageJob } from './open-on-page.ts'

const wall = { kind: 'wall', roomId: study, wallId: north, zone: 'whole' } as const
const place = { surfaceClass: 'walls', roomId: study, surface: wall } as const
const otherPlace = { ...place, surface: { ...wall, wallId: east } } as const
const [ownWall, ofRoom, ofHouse] = scopesOf(place)
if (ownWall === undefined || ofRoom === undefined || ofHouse === undefined) throw new Error('three scopes')

beforeEach(() => openOnPage({ ...twoRooms(), finishes: {} }))

test('until somebody says it the usual is offered and not painted', () => {
  const { finish, from } = finishFor(pageJob(), place)
  expect(from).toBeNull()
  expect(finish).toEqual({ paint: false, colourId: null, ...usualFinishes.walls })
})

test('choosing a product means that it shall be painted; choosing a sheen alone does not', () => {
  expect(chooseFinish(pageJob(), ofHouse, place, { sheen: 'matte' })).toBe(true)
  expect(finishFor(pageJob(), place).finish).toMatchObject({ paint: false, sheen: 'matte' })
  expect(chooseFinish(pageJob(), ofHouse, place, { productClass: 'latexWall' })).toBe(true)
  expect(finishFor(pageJob(), place).finish).toMatchObject({ paint: true, sheen: 'matte' })
  expect(records(pageJob().finishes)).toHaveLength(1)
})

test('what is said of one wall takes the rest from the house, and goes when it is inherited again', () => {
  chooseFinish(pageJob(), ofHouse, place, { paint: true, sheen: 'eggshell' })
  chooseFinish(pageJob(), ownWall, place, { sheen: 'flat' })
  expect(finishFor(pageJob(), place).finish).toMatchObject({ paint: true, sheen: 'flat' })
  expect(finishFor(pageJob(), otherPlace)).toMatchObject({ finish: { sheen: 'eggshell' }, from: ofHouse })
  expect(inheritFinish(pageJob(), ownWall)).toBe(true)
  expect(finishFor(pageJob(), place)).toMatchObject({ finish: { sheen: 'eggshell' }, from: ofHouse })
  // Nothing is said of the room alone, so there is nothing to take away.
  expect(inheritFinish(pageJob(), ofRoom)).toBe(true)
  expect(records(pageJob().finishes)).toHaveLength(1)
})
