import { expect, test } from 'vitest'
import type { BuiltItem } from '../../core/project/built-records.ts'
import { specify } from '../../core/specification/specify.ts'
import { feet } from '../../core/units/length.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { builtOf, partOf, plainSurfaces, quantity, takeoffOf, trimOf, wallOf } from './hand-takeoff.ts'
import {
  baseboard,
  crown,
  end,
  flatCeiling,
  leadEnd,
  leadStart,
  noticesOf,
  old,
  plainRoom,
  sageWalls,
  squareFootMm2,
  start,
  whiteTrim,
  windowIn,
} from './rooms.ts'
import { stepList } from './step-list.ts'

test('crown room with oil trim and a fixed divided sash, white to off-white: trim first, two coats, cut by the glass', () => {
  const job = buildJob({
    header: old,
    rooms: [rectangularRoom('parlour', 12, 10)],
    trimRuns: [baseboard('parlour', true), crown('parlour')],
    openings: [windowIn('w1', 'parlour', 'fixed')],
    existing: [
      existingOn('ceiling', 'plaster', 'latexFlat'),
      existingOn('walls', 'plaster', 'latexFlat'),
      existingOn('trim', 'wood', 'oilPaint', { sheen: 'gloss' }),
      existingOn('sash', 'wood', 'oilPaint', { sheen: 'gloss' }),
    ],
    finishes: [
      finishFor('ceiling', 'latexCeiling', 'off-white', 'flat'),
      finishFor('walls', 'latexWall', 'off-white', 'matte'),
      finishFor('trim', 'waterborneEnamel', 'off-white', 'semiGloss'),
      finishFor('sash', 'waterborneEnamel', 'off-white', 'semiGloss'),
    ],
  })
  const takeoff = takeoffOf(
    ...plainSurfaces('parlour'),
    quantity('parlour', trimOf('parlour', 'parlour-crown'), 'trim', { area: 22, length: 44 }),
    quantity('parlour', partOf('w1', 'sash'), 'sash', { area: 3.78, count: 1, glass: 40.1 }),
  )
  const specification = specify(job, takeoff)
  expect(stepList(specification, 'parlour')).toEqual([
    ...start,
    ...leadStart,
    'trim/sand/1',
    'trim/vacuum/1',
    'trim/prime/1 bondingPrimer',
    'fixedSash/sand/1',
    'room/cleanDaily/1',
    'fixedSash/vacuum/1',
    'room/vacuum/1',
    ...leadEnd,
    'fixedSash/prime/1 bondingPrimer',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'fixedSash/dustOff/1',
    'fixedSash/coat/1 waterborneEnamel',
    'fixedSash/sand/2',
    'fixedSash/dustOff/2',
    'fixedSash/coat/2 waterborneEnamel',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/coat/2 latexCeiling',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/coat/2 latexWall',
    'fixedSash/scrapeGlass/1',
    ...end,
  ])
  const sash = specification.steps.find((step) => step.key === 'parlour/fixedSash/coat/2')
  expect(sash?.amounts.glassPerimeter).toBe(feet(40.1))
  expect(sash?.because.map((because) => because.ruleId)).toContain('fixed-sash')
  // All of the oil paint is sanded: 22 + 22 + 3.78 = 47.8 sq ft, over 6.
  expect(noticesOf(specification, 'leadSafe')[0]?.sentence).toContain(
    'about 47.8 sq ft of painted surface, more than 6',
  )
})

test('wallpapered dining room: strip, wash off the size, dry, seal, and only then fill', () => {
  const job = buildJob(
    plainRoom('dining', {
      existing: [
        existingOn('ceiling', 'plaster', 'latexFlat'),
        existingOn('walls', 'plaster', 'wallpaper'),
        existingOn('trim', 'wood', 'latexFlat', { sheen: 'eggshell' }),
      ],
      conditions: [conditionOn('holes', 'hole', wallOf('dining', 'south'), { count: 5 })],
    }),
  )
  const specification = specify(job, takeoffOf(...plainSurfaces('dining')))
  expect(stepList(specification, 'dining')).toEqual([
    ...start,
    'walls/stripWallpaper/1',
    'walls/washOffSize/1',
    'walls/vacuum/1',
    'walls/sealBare/1 plasterSealer',
    'walls/fill/1 settingFiller',
    'walls/fill/2 dryingFiller',
    'walls/sandFill/1',
    'walls/dustOff/0',
    'walls/spotPrime/1 acrylicPrimer',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const wait = specification.order.find((edge) => edge.before === 'dining/walls/washOffSize/1')
  expect(wait?.minimumWait).toBe(24 * 60)
})

test('radiator alcove: cold radiator, rust off, metal primer, behind it the wall', () => {
  const radiator: BuiltItem = {
    kind: 'radiator',
    id: 'rad' as BuiltItem['id'],
    roomId: 'alcove' as BuiltItem['roomId'],
    name: 'Radiator',
    pattern: 'tube',
    columns: 5,
    heightInches: 38,
    sections: 7,
  }
  const job = buildJob({
    rooms: [rectangularRoom('alcove', 12, 10, { use: 'living' })],
    builtItems: [radiator],
    existing: [
      existingOn('walls', 'plaster', 'latexFlat'),
      existingOn('radiators', 'metal', 'oilPaint', { sheen: 'gloss' }),
    ],
    finishes: [sageWalls, finishFor('radiators', 'radiatorEnamel', 'white', 'semiGloss')],
    conditions: [conditionOn('rust', 'rust', builtOf('alcove', 'rad'), { areaMm2: 2 * squareFootMm2 })],
  })
  const takeoff = takeoffOf(
    quantity('alcove', wallOf('alcove', 'north'), 'walls', { area: 96 }),
    quantity('alcove', builtOf('alcove', 'rad'), 'radiators', { area: 35, count: 1, reach: 3.2 }),
  )
  const specification = specify(job, takeoff)
  expect(stepList(specification, 'alcove')).toEqual([
    ...start,
    'radiators/treatRust/1',
    'radiators/sand/1',
    'radiators/vacuum/1',
    'radiators/spotPrime/1 metalPrimer',
    'room/vacuum/1',
    // Nothing is cut against a radiator: it dries beside the wall. All primer is on first.
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/coat/2 latexWall',
    'radiators/dustOff/1',
    'radiators/coat/1 radiatorEnamel',
    'radiators/sand/2',
    'radiators/dustOff/2',
    'radiators/coat/2 radiatorEnamel',
    ...end,
  ])
  const coat = specification.steps.find((step) => step.key === 'alcove/radiators/coat/1')
  expect(coat?.cautions.map((caution) => caution.id)).toEqual(['solvent', 'oilyRags', 'heat'])
  expect(noticesOf(specification, 'advice')[0]?.sentence).toContain('Turn the heating of alcove off')
})

test('study with varnished trim and shellacked doors going to paint: dulled, each with its primer', () => {
  const job = buildJob({
    rooms: [rectangularRoom('study', 12, 10)],
    trimRuns: [baseboard('study', false)],
    openings: [{ ...windowIn('d1', 'study', 'fixed'), kind: 'door', sash: null }],
    existing: [
      existingOn('trim', 'wood', 'varnish', { sheen: 'satin' }),
      existingOn('doors', 'wood', 'shellac', { sheen: 'satin' }),
    ],
    finishes: [whiteTrim, finishFor('doors', 'waterborneEnamel', 'white', 'semiGloss')],
  })
  const takeoff = takeoffOf(
    quantity('study', trimOf('study', 'study-base'), 'trim', { area: 22, length: 44 }),
    quantity('study', partOf('d1', 'slab'), 'doors', { area: 21, count: 1 }),
  )
  expect(stepList(specify(job, takeoff), 'study')).toEqual([
    ...start,
    'trim/sand/1',
    'trim/vacuum/1',
    'trim/prime/1 stainBlockingPrimer',
    'doors/sand/1',
    'doors/vacuum/1',
    'doors/prime/1 shellacPrimer',
    'room/vacuum/1',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'doors/dustOff/1',
    'doors/coat/1 waterborneEnamel',
    'doors/sand/2',
    'doors/dustOff/2',
    'doors/coat/2 waterborneEnamel',
    ...end,
  ])
})

test('red dining room with an accent wall and gaps along the trim: tinted primer, three coats, caulk before the primer', () => {
  const accent = finishFor('walls', 'latexWall', 'red', 'matte', {
    id: 'accent' as never,
    scope: { level: 'surface', surface: wallOf('red-room', 'north') },
  })
  const job = buildJob(
    plainRoom('red-room', {
      existing: [
        existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
        existingOn('walls', 'gypsumBoard', 'latexFlat'),
        existingOn('trim', 'wood', 'oilPaint', { sheen: 'satin' }),
      ],
      finishes: [flatCeiling, sageWalls, accent, whiteTrim],
      conditions: [conditionOn('gap', 'caulkGap', trimOf('red-room', 'red-room-base'), { length: feet(20) })],
    }),
  )
  const specification = specify(job, takeoffOf(...plainSurfaces('red-room')))
  expect(stepList(specification, 'red-room')).toEqual([
    ...start,
    'walls+accent/prime/1 acrylicPrimer',
    'trim/sand/1',
    'trim/vacuum/1',
    'trim/caulk/1 acrylicCaulk',
    'trim/prime/1 bondingPrimer',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'walls+accent/dustOff/1',
    'walls+accent/coat/1 latexWall',
    'walls+accent/coat/2 latexWall',
    'walls+accent/coat/3 latexWall',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const tinted = specification.steps.find((step) => step.key === 'red-room/walls+accent/prime/1')
  expect(tinted?.colourId).toBe('red')
})

test('double-hung sash painted shut, putty gone, knots and bare wood: free, scrape nothing, seal, putty, prime, coat', () => {
  const job = buildJob({
    header: old,
    rooms: [rectangularRoom('porch', 12, 10)],
    openings: [windowIn('w1', 'porch', 'doubleHung')],
    existing: [existingOn('sash', 'wood', 'oilPaint', { sheen: 'satin' })],
    finishes: [finishFor('sash', 'waterborneEnamel', 'white', 'semiGloss')],
    conditions: [
      conditionOn('shut', 'paintedShut', partOf('w1', 'sash')),
      conditionOn('putty', 'missingPutty', partOf('w1', 'sash'), { length: feet(6) }),
      conditionOn('knots', 'knots', partOf('w1', 'sash'), { count: 2 }),
      conditionOn('bare', 'bareWood', partOf('w1', 'sash'), { areaMm2: 0.5 * squareFootMm2 }),
    ],
  })
  const takeoff = takeoffOf(
    quantity('porch', partOf('w1', 'sash'), 'sash', { area: 20, count: 1, glass: 40 }),
  )
  const specification = specify(job, takeoff)
  expect(stepList(specification, 'porch')).toEqual([
    ...start,
    ...leadStart,
    'sash/freeSash/1',
    'sash/sand/1',
    'room/cleanDaily/1',
    'sash/vacuum/1',
    'room/vacuum/1',
    ...leadEnd,
    'sash/sealBare/1 stainBlockingPrimer',
    'sash/blockStain/1 shellacPrimer',
    'sash/spotPrime/1 stainBlockingPrimer',
    'sash/puttySash/1 glazingPutty',
    'sash/prime/1 bondingPrimer',
    'sash/dustOff/1',
    'sash/coat/1 waterborneEnamel',
    'sash/sand/2',
    'sash/dustOff/2',
    'sash/coat/2 waterborneEnamel',
    'sash/easeSash/1',
    'sash/scrapeGlass/1',
    ...end,
  ])
})
