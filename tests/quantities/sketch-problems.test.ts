import { expect, test } from 'vitest'
import type { BuiltItem } from '../../core/project/built-records.ts'
import type { Job } from '../../core/project/job.ts'
import { sketchProblems } from '../../core/project/sketch-problems.ts'
import type { Opening, Room, TrimRun } from '../../core/project/sketch-records.ts'
import { feet, inches, type Length, lengthFromUnits, metres } from '../../core/units/length.ts'
import { twoRooms } from '../sketch/two-rooms.ts'
import {
  ceilingOpening,
  opening,
  rectangle,
  room,
  run,
  type Sketch,
  type Spot,
  sash,
  sketch,
} from './sketched.ts'

const box = (changes: Partial<Room> = {}) => rectangle('Study', feet(12), feet(10), changes)

/** Kinds and sentences of the problems of a sketch. */
function problemsOf(parts: Partial<Sketch>): readonly string[] {
  return sketchProblems(sketch({ rooms: [box()], ...parts })).map(
    ({ kind, sentence }) => `${kind}: ${sentence}`,
  )
}

const kindsOf = (parts: Partial<Sketch>) => problemsOf(parts).map((text) => text.slice(0, text.indexOf(':')))

test('a sound sketch has no problems', () => {
  expect(problemsOf({})).toEqual([])
})

test('an outline that crosses itself is refused by the walls that cross', () => {
  const bowTie = room('Study', [
    [0, 0],
    [feet(10), feet(10)],
    [feet(10), 0],
    [0, feet(10)],
  ] as readonly Spot[])
  expect(problemsOf({ rooms: [bowTie] })).toEqual([
    'outlineCrossesItself: Study: wall A and wall C cross or touch. Move a corner so that the outline runs around the room once.',
  ])
})

test('an outline without area and a wall without length are refused', () => {
  const flat = room('Study', [
    [0, 0],
    [feet(5), 0],
    [feet(9), 0],
  ])
  expect(kindsOf({ rooms: [flat] })).toEqual(['outlineDegenerate'])
  const doubled = room('Study', [
    [0, 0],
    [feet(5), 0],
    [feet(5), 0],
    [0, feet(5)],
  ])
  expect(problemsOf({ rooms: [doubled] })).toEqual([
    'wallTooShort: Study, wall B: the wall has no length. Move one of its corners, or take one of the two away.',
  ])
})

test('a ceiling below the floor is refused with the wall and how far', () => {
  const line = [
    { at: 0 as Length, height: 0 as Length },
    { at: feet(12), height: feet(9) },
  ]
  expect(problemsOf({ rooms: [box({ floor: { kind: 'stair', along: 'x', line } })] })).toEqual([
    `ceilingBelowFloor: Study, wall A: the ceiling comes 1' 0" below the floor. Raise the ceiling there or make its slope less steep.`,
  ])
})

test('a ceiling below the floor in the middle of a room only, where a valley crosses a ridge, is found too', () => {
  const valley: Room['ceiling'] = {
    kind: 'gable',
    along: 'x',
    startHeight: feet(8),
    endHeight: feet(8),
    ridgeAt: feet(6),
    ridgeHeight: feet(3),
  }
  const rise: Room['floor'] = {
    kind: 'stair',
    along: 'y',
    line: [
      { at: 0 as Length, height: 0 as Length },
      { at: feet(5), height: feet(4) },
      { at: feet(10), height: 0 as Length },
    ],
  }
  expect(kindsOf({ rooms: [box({ ceiling: valley, floor: rise })] })).toEqual(['ceilingBelowFloor'])
})

test('a ridge or a rake that goes on beyond its walls, a line that turns back, and a step are refused', () => {
  const gable = (ridgeAt: Length): Room['ceiling'] => ({
    kind: 'gable',
    along: 'x',
    startHeight: feet(8),
    endHeight: feet(8),
    ridgeAt,
    ridgeHeight: feet(12),
  })
  expect(problemsOf({ rooms: [box({ ceiling: gable(feet(14)) })] })).toEqual([
    `ceilingLineWrong: Study: the ceiling line bends at 14' 0", but the room is only 12' 0" across there. Move the bend inside the room.`,
  ])
  const stair = (...line: readonly (readonly [number, number])[]): Room['ceiling'] => ({
    kind: 'stair',
    along: 'x',
    line: line.map(([at, height]) => ({ at: feet(at), height: feet(height) })),
  })
  expect(kindsOf({ rooms: [box({ ceiling: stair([0, 8], [6, 9], [4, 10]) })] })).toEqual(['ceilingLineWrong'])
  expect(kindsOf({ rooms: [box({ ceiling: stair([0, 8], [6, 9], [6, 10]) })] })).toEqual(['ceilingLineWrong'])
})

test('an opening wider than its wall, past its end, above the ceiling, is refused with what to do', () => {
  const wide = opening('w', 'Study-1', 0, feet(11), feet(4), { sill: feet(2), name: 'east' })
  expect(problemsOf({ openings: [wide] })).toEqual([
    `openingOutsideWall: Study, wall B: the window "east" is 11' 0" wide, but the wall is only 10' 0" long. Make the opening narrower.`,
  ])
  const past = opening('w', 'Study-1', feet(8), feet(3), feet(4), { sill: feet(2) })
  expect(problemsOf({ openings: [past] })).toEqual([
    `openingOutsideWall: Study, wall B: the window reaches past the end of the wall. Slide it along by 1' 0" or make it narrower.`,
  ])
  const high = opening('w', 'Study-1', feet(1), feet(3), feet(4), { sill: feet(5) })
  expect(problemsOf({ openings: [high] })).toEqual([
    `openingAboveCeiling: Study, wall B: the window reaches 1' 0" above the ceiling. Lower it or make it shorter.`,
  ])
})

test('sentences speak the job’s own units', () => {
  const wide = opening('w', 'a-1', 0, metres(5), metres(1), { sill: metres(1) })
  const [text] = problemsOf({
    unitSystem: 'metric',
    rooms: [rectangle('a', metres(4), metres(3))],
    openings: [wide],
  })
  expect(text).toContain('5.000 m wide, but the wall is only 3.000 m long')
})

test('an opening may just touch an end, the ceiling or another opening', () => {
  const openings = [
    opening('one', 'Study-1', 0, feet(5), feet(8), { kind: 'casedOpening' }),
    opening('two', 'Study-1', feet(5), feet(5), feet(8), { kind: 'casedOpening' }),
  ]
  expect(problemsOf({ openings })).toEqual([])
})

test('a head may be cut by a slope, but the slope may not come down to the bottom of the opening', () => {
  const ceiling: Room['ceiling'] = { kind: 'shed', along: 'x', startHeight: feet(1), endHeight: feet(13) }
  const rooms = [box({ ceiling })]
  const closet = opening('d', 'Study-0', feet(3), feet(3), feet(7), { kind: 'door' })
  expect(problemsOf({ rooms, openings: [closet] })).toEqual([])
  const low = opening('w', 'Study-0', feet(1), feet(4), feet(3), { sill: feet(3) })
  expect(kindsOf({ rooms, openings: [low] })).toEqual(['openingAboveCeiling'])
})

test('openings that overlap on a wall are refused, one over the other is not overlapping', () => {
  const one = opening('one', 'Study-0', feet(1), feet(3), feet(3), { sill: feet(1), name: 'one' })
  const two = opening('two', 'Study-0', feet(3), feet(3), feet(3), { sill: feet(2), name: 'two' })
  const over = opening('three', 'Study-0', feet(1), feet(3), feet(2), { sill: feet(5) })
  expect(problemsOf({ openings: [one, two, over] })).toEqual([
    `openingsOverlap: Study, wall A: the window "one" at 1' 0" and the window "two" at 3' 0" from the wall's start overlap. Slide one of them along the wall.`,
  ])
})

const kitchen = rectangle('Kitchen', feet(12), feet(8), {}, [0, feet(10, 6)])
const intoKitchen = {
  kind: 'door',
  far: { roomId: 'Kitchen' as Room['id'], wallId: 'Kitchen-0' as Room['corners'][number]['wallId'] },
} as const

test('an opening between two rooms is judged on the far wall too', () => {
  const door = opening('d', 'Study-2', feet(3), feet(3), feet(7), intoKitchen)
  // The study's wall C runs from right to left: 3 ft from its start is 6 to 9 ft along the kitchen's wall A.
  const window = opening('w', 'Kitchen-0', feet(8), feet(2), feet(2), { sill: feet(3) })
  expect(problemsOf({ rooms: [box(), kitchen], openings: [door, window] })).toEqual([
    `openingsOverlap: Kitchen, wall A: the door at 6' 0" and the window at 8' 0" from the wall's start overlap. Slide one of them along the wall.`,
  ])
  const shorter = rectangle('Kitchen', feet(7), feet(8), {}, [0, feet(10, 6)])
  expect(problemsOf({ rooms: [box(), shorter], openings: [door] })).toEqual([
    `openingOutsideWall: Kitchen, wall A: the door reaches past the end of the wall. Slide it along by 2' 0" or make it narrower.`,
  ])
})

test('walls up to 600 mm apart face each other, farther or turned ones do not', () => {
  const door = opening('d', 'Study-2', feet(3), feet(3), feet(7), intoKitchen)
  const below = (gap: number) => rectangle('Kitchen', feet(12), feet(8), {}, [0, feet(10) + gap])
  const facing = (gap: number) => kindsOf({ rooms: [box(), below(gap)], openings: [door] })
  expect(facing(0)).toEqual([])
  expect(facing(metres(0.6))).toEqual([])
  expect(facing(metres(0.601))).toEqual(['farSideDoesNotFace'])
  const side = {
    ...intoKitchen,
    far: { ...intoKitchen.far, wallId: 'Kitchen-1' },
  } as unknown as Partial<Opening>
  const wrong = opening('d', 'Study-2', feet(3), feet(3), feet(7), side)
  expect(problemsOf({ rooms: [box(), kitchen], openings: [wrong] })).toEqual([
    'farSideDoesNotFace: Study, wall C: the door cannot lead to Kitchen, because wall B there does not run along the other side of the same wall. Move one of the rooms, or give the opening another far side.',
  ])
})

test('rooms whose outlines run opposite ways face each other all the same', () => {
  const back = room('Kitchen', [
    [0, feet(10, 6)],
    [0, feet(18)],
    [feet(12), feet(18)],
    [feet(12), feet(10, 6)],
  ])
  const far = { roomId: 'Kitchen' as Room['id'], wallId: 'Kitchen-3' as Room['corners'][number]['wallId'] }
  const door = opening('d', 'Study-2', feet(3), feet(3), feet(7), { kind: 'door', far })
  expect(problemsOf({ rooms: [box(), back], openings: [door] })).toEqual([])
})

test('sash members wider than the sash, and transoms larger than the opening, are refused', () => {
  const window = (changes: Partial<Opening>) =>
    kindsOf({ openings: [opening('w', 'Study-0', feet(1), feet(2), feet(3), { sill: feet(2), ...changes })] })
  expect(window({ sash: sash() })).toEqual([])
  expect(window({ sash: sash({ stile: feet(1) }) })).toEqual(['sashDoesNotFit'])
  expect(window({ sash: sash({ lightsDown: 20, muntin: inches(2) }) })).toEqual(['sashDoesNotFit'])
  expect(window({ sash: sash({ operation: 'doubleHung', topRail: feet(1), bottomRail: feet(2) }) })).toEqual([
    'sashDoesNotFit',
  ])
  expect(window({ transom: { height: feet(3), lightsAcross: 1, lightsDown: 1 } })).toEqual(['sashDoesNotFit'])
  expect(window({ sidelights: { count: 2, width: feet(1), lightsAcross: 1, lightsDown: 1 } })).toEqual([
    'sashDoesNotFit',
  ])
})

test('an arched head must fit into its opening', () => {
  const window = (head: Opening['head'], height: number) =>
    kindsOf({ openings: [opening('w', 'Study-0', feet(1), feet(4), height, { sill: feet(1), head })] })
  expect(window({ kind: 'halfRound' }, feet(2))).toEqual([])
  expect(window({ kind: 'halfRound' }, feet(1, 11))).toEqual(['headDoesNotFit'])
  expect(window({ kind: 'segment', rise: feet(1) }, feet(4))).toEqual([])
  expect(window({ kind: 'segment', rise: feet(2, 1) }, feet(4))).toEqual(['headDoesNotFit'])
})

test('openings in a ceiling must lie inside it and apart, and a room open above has no ceiling for them', () => {
  const one = ceilingOpening('Study', [feet(1), feet(1)], feet(3), feet(3))
  const beside = {
    ...ceilingOpening('Study', [feet(4), feet(1)], feet(3), feet(3)),
    id: 'b' as typeof one.id,
  }
  const over = { ...ceilingOpening('Study', [feet(3), feet(3)], feet(3), feet(3)), id: 'c' as typeof one.id }
  expect(kindsOf({ ceilingOpenings: [one, beside] })).toEqual([])
  expect(kindsOf({ ceilingOpenings: [one, over] })).toEqual(['ceilingOpeningOutside'])
  const outside = ceilingOpening('Study', [feet(10), feet(1)], feet(3), feet(3))
  expect(problemsOf({ ceilingOpenings: [outside] })).toEqual([
    'ceilingOpeningOutside: Study: the hatch in the ceiling reaches past the walls. Move it or make it smaller.',
  ])
  expect(kindsOf({ rooms: [box({ above: 'open' })], ceilingOpenings: [one] })).toEqual([
    'ceilingOpeningOutside',
  ])
})

test('trim higher than every wall it may run along is refused; one low wall of several is left out', () => {
  const shed: Room['ceiling'] = { kind: 'shed', along: 'x', startHeight: 0 as Length, endHeight: feet(8) }
  const rail = (walls: readonly string[] | null) =>
    kindsOf({
      rooms: [box({ ceiling: shed })],
      trimRuns: [run('Study', 'chairRail', { level: feet(3), walls: walls as TrimRun['walls'] })],
    })
  expect(rail(null)).toEqual([])
  expect(rail(['Study-3'])).toEqual(['trimDoesNotFit'])
  expect(problemsOf({ trimRuns: [run('Study', 'pictureRail', { level: feet(8) })] })).toEqual([
    'trimDoesNotFit: Study: the picture rail is higher than the wall it runs along. Make it shorter, set it lower, or leave that wall out.',
  ])
})

test('a radiator no table knows is refused', () => {
  const radiator: BuiltItem = {
    kind: 'radiator',
    id: 'r' as BuiltItem['id'],
    roomId: 'Study' as Room['id'],
    name: '',
    pattern: 'column',
    columns: 3,
    heightInches: 20,
    sections: 8,
  }
  expect(kindsOf({ builtItems: [radiator] })).toEqual(['notValid'])
  expect(kindsOf({ builtItems: [{ ...radiator, columns: 2 }] })).toEqual([])
})

test('what is remembered of a room is judged anew when what it depends on changes, next door too', () => {
  const job = twoRooms()
  expect(sketchProblems(job)).toEqual([])
  const moved = Object.values(job.rooms).find(({ name }) => name === 'Parlour')
  if (moved === undefined) throw new Error('no parlour')
  const away = {
    ...moved,
    corners: moved.corners.map((one) => ({ ...one, x: lengthFromUnits(one.x + feet(40)) })),
  }
  const kinds = (rooms: Job['rooms']) => sketchProblems({ ...job, rooms }).map(({ kind }) => kind)
  expect(kinds({ ...job.rooms, [moved.id]: away })).toEqual(['farSideDoesNotFace'])
  expect(kinds(job.rooms)).toEqual([])
  const wide = Object.fromEntries(
    Object.entries(job.openings).map(([id, one]) => [id, { ...one, width: feet(30) }]),
  )
  expect(sketchProblems({ ...job, openings: wide }).length).toBeGreaterThan(0)
  expect(sketchProblems(job)).toEqual([])
})
