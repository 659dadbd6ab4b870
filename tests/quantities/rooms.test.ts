import { expect, test } from 'vitest'
import type { Opening, TrimRun } from '../../core/project/sketch-records.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { feet, inches, type Length } from '../../core/units/length.ts'
import {
  casing,
  ceilingOpening,
  feetOf,
  opening,
  rectangle,
  room,
  run,
  sash,
  sketch,
  squareFeetOf,
  surfaceOf,
} from './sketched.ts'

const box = (changes: Parameters<typeof rectangle>[3] = {}) => rectangle('a', feet(12), feet(10), changes)

test('a plain room: four walls, a ceiling, each with the line it comes from', () => {
  const { surfaces } = takeOff(sketch({ rooms: [box()] }))
  expect(surfaces.map((surface) => [surface.key, squareFeetOf(surface.netArea)])).toEqual([
    ['ceiling:a', 12 * 10],
    ['wall:a:a-0:whole', 12 * 8],
    ['wall:a:a-1:whole', 10 * 8],
    ['wall:a:a-2:whole', 12 * 8],
    ['wall:a:a-3:whole', 10 * 8],
  ])
  expect(surfaces[1]?.derivation[0]).toEqual({
    kind: 'gross',
    text: `wall A 12' 0" x 8' 0"`,
    area: surfaces[1]?.grossArea,
    length: null,
    sourceId: 'a-0',
  })
})

test('a wall less its openings says each deduction with its size', () => {
  const job = sketch({
    rooms: [box()],
    openings: [
      opening('d', 'a-0', feet(1), inches(32), inches(80), { kind: 'door' }),
      opening('w', 'a-0', feet(6), feet(3), feet(4), { sill: feet(3), name: 'east' }),
    ],
  })
  const wall = surfaceOf(job, 'wall:a:a-0:whole')
  // 96 - 32 x 80 / 144 - 3 x 4
  expect(squareFeetOf(wall.netArea)).toBeCloseTo(96 - 17.777778 - 12, 5)
  expect(wall.derivation.slice(1, 3).map((line) => line.text)).toEqual([
    `door 2' 8" x 6' 8"`,
    `window "east" 3' 0" x 4' 0"`,
  ])
  const areas = wall.derivation.flatMap((line) => (line.kind === 'deduction' ? [line.area ?? 0] : []))
  expect(areas.reduce((sum, area) => sum + area, 0)).toBe(wall.deductedArea)
})

test('a gable: end walls rise to the ridge, the ceiling is two slopes of true length', () => {
  const job = sketch({
    rooms: [
      box({
        ceiling: {
          kind: 'gable',
          along: 'x',
          startHeight: feet(4),
          endHeight: feet(4),
          ridgeAt: feet(6),
          ridgeHeight: feet(12),
        },
      }),
    ],
  })
  // End wall: 12 x 4 + 12 x 8 / 2; knee walls 10 x 4; slopes: hypotenuse of 6 and 8 is 10, so 2 x 10 x 10.
  expect(squareFeetOf(surfaceOf(job, 'wall:a:a-0:whole').netArea)).toBe(48 + 48)
  expect(squareFeetOf(surfaceOf(job, 'wall:a:a-1:whole').netArea)).toBe(40)
  expect(squareFeetOf(surfaceOf(job, 'ceiling:a').netArea)).toBe(200)
  expect(feetOf(surfaceOf(job, 'ceiling:a').reachHeight)).toBe(12)
  expect(surfaceOf(job, 'wall:a:a-0:whole').derivation[0]?.text).toBe(
    `wall A 12' 0" long: 4' 0" high at 0' 0", 12' 0" high at 6' 0", 4' 0" high at 12' 0"`,
  )
})

test('a stair: walls between a raked floor and a raked ceiling are parallelograms', () => {
  const line = (from: number, to: number) => [
    { at: 0 as Length, height: feet(from) },
    { at: feet(12), height: feet(to) },
  ]
  const job = sketch({
    rooms: [
      box({
        ceiling: { kind: 'stair', along: 'x', line: line(8, 17) },
        floor: { kind: 'stair', along: 'x', line: line(0, 9) },
      }),
    ],
  })
  // 12 across x 8 high, whatever the rake; the ceiling rises 9 in 12: hypotenuse 15, 15 x 10.
  expect(squareFeetOf(surfaceOf(job, 'wall:a:a-0:whole').netArea)).toBe(96)
  expect(squareFeetOf(surfaceOf(job, 'ceiling:a').netArea)).toBe(150)
  expect(feetOf(surfaceOf(job, 'wall:a:a-0:whole').reachHeight)).toBe(8)
})

test('a baseboard on a stair runs along the rake and stops at the casing of a door', () => {
  const line = [
    { at: 0 as Length, height: 0 as Length },
    { at: feet(12), height: feet(9) },
  ]
  const raked = sketch({
    rooms: [
      box({
        ceiling: {
          kind: 'stair',
          along: 'x',
          line: line.map((p) => ({ ...p, height: (p.height + feet(8)) as Length })),
        },
        floor: { kind: 'stair', along: 'x', line },
      }),
    ],
    trimRuns: [run('a', 'baseboard', { walls: ['a-0'] as unknown as TrimRun['walls'] })],
  })
  expect(feetOf(surfaceOf(raked, 'trim:a:a-baseboard').length)).toBe(15)
})

test('a room open to the space above has no ceiling and its walls no upper edge', () => {
  const job = sketch({ rooms: [box({ above: 'open' })] })
  expect(takeOff(job).byKey.has('ceiling:a')).toBe(false)
  expect(feetOf(surfaceOf(job, 'wall:a:a-0:whole').cuttingIn)).toBe(0)
})

test('a stairwell is taken off the ceiling along its slope, and its reveal is added', () => {
  const job = sketch({
    rooms: [box({ ceiling: { kind: 'shed', along: 'x', startHeight: feet(8), endHeight: feet(17) } })],
    ceilingOpenings: [ceilingOpening('a', [feet(2), feet(2)], feet(4), feet(3), { revealDepth: feet(0, 6) })],
  })
  const ceiling = surfaceOf(job, 'ceiling:a')
  // 9 in 12: true length 5/4. 150 - 4 x 3 x 5/4 = 135; reveal 2 x (5 + 3) x 1/2 = 8.
  expect(squareFeetOf(ceiling.grossArea)).toBe(150)
  expect(squareFeetOf(ceiling.deductedArea)).toBe(15)
  expect(squareFeetOf(ceiling.netArea)).toBe(135 + 8)
  expect(feetOf(ceiling.masking)).toBe(16)
})

test('a chair rail divides its wall at its lower edge, and the parts add up to the wall', () => {
  const job = sketch({
    rooms: [box()],
    openings: [opening('w', 'a-0', feet(4), feet(3), feet(4), { sill: feet(2) })],
    trimRuns: [run('a', 'chairRail', { level: feet(3), height: inches(3), girth: inches(4) })],
  })
  const lower = surfaceOf(job, 'wall:a:a-0:lower')
  const upper = surfaceOf(job, 'wall:a:a-0:upper')
  // Of the window 1 ft is below the rail, 3 ft above it.
  expect([lower.netArea, upper.netArea].map(squareFeetOf)).toEqual([12 * 3 - 3, 12 * 5 - 9])
  const texts = [lower, upper].map(
    ({ derivation }) => derivation.find(({ kind }) => kind === 'deduction')?.text,
  )
  expect(texts).toEqual([
    `window 3' 0" x 4' 0", the part in this zone: 3.0 sq ft`,
    `window 3' 0" x 4' 0", the part in this zone: 9.0 sq ft`,
  ])
  expect([lower.surfaceClass, upper.surfaceClass]).toEqual(['walls', 'walls'])
  expect(feetOf(lower.reachHeight)).toBe(3)
})

test('under a wainscot cap the lower part is wainscot', () => {
  const job = sketch({
    rooms: [box()],
    trimRuns: [run('a', 'wainscotCap', { level: feet(3), walls: ['a-1'] as unknown as TrimRun['walls'] })],
  })
  expect(surfaceOf(job, 'wall:a:a-1:lower').surfaceClass).toBe('wainscot')
  expect(takeOff(job).byKey.has('wall:a:a-0:whole')).toBe(true)
})

test('trim stops at what it meets: a baseboard at casings, a rail at a window, a crown at nothing lower than itself', () => {
  const job = sketch({
    rooms: [box()],
    openings: [
      opening('d', 'a-0', feet(1), feet(3), feet(7), { kind: 'door', casingNear: casing }),
      opening('w', 'a-0', feet(7), feet(3), feet(4), { sill: feet(2, 6), casingNear: casing }),
    ],
    trimRuns: [
      run('a', 'baseboard', { girth: inches(8) }),
      run('a', 'chairRail', { level: feet(3), height: inches(3) }),
      run('a', 'crown', { height: inches(4) }),
    ],
  })
  // Around 44 ft; the door takes 3 ft + 2 x 4 in of base and rail, the window 3 ft + 2 x 4 in of the rail only.
  const opened = 3 + 8 / 12
  expect(feetOf(surfaceOf(job, 'trim:a:a-baseboard').length)).toBeCloseTo(44 - opened, 5)
  expect(feetOf(surfaceOf(job, 'trim:a:a-chairRail').length)).toBeCloseTo(44 - 2 * opened, 5)
  expect(feetOf(surfaceOf(job, 'trim:a:a-crown').length)).toBe(44)
  expect(squareFeetOf(surfaceOf(job, 'trim:a:a-baseboard').netArea)).toBeCloseTo((44 - opened) * (8 / 12), 4)
  expect(surfaceOf(job, 'trim:a:a-baseboard').derivation[0]?.text).toBe(
    `wall A 12' 0", less 3' 8" where it stops`,
  )
})

test('a run along all walls leaves out the eaves it does not fit under', () => {
  const job = sketch({
    rooms: [box({ ceiling: { kind: 'shed', along: 'x', startHeight: 0 as Length, endHeight: feet(12) } })],
    trimRuns: [run('a', 'baseboard', { height: feet(0, 6) })],
  })
  // 1 in 1 slope: the first 6 in of both long walls are too low, and all of the wall of no height.
  expect(feetOf(surfaceOf(job, 'trim:a:a-baseboard').length)).toBe(2 * 11.5 + 10)
})

test('an inside corner that juts into the room has its trim measured along the wall', () => {
  const ell = room('a', [
    [0, 0],
    [feet(12), 0],
    [feet(12), feet(4)],
    [feet(6), feet(4)],
    [feet(6), feet(10)],
    [0, feet(10)],
  ])
  const job = sketch({ rooms: [ell], trimRuns: [run('a', 'crown', { height: inches(4) })] })
  expect(feetOf(surfaceOf(job, 'trim:a:a-crown').length)).toBe(12 + 4 + 6 + 6 + 6 + 10)
  expect(squareFeetOf(surfaceOf(job, 'ceiling:a').netArea)).toBe(12 * 4 + 6 * 6)
})

const farB = { roomId: 'b' as Opening['roomId'], wallId: 'b-0' as Opening['wallId'] }

function withDoor(changes: Partial<Opening> = {}) {
  return sketch({
    rooms: [box(), rectangle('b', feet(12), feet(8), {}, [0, feet(10, 6)])],
    openings: [
      opening('d', 'a-2', feet(3), feet(3), feet(7), {
        kind: 'door',
        far: farB,
        casingNear: casing,
        casingFar: { ...casing, girth: inches(6) },
        jambDepth: inches(6),
        slab: {
          kind: 'panelled',
          thickness: inches(2),
          leaves: 1,
          paintNear: true,
          paintFar: true,
          edgesShow: 'far',
        },
        ...changes,
      }),
    ],
  })
}

test('a door between two rooms: a casing each side, the jamb once, each face once, the edges on the side they show', () => {
  const job = withDoor()
  const keys = takeOff(job).surfaces.flatMap((surface) =>
    surface.surface.kind === 'opening' ? [`${surface.roomId} ${surface.key}`] : [],
  )
  expect(keys).toEqual([
    'a opening:d:near:casing',
    'a opening:d:near:jamb',
    'a opening:d:near:slab',
    'b opening:d:far:casing',
    'b opening:d:far:slab',
  ])
  // Centre line of the casing: 7 + 7 + 3 + 2 x 4 in.
  expect(feetOf(surfaceOf(job, 'opening:d:near:casing').length)).toBeCloseTo(17 + 8 / 12, 5)
  expect(squareFeetOf(surfaceOf(job, 'opening:d:far:casing').netArea)).toBeCloseTo((17 + 8 / 12) / 2, 4)
  expect(squareFeetOf(surfaceOf(job, 'opening:d:near:jamb').netArea)).toBe(17 * 0.5)
  expect(squareFeetOf(surfaceOf(job, 'opening:d:near:slab').netArea)).toBe(21)
  // Far face with edges: around 20 ft x 2 in.
  expect(squareFeetOf(surfaceOf(job, 'opening:d:far:slab').netArea)).toBeCloseTo(21 + 20 / 6, 5)
  expect(squareFeetOf(surfaceOf(job, 'opening:d:far:slab').equivalentArea)).toBeCloseTo(21 * 1.3, 9)
})

test('the far wall loses the same hole as the near one', () => {
  const job = withDoor()
  expect(squareFeetOf(surfaceOf(job, 'wall:b:b-0:whole').netArea)).toBe(12 * 8 - 21)
  expect(squareFeetOf(surfaceOf(job, 'wall:a:a-2:whole').netArea)).toBe(12 * 8 - 21)
})

test('a transom and sidelights stand inside the opening, and the door in what they leave', () => {
  const job = withDoor({
    width: feet(6),
    transom: { height: feet(1), lightsAcross: 2, lightsDown: 1 },
    sidelights: { count: 2, width: feet(1), lightsAcross: 1, lightsDown: 3 },
  })
  // Door 4 x 6 of the hole 6 x 7; transom 6 x 1, sidelights 2 x 1 x 6.
  expect(squareFeetOf(surfaceOf(job, 'opening:d:near:slab').grossArea)).toBe(24)
  const glazed = surfaceOf(job, 'opening:d:near:sash')
  expect(squareFeetOf(glazed.grossArea)).toBe(6 + 12)
  expect(glazed.count).toBe(3)
  // Stiles and rails 2 1/4 in, muntins 7/8 in: transom lights 2 of (72 - 4.5 - 0.875) / 2 x 7.5;
  // sidelights 3 of 7.5 x (72 - 4.5 - 1.75) / 3 each.
  const transom = (72 - 4.5 - 0.875) * 7.5
  const sidelight = 7.5 * (72 - 4.5 - 1.75)
  expect(squareFeetOf(glazed.deductedArea)).toBeCloseTo((transom + 2 * sidelight) / 144, 5)
})

test('a glazed door with its lights known gives up its glass; without them it is measured solid', () => {
  const slab = {
    kind: 'glazed',
    thickness: inches(2),
    leaves: 1,
    paintNear: true,
    paintFar: false,
    edgesShow: 'far',
  } as const
  const known = withDoor({
    slab,
    sash: sash({ stile: inches(4), topRail: inches(4), bottomRail: inches(8) }),
  })
  const face = surfaceOf(known, 'opening:d:near:slab')
  // One light (36 - 8) x (84 - 12) in = 14 sq ft of 21.
  expect(squareFeetOf(face.netArea)).toBe(21 - 14)
  expect(feetOf(face.glassPerimeter)).toBeCloseTo((2 * (28 + 72)) / 12, 5)
  expect(takeOff(known).byKey.has('opening:d:near:sash')).toBe(false)
  expect(squareFeetOf(surfaceOf(withDoor({ slab }), 'opening:d:near:slab').netArea)).toBe(21)
})

test('plaster reveals are wall work of their own: sides, head and sill', () => {
  const job = sketch({
    rooms: [box()],
    openings: [
      opening('w', 'a-0', feet(4), feet(3), feet(4), {
        sill: feet(3),
        jambDepth: feet(0, 6),
        jambOf: 'wall',
      }),
    ],
  })
  const reveal = surfaceOf(job, 'opening:w:near:jamb')
  expect(reveal.surfaceClass).toBe('walls')
  expect(squareFeetOf(reveal.netArea)).toBe(2 * (3 + 4) * 0.5)
})

test('a window with stool and apron: casing on three sides, the stool with a horn at each end', () => {
  const job = sketch({
    rooms: [box()],
    openings: [
      opening('w', 'a-0', feet(4), feet(3), feet(4), {
        sill: feet(3),
        casingNear: casing,
        jambDepth: inches(4),
        sash: sash(),
        stool: { depth: inches(4), thickness: inches(1), apron: inches(3) },
      }),
    ],
  })
  // Casing 4 + 4 + 3 + 2 x 4 in; jamb without a sill; stool 3 ft + 2 x 4 in, girth 8 in.
  expect(feetOf(surfaceOf(job, 'opening:w:near:casing').length)).toBeCloseTo(11 + 8 / 12, 5)
  expect(feetOf(surfaceOf(job, 'opening:w:near:jamb').length)).toBe(11)
  expect(feetOf(surfaceOf(job, 'opening:w:near:stool').length)).toBeCloseTo(3 + 8 / 12, 5)
  expect(squareFeetOf(surfaceOf(job, 'opening:w:near:stool').netArea)).toBeCloseTo((44 / 12) * (8 / 12), 5)
})

test('a window without a stool is cased on all four sides, with corner blocks where the casing has them', () => {
  const job = sketch({
    rooms: [box()],
    openings: [
      opening('w', 'a-0', feet(4), feet(3), feet(4), {
        sill: feet(3),
        casingNear: { ...casing, style: 'plinthAndCornerBlocks' },
      }),
    ],
  })
  const cased = surfaceOf(job, 'opening:w:near:casing')
  expect(feetOf(cased.length)).toBeCloseTo(14 + 16 / 12, 5)
  expect(cased.count).toBe(4)
})

test('a half-round window: the casing follows the arch on its own centre line, and muntins end at the arch', () => {
  const arched = (changes: Partial<Opening>) =>
    sketch({
      rooms: [box()],
      openings: [
        opening('w', 'a-0', feet(4), feet(4), feet(5), {
          sill: feet(2),
          head: { kind: 'halfRound' },
          ...changes,
        }),
      ],
    })
  const whole = 4 * 3 + (Math.PI * 4) / 2
  expect(squareFeetOf(surfaceOf(arched({}), 'wall:a:a-0:whole').netArea)).toBeCloseTo(96 - whole, 5)
  const cased = arched({ casingNear: casing })
  // Two legs of 3 ft, the arch at radius 2 ft 2 in, the sill 4 ft with two corners of 4 in.
  expect(feetOf(surfaceOf(cased, 'opening:w:near:casing').length)).toBeCloseTo(
    6 + Math.PI * (2 + 2 / 12) + 4 + 8 / 12,
    5,
  )
  const glazed = surfaceOf(
    arched({ sash: sash({ stile: inches(2), topRail: inches(2), bottomRail: inches(2) }) }),
    'opening:w:near:sash',
  )
  // One light: 44 in wide under an arch of radius 22 in, upright sides of 3 ft - 2 in.
  const glass = 44 * 34 + (Math.PI * 22 * 22) / 2
  expect(squareFeetOf(glazed.deductedArea)).toBeCloseTo(glass / 144, 4)
  expect(feetOf(glazed.glassPerimeter)).toBeCloseTo((44 + 2 * 34 + Math.PI * 22) / 12, 4)
})

test('sash in several units each have their own frame', () => {
  const job = sketch({
    rooms: [box()],
    openings: [opening('w', 'a-0', feet(2), feet(6), feet(4), { sill: feet(3), sash: sash({ units: 2 }) })],
  })
  const pair = surfaceOf(job, 'opening:w:near:sash')
  // Each 36 x 48 in: light (36 - 4) x (48 - 5).
  expect(pair.count).toBe(2)
  expect(squareFeetOf(pair.netArea)).toBeCloseTo(24 - (2 * 32 * 43) / 144, 5)
  expect(feetOf(pair.glassPerimeter)).toBeCloseTo((2 * 2 * (32 + 43)) / 12, 5)
})
