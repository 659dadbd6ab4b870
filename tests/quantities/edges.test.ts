import { expect, test } from 'vitest'
import type { Room, TrimRun } from '../../core/project/sketch-records.ts'
import { roomElevations } from '../../core/quantities/elevation.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { feet, inches } from '../../core/units/length.ts'
import {
  casing,
  feetOf,
  finish,
  houseFinish,
  inchesOf,
  opening,
  rectangle,
  run,
  type Sketch,
  sash,
  sketch,
  surfaceOf,
} from './sketched.ts'

const box = rectangle('a', feet(12), feet(10))
const threeFinishes = [
  houseFinish('walls', 'linen'),
  houseFinish('ceiling', 'sage'),
  houseFinish('trim', 'brick'),
]

const edgesOf = (parts: Partial<Sketch>, key: string) => {
  const surface = surfaceOf(sketch({ rooms: [box], finishes: threeFinishes, ...parts }), key)
  return [feetOf(surface.cuttingIn), feetOf(surface.masking)]
}

test('a bare wall is cut in along the ceiling and masked along the floor', () => {
  expect(edgesOf({}, 'wall:a:a-0:whole')).toEqual([12, 12])
  expect(edgesOf({}, 'ceiling:a')).toEqual([44, 0])
})

test('where walls and ceiling get the same finish nothing is cut in between them', () => {
  const one = [houseFinish('walls', 'linen'), houseFinish('ceiling', 'linen')]
  expect(edgesOf({ finishes: one }, 'wall:a:a-0:whole')).toEqual([0, 12])
  expect(edgesOf({ finishes: one }, 'ceiling:a')).toEqual([0, 0])
})

test('before finishes are chosen each kind of surface counts as one finish', () => {
  expect(edgesOf({ finishes: [] }, 'wall:a:a-0:whole')).toEqual([12, 12])
})

test('along a ceiling that stays as it is the walls are masked, and it needs neither itself', () => {
  const kept = [houseFinish('walls', 'linen'), houseFinish('ceiling', null)]
  expect(edgesOf({ finishes: kept }, 'wall:a:a-0:whole')).toEqual([0, 24])
  expect(edgesOf({ finishes: kept }, 'ceiling:a')).toEqual([0, 0])
})

test('a baseboard takes the floor edge over: the wall is cut in along it, and it is masked at the floor', () => {
  const trimRuns = [run('a', 'baseboard')]
  expect(edgesOf({ trimRuns }, 'wall:a:a-0:whole')).toEqual([24, 0])
  expect(edgesOf({ trimRuns }, 'trim:a:a-baseboard')).toEqual([44, 44])
})

test('a crown stands between wall and ceiling and is cut in along both', () => {
  const trimRuns = [run('a', 'crown', { height: inches(4) })]
  expect(edgesOf({ trimRuns }, 'wall:a:a-0:whole')).toEqual([12, 12])
  expect(edgesOf({ trimRuns }, 'trim:a:a-crown')).toEqual([88, 0])
  expect(edgesOf({ trimRuns }, 'ceiling:a')).toEqual([44, 0])
})

test('a picture rail has the same wall above and below it', () => {
  const trimRuns = [run('a', 'pictureRail', { level: feet(6), height: inches(2) })]
  expect(edgesOf({ trimRuns }, 'wall:a:a-0:whole')).toEqual([12 + 24, 12])
  expect(edgesOf({ trimRuns }, 'trim:a:a-pictureRail')).toEqual([88, 0])
})

test('an accent wall is cut in at both of its corners, and so are its neighbours', () => {
  const surface = { kind: 'wall', roomId: box.id, wallId: wallId('a-0'), zone: 'whole' } as const
  const finishes = [...threeFinishes, finish('accent', { level: 'surface', surface }, 'brick')]
  expect(edgesOf({ finishes }, 'wall:a:a-0:whole')).toEqual([12 + 8 + 8, 12])
  expect(edgesOf({ finishes }, 'wall:a:a-1:whole')).toEqual([10 + 8, 10])
  expect(edgesOf({ finishes }, 'wall:a:a-2:whole')).toEqual([12, 12])
})

function wallId(id: string): Room['corners'][number]['wallId'] {
  return id as Room['corners'][number]['wallId']
}

test('a wall is cut in around the outer edge of a casing; the casing is masked where it stands on the floor', () => {
  const openings = [
    opening('d', 'a-0', feet(3), feet(3), feet(7), {
      kind: 'door',
      casingNear: casing,
      jambDepth: inches(4),
    }),
  ]
  // Outer edge 7 ft 4 in twice and 3 ft 8 in; the floor edge loses 3 ft 8 in.
  const around = 2 * (7 + 4 / 12) + 3 + 8 / 12
  const [cut, mask] = edgesOf({ openings }, 'wall:a:a-0:whole')
  expect(cut).toBeCloseTo(12 + around, 5)
  expect(mask).toBeCloseTo(12 - 3 - 8 / 12, 5)
  const [casingCut, casingMask] = edgesOf({ openings }, 'opening:d:near:casing')
  expect(casingCut).toBeCloseTo(around, 5)
  expect(casingMask).toBeCloseTo(8 / 12, 5)
})

test('around an opening with nothing painted in it the wall is masked', () => {
  const openings = [opening('f', 'a-0', feet(3), feet(4), feet(4), { kind: 'fireplace' })]
  expect(edgesOf({ openings }, 'wall:a:a-0:whole')).toEqual([12, 12 - 4 + 4 + 4 + 4])
})

test('plaster reveals in the wall’s own finish are not cut in, wood jambs are', () => {
  const window = (jambOf: 'wood' | 'wall') => [
    opening('w', 'a-0', feet(3), feet(3), feet(4), { sill: feet(3), jambDepth: inches(4), jambOf }),
  ]
  expect(edgesOf({ openings: window('wall') }, 'wall:a:a-0:whole')).toEqual([12, 12])
  expect(edgesOf({ openings: window('wood') }, 'wall:a:a-0:whole')).toEqual([12 + 14, 12])
  expect(edgesOf({ openings: window('wood') }, 'opening:w:near:jamb')).toEqual([14, 0])
})

test('an opening up to the ceiling takes its width off the ceiling edge', () => {
  const openings = [opening('c', 'a-0', feet(3), feet(4), feet(8), { kind: 'casedOpening' })]
  expect(edgesOf({ openings }, 'wall:a:a-0:whole')[0]).toBe(12 - 4)
  expect(edgesOf({ openings }, 'ceiling:a')[0]).toBe(44 - 4)
})

test('an opening cut by a slope takes what it reaches off the ceiling edge, one below the slope nothing', () => {
  const ceiling: Room['ceiling'] = { kind: 'shed', along: 'x', startHeight: feet(1), endHeight: feet(13) }
  const rooms = [rectangle('a', feet(12), feet(10), { ceiling })]
  const along = (openings: Sketch['openings'] & object) => edgesOf({ rooms, openings }, 'wall:a:a-0:whole')[0]
  // The ceiling rises a foot with each foot of the wall.
  const whole = along([]) ?? 0
  expect(whole).toBeCloseTo(12 * Math.SQRT2, 1)
  const cut = opening('c', 'a-0', feet(3), feet(3), feet(7), { kind: 'casedOpening' })
  expect(along([cut])).toBeCloseTo(9 * Math.SQRT2, 1)
  const halfCut = opening('c', 'a-0', feet(6), feet(4), feet(8), { kind: 'casedOpening' })
  expect(along([halfCut])).toBeCloseTo(11 * Math.SQRT2, 1)
  const below = opening('c', 'a-0', feet(8), feet(3), feet(7), { kind: 'casedOpening' })
  expect(along([below])).toBe(whole)
})

test('a jamb only the far room paints belongs to the far room', () => {
  const rooms = [box, rectangle('b', feet(12), feet(8), {}, [0, feet(10, 6)])]
  const openings = [
    opening('d', 'a-2', feet(3), feet(3), feet(7), {
      kind: 'casedOpening',
      jambDepth: inches(6),
      far: { roomId: rectangle('b', 1, 1).id, wallId: wallId('b-0') },
    }),
  ]
  const finishes = [
    ...threeFinishes,
    finish('kept', { level: 'room', roomId: box.id, surfaceClass: 'trim' }, null),
  ]
  const keys = takeOff(sketch({ rooms, openings, finishes })).surfaces.map((surface) => surface.key)
  expect(keys.filter((key) => key.startsWith('opening'))).toEqual(['opening:d:far:jamb'])
})

test('door faces of different finish are cut in along their edges', () => {
  const slab = {
    kind: 'flush',
    thickness: inches(1.75),
    leaves: 1,
    paintNear: true,
    paintFar: true,
    edgesShow: 'near',
  } as const
  const rooms = [box, rectangle('b', feet(12), feet(8), {}, [0, feet(10, 6)])]
  const far = { roomId: rectangle('b', 1, 1).id, wallId: wallId('b-0') }
  const openings = [opening('d', 'a-2', feet(3), feet(3), feet(7), { kind: 'door', slab, far })]
  const other = finish('other', { level: 'room', roomId: far.roomId, surfaceClass: 'doors' }, 'sage')
  expect(edgesOf({ rooms, openings }, 'opening:d:near:slab')).toEqual([0, 0])
  expect(edgesOf({ rooms, openings, finishes: [...threeFinishes, other] }, 'opening:d:near:slab')).toEqual([
    20, 0,
  ])
})

test('what is drawn on an elevation is as long as the figures say, edge by edge', () => {
  const job = sketch({
    rooms: [box],
    finishes: [...threeFinishes, houseFinish('wainscot', 'sage')],
    openings: [
      opening('d', 'a-0', feet(1), feet(3), feet(7), { kind: 'door', casingNear: casing }),
      opening('w', 'a-0', feet(7), feet(3), feet(4), {
        sill: feet(2),
        casingNear: casing,
        sash: sash(),
        stool: { depth: inches(4), thickness: inches(1), apron: inches(3) },
      }),
      opening('v', 'a-1', feet(4), feet(2), feet(3), { sill: feet(2), casingNear: casing }),
    ],
    trimRuns: [
      run('a', 'baseboard', { walls: ['a-0', 'a-1'] as unknown as TrimRun['walls'] }),
      run('a', 'wainscotCap', {
        level: feet(3),
        height: inches(2),
        walls: ['a-0', 'a-1'] as unknown as TrimRun['walls'],
      }),
      run('a', 'crown', { height: inches(4), walls: ['a-1'] as unknown as TrimRun['walls'] }),
    ],
  })
  const { byKey } = takeOff(job)
  const elevations = roomElevations(job, box.id)
  for (const elevation of elevations) {
    for (const { key } of elevation.zones) {
      const drawn = (kind: 'cutIn' | 'mask') =>
        elevation.edges
          .filter((edge) => edge.key === key && edge.kind === kind)
          .reduce((sum, edge) => sum + lengthOf(edge.line), 0)
      expect(drawn('cutIn'), key).toBeCloseTo(byKey.get(key)?.cuttingIn ?? -1, 0)
      expect(drawn('mask'), key).toBeCloseTo(byKey.get(key)?.masking ?? -1, 0)
    }
  }
})

function lengthOf(line: readonly { readonly at: number; readonly height: number }[]): number {
  return line
    .slice(1)
    .reduce(
      (sum, point, index) =>
        sum + Math.hypot(point.at - (line[index]?.at ?? 0), point.height - (line[index]?.height ?? 0)),
      0,
    )
}

test('an elevation is seen from inside: a wall drawn clockwise starts on the left', () => {
  const job = sketch({
    rooms: [box],
    openings: [
      opening('w', 'a-0', feet(7), feet(3), feet(4), { sill: feet(2), sash: sash({ lightsAcross: 2 }) }),
    ],
  })
  const [first] = roomElevations(job, box.id)
  expect([first?.name, first?.startsAt, feetOf(first?.length ?? 0)]).toEqual(['wall A', 'left', 12])
  const [window] = first?.openings ?? []
  expect(window?.lights.length).toBe(2)
  expect(window?.hole).toEqual({
    from: feet(7),
    to: feet(10),
    bottom: feet(2),
    head: { kind: 'level', height: feet(6) },
  })
})

test('the two sash of a double-hung window are drawn with lights of equal height', () => {
  const job = sketch({
    rooms: [box],
    openings: [
      opening('w', 'a-0', feet(7), feet(3), feet(4), {
        sill: feet(2),
        sash: sash({
          operation: 'doubleHung',
          topRail: inches(2),
          meetingRail: inches(1),
          bottomRail: inches(3),
        }),
      }),
    ],
  })
  const [window] = roomElevations(job, box.id)[0]?.openings ?? []
  // (48 - 2 - 1 - 3) / 2 = 21 in each: from 24 + 3 to 48, and from 49 to 70 in over the floor.
  expect(window?.lights.map(({ bottom, top }) => [inchesOf(bottom), inchesOf(top)])).toEqual([
    [49, 70],
    [27, 48],
  ])
})
