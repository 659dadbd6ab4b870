import { expect, test } from 'vitest'
import type { BuiltItem } from '../../core/project/built-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet, inches, toFeet, zeroLength } from '../../core/units/length.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

type Of<Kind extends BuiltItem['kind']> = Extract<BuiltItem, { readonly kind: Kind }>

function surfaceOf(item: BuiltItem): SurfaceQuantity {
  const job = plainJob({ builtItems: { [item.id]: item } })
  const found = takeOff(job).surfaces.find(({ surface }) => surface.kind === 'built')
  if (found === undefined) throw new Error('built work has a surface')
  return found
}

const squareFeetOf = (item: BuiltItem) => {
  const { grossArea, equivalentArea } = surfaceOf(item)
  return [toSquareFeet(grossArea), toSquareFeet(equivalentArea)]
}
const notesOf = (item: BuiltItem) => surfaceOf(item).derivation.filter(({ kind }) => kind === 'note')

const id = 'it' as BuiltItem['id']
const stair: Of<'stair'> = {
  kind: 'stair',
  id,
  roomId,
  name: '',
  treads: 12,
  risers: 13,
  stepLength: feet(3),
  treadDepth: inches(10),
  riserHeight: inches(8),
  paintTreads: true,
  paintRisers: true,
  stringers: 2,
  stringerLength: feet(15),
  stringerGirth: feet(1),
  balusters: 24,
  balusterHeight: feet(2),
  balusterGirth: inches(6),
  newels: 2,
  newelHeight: feet(4),
  newelGirth: feet(1),
  handrailLength: feet(14),
  handrailGirth: inches(6),
}
const bare: Of<'stair'> = {
  ...stair,
  stringers: 0,
  balusters: 0,
  newels: 0,
  handrailLength: zeroLength,
}

test('a stair: steps by the line over them, stringers and newels by the piece, the balustrade by the painters’ rule', () => {
  // Line 12 x 10 in + 13 x 8 in = 18 2/3 ft, 3 ft long: 56; stringers 30; newels 8; balusters 24; rail 7.
  // The rule: 14 ft x (2 x 2 ft + 1/2 ft) = 63 in place of balusters and rail.
  const [gross, equivalent] = squareFeetOf(stair)
  expect(gross).toBeCloseTo(56 + 30 + 8 + 24 + 7, 2)
  expect(equivalent).toBeCloseTo(56 + 30 + 8 + 63, 2)
  expect(notesOf(stair).map(({ area }) => toSquareFeet(area ?? (0 as never)))).toEqual([63])
  expect(toFeet(surfaceOf(stair).length)).toBe(14)
})

test('a rail without balusters is its own length and girth, and no rule for balustrades is named', () => {
  const railed = { ...bare, handrailLength: feet(14) }
  const [gross, equivalent] = squareFeetOf(railed)
  expect(gross).toBeCloseTo(56 + 7, 2)
  expect(equivalent).toBeCloseTo(56 + 7, 2)
  expect(notesOf(railed)).toEqual([])
})

test('steps of which only risers or only treads are painted count those, and their bare neighbours along both edges', () => {
  const masked = (item: BuiltItem) => toFeet(surfaceOf(item).masking)
  const risers = { ...bare, paintTreads: false }
  expect(squareFeetOf(risers)[0]).toBeCloseTo((13 * 8 * 3) / 12, 2)
  expect(masked(risers)).toBeCloseTo(2 * 13 * 3, 6)
  const treads = { ...bare, paintRisers: false }
  expect(squareFeetOf(treads)[0]).toBeCloseTo((12 * 10 * 3) / 12, 2)
  expect(masked(treads)).toBeCloseTo(2 * 12 * 3, 6)
  expect(masked(bare)).toBe(0)
})

test('a cabinet: front and ends, inside besides where it is painted, half as much again to paint', () => {
  const cabinet: Of<'cabinet'> = {
    kind: 'cabinet',
    id,
    roomId,
    name: '',
    width: feet(4),
    height: feet(3),
    depth: feet(2),
    doors: 2,
    drawers: 1,
    paintInside: false,
  }
  expect(squareFeetOf(cabinet)).toEqual([12 + 12, 36])
  expect(surfaceOf(cabinet).count).toBe(3)
  expect(surfaceOf({ ...cabinet, doors: 0, drawers: 0 }).count).toBe(1)
  const inside = 24 + 12 + 16
  expect(squareFeetOf({ ...cabinet, paintInside: true })).toEqual([24 + inside, (24 + inside) * 1.5])
  expect(notesOf(cabinet)[0]?.text).toContain('x 1.5')
})

test('shelves: both faces, front edge and ends, each as often as there are shelves', () => {
  const shelf: Of<'shelf'> = {
    kind: 'shelf',
    id,
    roomId,
    name: '',
    length: feet(6),
    depth: feet(1),
    thickness: inches(1),
    count: 3,
  }
  const [gross, equivalent] = squareFeetOf(shelf) as [number, number]
  expect(gross).toBeCloseTo(3 * (12 + 0.5 + 2 / 12), 2)
  expect(equivalent).toBeCloseTo(1.5 * gross, 2)
  expect(toFeet(surfaceOf(shelf).length)).toBe(18)
})

test('a mantel: legs up to the frieze, the frieze, both faces of the shelf', () => {
  const mantel: Of<'mantel'> = {
    kind: 'mantel',
    id,
    roomId,
    name: '',
    width: feet(5),
    height: feet(4),
    legWidth: inches(6),
    friezeHeight: feet(1),
    shelfDepth: inches(6),
  }
  expect(squareFeetOf(mantel)[0]).toBeCloseTo(2 * 3 * 0.5 + 5 + 2 * 5 * 0.5, 2)
})
