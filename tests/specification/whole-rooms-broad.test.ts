import { expect, test } from 'vitest'
import { specify } from '../../core/specification/specify.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { feet } from '../../core/units/length.ts'
import {
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  keptIn,
  rectangularRoom,
} from '../fixtures/job-builder.ts'
import { ceilingOf, plainSurfaces, quantity, takeoffOf, wallOf } from './hand-takeoff.ts'
import {
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
} from './rooms.ts'
import { stepList } from './step-list.ts'

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
    'ceiling/tapeCrack/1',
    'ceiling/fill/2 dryingFiller',
    'ceiling/sandFill/1',
    'ceiling/dustOff/0',
    'ceiling/blockStain/1 stainBlockingPrimer',
    'ceiling/spotPrime/1 calcimineSealer',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
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
    'walls/fill/1 settingFiller',
    'walls/fill/2 dryingFiller',
    'walls/sandFill/1',
    'walls/sandPatch/1',
    'walls/dustOff/0',
    'walls/spotPrime/1 acrylicPrimer',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
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
    'walls/coat/2 latexWall',
    ...end,
  ])
  const wash = specification.steps.find((step) => step.operation === 'wash')
  expect(wash?.because.map((because) => because.ruleId)).toEqual(['grease', 'stove-grease', 'nicotine'])
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
    ...leadStart,
    'ceiling/washMildew/1 mildewWash',
    'ceiling/scrape/1',
    'ceiling/sand/1',
    'room/cleanDaily/1',
    'ceiling/vacuum/1',
    'ceiling/skim/craters dryingFiller',
    'ceiling/sandFill/1',
    'room/vacuum/1',
    ...leadEnd,
    'ceiling/dustOff/0',
    'ceiling/spotPrime/1 acrylicPrimer',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
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
    'walls/dustOff/0',
    'walls/prime/1 acrylicPrimer',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/coat/2 latexCeiling',
    'walls/dustOff/1',
    'walls/coat/1 latexWall',
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
    'room/protectRoom/1',
    // All there is to dust may hold asbestos: it waits with the ceiling.
    'room/dustDown/held',
    ...leadStart,
    'ceiling/reattachPlaster/1',
    'room/cleanDaily/1',
    'ceiling/vacuum/1',
    'ceiling/fill/1 settingFiller',
    'ceiling/fill/2 dryingFiller',
    'ceiling/skim/1 dryingFiller',
    'ceiling/skim/2 dryingFiller',
    'ceiling/sandFill/1',
    'room/vacuum/1',
    ...leadEnd,
    'ceiling/dustOff/0',
    'ceiling/prime/1 acrylicPrimer',
    'ceiling/dustOff/1',
    'ceiling/coat/1 latexCeiling',
    'ceiling/coat/2 latexCeiling',
    ...end,
  ])
  expect(noticesOf(specification, 'asbestosSuspicion')[0]).toMatchObject({ hold: true })
  const skim = specification.steps.find((step) => step.key === 'back/ceiling/skim/1')
  expect(skim?.cautions.map((caution) => caution.id)).toContain('asbestos')
  expect(noticesOf(specification, 'advice')[0]?.sentence).toContain('degree of degradation 4')
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
    'room/loosenHanging/1',
    'room/maskOff/1',
    'room/dustDown/1',
    'walls/maskOff/1',
    'walls/coat/1 latexWall',
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
