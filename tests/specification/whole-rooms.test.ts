import { expect, test } from 'vitest'
import type { JobHeader } from '../../core/project/job.ts'
import type { BuiltItem, Opening, TrimRun } from '../../core/project/sketch-records.ts'
import { specify } from '../../core/specification/specify.ts'
import type { Notice, Specification } from '../../core/specification/types.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet, inches, zeroLength } from '../../core/units/length.ts'
import {
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  type JobParts,
  keptIn,
  rectangularRoom,
} from '../fixtures/job-builder.ts'
import {
  builtOf,
  ceilingOf,
  partOf,
  plainSurfaces,
  quantity,
  takeoffOf,
  trimOf,
  wallOf,
} from './hand-takeoff.ts'
import { stepList } from './step-list.ts'

const squareFootMm2 = 92_903.04
const start = ['room/protectRoom/1', 'room/dustDown/1']
const end = ['room/cleanUp/1', 'room/inspect/1']

function baseboard(roomId: string, profiled: boolean): TrimRun {
  return {
    id: `${roomId}-base` as TrimRun['id'],
    roomId: roomId as TrimRun['roomId'],
    kind: 'baseboard',
    walls: null,
    height: inches(6),
    girth: inches(6),
    level: zeroLength,
    profiled,
  }
}

function crown(roomId: string): TrimRun {
  return { ...baseboard(roomId, true), id: `${roomId}-crown` as TrimRun['id'], kind: 'crown' }
}

function windowIn(id: string, roomId: string, operation: 'fixed' | 'doubleHung'): Opening {
  return {
    id: id as Opening['id'],
    kind: 'window',
    name: '',
    roomId: roomId as Opening['roomId'],
    wallId: 'north' as Opening['wallId'],
    offset: feet(3),
    width: inches(32),
    height: inches(54),
    sill: feet(2),
    head: { kind: 'square' },
    far: null,
    jambDepth: zeroLength,
    jambOf: 'wood',
    casingNear: null,
    casingFar: null,
    slab: null,
    sash: {
      operation,
      units: 1,
      lightsAcross: 3,
      lightsDown: 2,
      stile: inches(2),
      topRail: inches(2),
      meetingRail: inches(1),
      bottomRail: inches(3),
      muntin: inches(0.875),
      thickness: inches(1.375),
    },
    stool: null,
    transom: null,
    sidelights: null,
  }
}

function noticesOf(specification: Specification, kind: Notice['kind']): readonly Notice[] {
  return specification.notices.filter((notice) => notice.kind === kind)
}

const flatCeiling = finishFor('ceiling', 'latexCeiling', 'white', 'flat')
const sageWalls = finishFor('walls', 'latexWall', 'sage', 'matte')
const whiteTrim = finishFor('trim', 'waterborneEnamel', 'white', 'semiGloss')
const soundLatex = [
  existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
  existingOn('walls', 'gypsumBoard', 'latexFlat'),
  existingOn('trim', 'wood', 'latexFlat', { sheen: 'eggshell' }),
]
function plainRoom(id: string, parts: JobParts = {}): JobParts {
  return {
    rooms: [rectangularRoom(id, 12, 10)],
    trimRuns: [baseboard(id, false)],
    existing: soundLatex,
    finishes: [flatCeiling, sageWalls, whiteTrim],
    ...parts,
  }
}
const old: Partial<JobHeader> = { yearBuilt: 1928 }

test('plain bedroom: a white ceiling renewed, new colour on the walls, trim between them', () => {
  const specification = specify(buildJob(plainRoom('bed')), takeoffOf(...plainSurfaces('bed')))
  // Nothing is sanded before the coats, so the first dusting down serves the first coats of ceiling and trim; the scuffing
  // of the trim comes between its own coats.
  expect(stepList(specification, 'bed')).toEqual([
    ...start,
    'ceiling/coat/1 latexCeiling',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  expect(specification.clashes).toEqual([])
  expect(specification.notices).toEqual([])
})

test('chalky ceiling with cracks and a stain under an unheated attic: seal first, hold for leak and dew point', () => {
  const job = buildJob({
    header: {
      ...old,
      air: {
        temperatureC: 20,
        relativeHumidityPercent: 60,
        outdoorTemperatureC: 0,
        surfaceTemperatureC: null,
      },
    },
    rooms: [rectangularRoom('attic-room', 12, 10, { above: 'unheated' })],
    existing: [existingOn('ceiling', 'plaster', 'calcimine')],
    finishes: [flatCeiling],
    conditions: [
      conditionOn('crack', 'stressCrack', ceilingOf('attic-room'), { length: feet(15) }),
      conditionOn('stain', 'waterStain', ceilingOf('attic-room'), {
        areaMm2: 3 * squareFootMm2,
        suspectedCause: 'flashing at the chimney',
      }),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('attic-room').slice(0, 1)))
  expect(stepList(specification, 'attic-room')).toEqual([
    ...start,
    'ceiling/openCrack/1',
    'ceiling/vacuum/1',
    'ceiling/sealChalk/1 calcimineSealer',
    'ceiling/fill/1 settingFiller',
    'ceiling/fill/2 dryingFiller',
    'ceiling/sandFill/1',
    'room/vacuum/1',
    'ceiling/dustOff/0',
    'ceiling/blockStain/1 stainBlockingPrimer',
    'ceiling/spotPrime/1 calcimineSealer',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/dustOff/2',
    'ceiling/coat/2 latexCeiling',
    ...end,
  ])
  expect(noticesOf(specification, 'cause')[0]).toMatchObject({ hold: true })
  expect(noticesOf(specification, 'cause')[0]?.sentence).toContain('flashing at the chimney')
  // 20 C inside, 0 C in the attic, U 3.5, Rsi 0.10: 20 - 3.5 x 0.10 x 20 = 13.0 C; dew point of 20 C / 60 % is 12.0 C; 1.0 < 3.
  expect(noticesOf(specification, 'dewPoint')[0]).toMatchObject({
    hold: true,
    surfaceKeys: ['ceiling:attic-room'],
  })
  // 15 ft of crack, 4 in wide: 5 sq ft, not over 6.
  expect(noticesOf(specification, 'leadSafe')[0]?.sentence).toContain('about 5.0 sq ft')
})

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
    'trim/sand/1',
    'trim/vacuum/1',
    'trim/prime/1 bondingPrimer',
    'fixedSash/sand/1',
    'fixedSash/vacuum/1',
    'room/vacuum/1',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'fixedSash/prime/1 bondingPrimer',
    'fixedSash/dustOff/1',
    'fixedSash/coat/1 waterborneEnamel',
    'fixedSash/sand/2',
    'fixedSash/dustOff/2',
    'fixedSash/coat/2 waterborneEnamel',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/dustOff/2',
    'ceiling/coat/2 latexCeiling',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
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

test('stair hall with popped fasteners and unsanded patches: drive and fill, sand flat, ladders over stairs', () => {
  const hall = rectangularRoom('stair-hall', 12, 10, {
    use: 'stairHall',
    floor: {
      kind: 'stair',
      along: 'y',
      line: [
        { at: feet(0), height: feet(0) },
        { at: feet(10), height: feet(9) },
      ],
    },
    wayOut: true,
  })
  const job = buildJob(
    plainRoom('stair-hall', {
      header: { yearBuilt: 1985 },
      rooms: [hall],
      finishes: [flatCeiling, sageWalls],
      conditions: [
        conditionOn('pops', 'poppedFastener', { roomId: 'stair-hall', surfaceClass: 'walls' }, { count: 14 }),
        conditionOn('patches', 'unsandedPatch', wallOf('stair-hall', 'east'), { count: 3 }),
      ],
    }),
  )
  const specification = specify(job, takeoffOf(...plainSurfaces('stair-hall').slice(0, 5)))
  expect(stepList(specification, 'stair-hall')).toEqual([
    ...start,
    'walls/driveFastener/1',
    'walls/sandPatch/1',
    'walls/vacuum/1',
    'walls/fill/1 settingFiller',
    'walls/fill/2 dryingFiller',
    'walls/sandFill/1',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'walls/dustOff/0',
    'walls/spotPrime/1 acrylicPrimer',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const coat = specification.steps.find((step) => step.key === 'stair-hall/walls/coat/1')
  expect(coat?.cautions.map((caution) => caution.id)).toEqual(['ladder', 'stair'])
  // Over stairs + 20 %, nothing else: 1.2.
  expect(coat?.difficulty).toBe(1.2)
  const primer = specification.steps.find((step) => step.key === 'stair-hall/walls/spotPrime/1')
  // 14 + 3 spots of 4 x 4 in, 1/9 sq ft each.
  expect(toSquareFeet(primer?.amounts.area ?? 0)).toBeCloseTo(17 / 9, 6)
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
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'walls/dustOff/0',
    'walls/spotPrime/1 acrylicPrimer',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
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
    'room/vacuum/1',
    'radiators/spotPrime/1 metalPrimer',
    'radiators/dustOff/1',
    'radiators/coat/1 radiatorEnamel',
    'radiators/sand/2',
    'radiators/dustOff/2',
    'radiators/coat/2 radiatorEnamel',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const coat = specification.steps.find((step) => step.key === 'alcove/radiators/coat/1')
  expect(coat?.cautions.map((caution) => caution.id)).toEqual(['solvent', 'oilyRags', 'heat'])
  expect(noticesOf(specification, 'advice')[0]?.sentence).toContain('Turn the heating of alcove off')
})

test('kitchen with grease and nicotine: washed, primed against the stain, two coats', () => {
  const job = buildJob({
    rooms: [rectangularRoom('kitchen', 12, 10, { use: 'kitchen' })],
    existing: [existingOn('walls', 'gypsumBoard', 'latexFlat')],
    finishes: [finishFor('walls', 'latexWall', 'white', 'flat')],
    conditions: [
      conditionOn('grease', 'grease', wallOf('kitchen', 'north')),
      conditionOn('smoke', 'nicotine', { roomId: 'kitchen', surfaceClass: 'walls' }),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('kitchen').slice(1, 5)))
  // One washing for both; white to white in the same sheen would be one coat, over primer it is two.
  expect(stepList(specification, 'kitchen')).toEqual([
    ...start,
    'walls/wash/1 cleaner',
    'walls/prime/1 stainBlockingPrimer',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const wash = specification.steps.find((step) => step.operation === 'wash')
  expect(wash?.because.map((because) => because.ruleId)).toEqual(['grease', 'nicotine'])
})

test('bath with mildew and peeling paint: washed and dry, scraped, feathered, spots primed; find the moisture', () => {
  const job = buildJob({
    header: { ...old, childrenOrPets: true },
    rooms: [rectangularRoom('bath', 12, 10, { use: 'bath' })],
    existing: [existingOn('ceiling', 'plaster', 'latexFlat')],
    finishes: [flatCeiling],
    conditions: [
      conditionOn('mildew', 'mildew', ceilingOf('bath'), { areaMm2: 4 * squareFootMm2 }),
      conditionOn('peeling', 'loosePaint', ceilingOf('bath'), { areaMm2: 10 * squareFootMm2 }),
    ],
    keptItems: [
      keptIn('fan', 'bath', 'lightFixture', 'takeOff'),
      keptIn('alarm', 'bath', 'smokeAlarm', 'coverDaily', { wired: true }),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('bath').slice(0, 1)))
  expect(stepList(specification, 'bath')).toEqual([
    'room/protectRoom/1',
    'room/coverAlarm/1',
    'room/takeOff/1',
    'room/dustDown/1',
    'ceiling/washMildew/1 mildewWash',
    'ceiling/scrape/1',
    'ceiling/sand/1',
    'ceiling/vacuum/1',
    'room/vacuum/1',
    'ceiling/spotPrime/1 acrylicPrimer',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/dustOff/2',
    'ceiling/coat/2 latexCeiling',
    'room/putBack/1',
    ...end,
    'room/restoreAlarm/1',
  ])
  const scrape = specification.steps.find((step) => step.operation === 'scrape')
  expect(scrape?.cautions.map((caution) => caution.id)).toEqual(['lead', 'dust', 'ladder', 'childrenAndPets'])
  // 10 sq ft scraped, over 6: the room is shut off.
  expect(scrape?.effects.closesRoom).toBe(true)
  expect(noticesOf(specification, 'cause').map((notice) => notice.hold)).toEqual([true])
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
    'room/vacuum/1',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'doors/prime/1 shellacPrimer',
    'doors/dustOff/1',
    'doors/coat/1 waterborneEnamel',
    'doors/sand/2',
    'doors/dustOff/2',
    'doors/coat/2 waterborneEnamel',
    ...end,
  ])
})

test('red dining room with an accent wall and gaps along the trim: tinted primer, three coats, caulk after the primer', () => {
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
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'trim/prime/1 bondingPrimer',
    'trim/caulk/1 acrylicCaulk',
    'trim/dustOff/1',
    'trim/coat/1 waterborneEnamel',
    'trim/sand/2',
    'trim/dustOff/2',
    'trim/coat/2 waterborneEnamel',
    'walls+accent/dustOff/1',
    'walls+accent/coat/1 latexWall',
    'walls+accent/dustOff/2',
    'walls+accent/coat/2 latexWall',
    'walls+accent/dustOff/3',
    'walls+accent/coat/3 latexWall',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  const tinted = specification.steps.find((step) => step.key === 'red-room/walls+accent/prime/1')
  expect(tinted?.colourId).toBe('red')
})

test('new board with taped joints and a bare ceiling of new plaster: compound sanded and sealed, plaster cured first', () => {
  const job = buildJob({
    rooms: [rectangularRoom('addition', 12, 10)],
    existing: [existingOn('ceiling', 'plaster', 'bare'), existingOn('walls', 'gypsumBoard', 'bare')],
    finishes: [flatCeiling, finishFor('walls', 'latexWall', 'sage', 'eggshell')],
    conditions: [
      conditionOn('fresh', 'newPlaster', ceilingOf('addition')),
      conditionOn(
        'joints',
        'bareJointCompound',
        { roomId: 'addition', surfaceClass: 'walls' },
        { areaMm2: 60 * squareFootMm2 },
      ),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('addition').slice(0, 5)))
  expect(stepList(specification, 'addition')).toEqual([
    ...start,
    'ceiling/prime/1 plasterSealer',
    'walls/sandFill/1',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/dustOff/2',
    'ceiling/coat/2 latexCeiling',
    'walls/dustOff/0',
    'walls/prime/1 acrylicPrimer',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    ...end,
  ])
  expect(noticesOf(specification, 'cause').map((notice) => notice.hold)).toEqual([true])
  expect(noticesOf(specification, 'advice').some((notice) => notice.sentence.includes('gloss level 3'))).toBe(
    true,
  )
})

test('old ceiling, loose plaster and a texture to be made smooth: fasten, fill, skim twice; asbestos and lead first', () => {
  const job = buildJob({
    header: old,
    rooms: [rectangularRoom('back', 12, 10)],
    existing: [existingOn('ceiling', 'plaster', 'latexFlat', { textured: true })],
    finishes: [flatCeiling],
    conditions: [
      conditionOn('keys', 'loosePlasterKeys', ceilingOf('back'), { areaMm2: 8 * squareFootMm2 }),
      conditionOn('texture', 'unwantedTexture', ceilingOf('back')),
    ],
  })
  const specification = specify(job, takeoffOf(...plainSurfaces('back').slice(0, 1)))
  expect(stepList(specification, 'back')).toEqual([
    ...start,
    'ceiling/reattachPlaster/1',
    'ceiling/vacuum/1',
    'ceiling/fill/1 settingFiller',
    'ceiling/fill/2 dryingFiller',
    'ceiling/skim/1 dryingFiller',
    'ceiling/skim/2 dryingFiller',
    'ceiling/sandFill/1',
    'room/vacuum/1',
    'ceiling/dustOff/0',
    'ceiling/prime/1 acrylicPrimer',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/dustOff/2',
    'ceiling/coat/2 latexCeiling',
    ...end,
  ])
  expect(noticesOf(specification, 'asbestosSuspicion')[0]).toMatchObject({ hold: true })
  const skim = specification.steps.find((step) => step.key === 'back/ceiling/skim/1')
  expect(skim?.cautions.map((caution) => caution.id)).toContain('asbestos')
  expect(noticesOf(specification, 'advice')[0]?.sentence).toContain('degree of degradation 4')
})

test('double-hung sash painted shut, putty gone, knots and bare wood: free, scrape nothing, prime, putty, coat', () => {
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
    'sash/freeSash/1',
    'sash/sand/1',
    'sash/vacuum/1',
    'room/vacuum/1',
    'sash/blockStain/1 shellacPrimer',
    'sash/spotPrime/1 oilPrimer',
    'sash/prime/1 bondingPrimer',
    'sash/puttySash/1 glazingPutty',
    'sash/dustOff/1',
    'sash/coat/1 waterborneEnamel',
    'sash/sand/2',
    'sash/dustOff/2',
    'sash/coat/2 waterborneEnamel',
    ...end,
  ])
})

test('room with a hanging, plates, a masked thermostat and a floor kept: off, loose, masked, and back in the end', () => {
  const job = buildJob({
    rooms: [rectangularRoom('den', 12, 10)],
    existing: [existingOn('walls', 'gypsumBoard', 'latexFlat')],
    finishes: [sageWalls],
    keptItems: [
      keptIn('tapestry', 'den', 'hanging', 'loosen'),
      keptIn('plates', 'den', 'plate', 'takeOff', { count: 6 }),
      keptIn('thermostat', 'den', 'other', 'maskInPlace'),
      keptIn('co', 'den', 'carbonMonoxideAlarm', 'takeOff'),
    ],
  })
  const walls = quantity('den', wallOf('den', 'north'), 'walls', { area: 96, masking: 12 })
  const specification = specify(job, takeoffOf(walls))
  expect(stepList(specification, 'den')).toEqual([
    'room/protectRoom/1',
    'room/coverAlarm/1',
    'room/takeOff/1',
    'room/maskOff/1',
    'room/loosenHanging/1',
    'room/dustDown/1',
    'walls/maskOff/1',
    'walls/coat/1 latexWall',
    'walls/dustOff/2',
    'walls/coat/2 latexWall',
    'walls/unmask/1',
    'room/unmask/1',
    'room/refitHanging/1',
    'room/putBack/1',
    ...end,
    'room/restoreAlarm/1',
  ])
  // The removable alarm is not among what is taken off for good: it goes back every evening.
  const off = specification.steps.find((step) => step.operation === 'takeOff')
  expect(off?.keptItemIds).toEqual(['plates'])
})
