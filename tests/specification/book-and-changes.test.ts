import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Job } from '../../core/project/job.ts'
import { productSchema, ruleSettingSchema } from '../../core/project/shop-records.ts'
import type { TrimRun } from '../../core/project/sketch-records.ts'
import { productClasses } from '../../core/project/vocabulary.ts'
import { compareSpecifications } from '../../core/specification/compare.ts'
import { compatibilityTable, finishFamilies } from '../../core/specification/compatibility.ts'
import { surfaceDegree } from '../../core/specification/degradation.ts'
import { explainOrder, explainStep } from '../../core/specification/explain.ts'
import type { Finding } from '../../core/specification/findings.ts'
import { changedRule, ruleBook } from '../../core/specification/rule-settings.ts'
import { defaultRuleSettings } from '../../core/specification/shop-defaults.ts'
import { defaultProducts } from '../../core/specification/shop-products.ts'
import { specify } from '../../core/specification/specify.ts'
import { feet, inches, zeroLength } from '../../core/units/length.ts'
import {
  allowancesOn,
  buildJob,
  conditionOn,
  existingOn,
  finishFor,
  rectangularRoom,
} from '../fixtures/job-builder.ts'
import { ceilingOf, plainSurfaces, takeoffOf, wallOf } from './hand-takeoff.ts'
import { notices, oneSurfaceJob, specifyOne, squareFoot } from './one-surface.ts'

const takeoff = takeoffOf(...plainSurfaces('r').slice(0, 5))
function bedroom(changes: Partial<Job> = {}): Job {
  return {
    ...buildJob({
      rooms: [rectangularRoom('r', 12, 10)],
      existing: [existingOn('ceiling', 'plaster', 'calcimine'), existingOn('walls', 'plaster', 'latexFlat')],
      finishes: [
        finishFor('ceiling', 'latexCeiling', 'white', 'flat'),
        finishFor('walls', 'latexWall', 'sage', 'flat'),
      ],
    }),
    ...changes,
  }
}
const baseboard = {
  id: 'r-base',
  roomId: 'r',
  kind: 'baseboard',
  walls: null,
  height: inches(6),
  girth: inches(6),
  level: zeroLength,
  profiled: false,
} as unknown as TrimRun
const crack = conditionOn('crack', 'stressCrack', ceilingOf('r'), { length: feet(9) })

test('what if: a crack found on a chalky ceiling shows the steps that appear before it is accepted', () => {
  const before = specify(bedroom(), takeoff)
  const after = specify(bedroom({ conditions: tableOf([crack]) }), takeoff)
  const change = compareSpecifications(before, after)
  expect(change.appearing.map((step) => step.key.slice('r/'.length))).toEqual([
    'ceiling/openCrack/1',
    'ceiling/vacuum/1',
    'ceiling/fill/1',
    'ceiling/tapeCrack/1',
    'ceiling/fill/2',
    'ceiling/sandFill/1',
    'ceiling/dustOff/0',
    'ceiling/spotPrime/1',
    'room/vacuum/1',
    'ceiling/dustOff/1',
    'walls/dustOff/1',
  ])
  expect(change.going).toEqual([])
  expect(change.productsAppearing).toEqual(['settingFiller', 'dryingFiller'])
  // And the way back takes away just what came.
  const back = compareSpecifications(after, before)
  expect(back.going.map((step) => step.key)).toEqual(change.appearing.map((step) => step.key))
})

test('what if: another order in the room moves the steps and nothing else', () => {
  const inOrder = (roomOrder: 'ceilingFirst' | 'trimLast') => {
    const job = buildJob({
      rooms: [rectangularRoom('r', 12, 10)],
      houseRules: { roomOrder },
      trimRuns: [baseboard],
      existing: [existingOn('walls', 'plaster', 'latexFlat'), existingOn('trim', 'wood', 'latexFlat')],
      finishes: [
        finishFor('walls', 'latexWall', 'sage', 'flat'),
        finishFor('trim', 'waterborneEnamel', 'white', 'satin'),
      ],
    })
    return specify(job, takeoffOf(...plainSurfaces('r').slice(1)))
  }
  const change = compareSpecifications(inOrder('ceilingFirst'), inOrder('trimLast'))
  expect([change.appearing, change.going, change.changed]).toEqual([[], [], []])
  // Walls: two coats and the dusting off between them, now before the trim.
  expect(change.moved.map((step) => step.key)).toEqual(['r/walls/coat/1', 'r/walls/coat/2'])
  expect(compareSpecifications(inOrder('trimLast'), inOrder('trimLast')).moved).toEqual([])
})

test('a colour changed keeps the keys of the steps, so that marks made on site outlive it', () => {
  const before = specify(bedroom(), takeoff)
  const red = finishFor('walls', 'latexWall', 'off-white', 'flat')
  const after = specify(bedroom({ finishes: { ...bedroom().finishes, [red.id]: red } }), takeoff)
  expect(after.steps.map((step) => step.key)).toEqual(before.steps.map((step) => step.key))
  expect(compareSpecifications(before, after).changed.map(({ after: step }) => step.key)).toEqual([
    'r/walls/coat/1',
    'r/walls/coat/2',
  ])
})

test('a wall set apart gets a group of its own, and the others keep theirs', () => {
  const job = bedroom()
  const accent = finishFor('walls', 'latexWall', 'off-white', 'flat', {
    id: 'accent' as never,
    scope: { level: 'surface', surface: wallOf('r', 'north') },
  })
  const specification = specify({ ...job, finishes: { ...job.finishes, accent } }, takeoff)
  const walls = specification.steps.filter(
    (step) => step.operation === 'coat' && step.coat === 1 && step.surfaceClass === 'walls',
  )
  expect(walls.map((step) => [step.groupKey, step.surfaceKeys.length])).toEqual([
    ['walls+accent', 1],
    ['walls', 3],
  ])
})

test('a step tells the conditions, rules and neighbours it stands on', () => {
  const job = bedroom({ conditions: tableOf([crack]) })
  const specification = specify(job, takeoff)
  const told = explainStep(job, specification, 'r/ceiling/fill/1')
  expect(told?.because).toMatchObject([
    { ruleId: 'stress-crack', source: 'common practice', conditions: [{ id: 'crack' }] },
  ])
  expect(told?.after.map((edge) => edge.before)).toEqual(['r/ceiling/sealChalk/1'])
  expect(told?.before.map((edge) => edge.after)).toEqual(['r/ceiling/tapeCrack/1'])
  expect(explainStep(job, specification, 'r/none')).toBeNull()
})

test('why one step is before another is told as a chain of neighbours, and not at all where nothing says so', () => {
  const specification = specify(bedroom({ conditions: tableOf([crack]) }), takeoff)
  const chain = explainOrder(specification, 'r/ceiling/sealChalk/1', 'r/ceiling/sandFill/1')
  expect(chain.map((edge) => edge.after)).toEqual([
    'r/ceiling/fill/1',
    'r/ceiling/tapeCrack/1',
    'r/ceiling/fill/2',
    'r/ceiling/sandFill/1',
  ])
  expect(chain[0]?.reason).toContain('re-wet bare chalk')
  expect(explainOrder(specification, 'r/ceiling/sandFill/1', 'r/ceiling/sealChalk/1')).toEqual([])
})

test('a changed rule is visible as changed, works with its own numbers, and can be put back', () => {
  const job = oneSurfaceJob({ surfaceClass: 'walls', job: { rules: allowancesOn } })
  expect(ruleBook(job).filter((rule) => rule.changed)).toEqual([])
  const setting = changedRule(job, 'stress-crack', { numbers: { layers: 3 } })
  if (setting === null) throw new Error('three layers differ from the book')
  const changed = { ...job, rules: { [setting.id]: setting } }
  expect(
    ruleBook(changed)
      .filter((rule) => rule.changed)
      .map((rule) => rule.facts.id),
  ).toEqual(['stress-crack'])
  const specification = specifyOne({
    surfaceClass: 'walls',
    conditions: [['stressCrack', { length: feet(4) }]],
    rules: [['stress-crack', true, { layers: 3 }]],
  })
  expect(specification.steps.filter((step) => step.operation === 'fill')).toHaveLength(3)
  // Back to the book's number: the record goes.
  expect(changedRule(changed, 'stress-crack', { numbers: { layers: 2 } })).toBeNull()
  expect(changedRule(job, 'stress-crack', { on: false })).toEqual({
    id: 'stress-crack',
    on: false,
    numbers: {},
  })
})

test('a number no rule can work with is taken to the nearest that it can', () => {
  const specification = specifyOne({
    surfaceClass: 'walls',
    conditions: [['stressCrack', { length: feet(4) }]],
    rules: [
      ['stress-crack', true, { layers: 50 }],
      ['colour-change', true, { renewal: -2 }],
    ],
  })
  expect(specification.steps.filter((step) => step.operation === 'fill')).toHaveLength(3)
  expect(specification.clashes).toEqual([])
})

test('the default lists are valid records, one product of every class, each with its source', () => {
  for (const product of defaultProducts) {
    expect(() => productSchema.parse({ ...product, containers: [...product.containers] })).not.toThrow()
    expect(product.source).toContain('shop assumption')
  }
  expect(new Set(defaultProducts.map((product) => product.productClass))).toEqual(new Set(productClasses))
  for (const setting of defaultRuleSettings) expect(() => ruleSettingSchema.parse(setting)).not.toThrow()
})

test('a class the shop does not stock is said, and the step keeps its place', () => {
  const specification = specifyOne({ surfaceClass: 'walls', job: { products: [] } })
  expect(notices(specification, 'missingProduct')[0]?.sentence).toContain('latex wall paint')
  expect(specification.steps.some((step) => step.operation === 'coat' && step.productId === null)).toBe(true)
})

test('nothing is planned where no finish is chosen, and that is said', () => {
  const specification = specifyOne({ surfaceClass: 'walls', job: { finishes: [] } })
  expect(specification.steps).toEqual([])
  expect(notices(specification, 'advice')[0]?.sentence).toContain('No finish is chosen')
})

test('what was found on a surface that stays as it is, is said and not lost', () => {
  const left = finishFor('walls', 'latexWall', null, 'flat', { paint: false })
  const specification = specifyOne({
    surfaceClass: 'walls',
    conditions: [['hole', { count: 1 }]],
    job: { finishes: [left] },
  })
  expect(specification.steps).toEqual([])
  expect(notices(specification, 'advice')[0]?.sentence).toContain('is on nothing that gets painted')
})

test('one primer asked to do two things no class of primer does is a clash that names both rules', () => {
  const specification = specifyOne({ surfaceClass: 'walls', coat: 'oilPaint', conditions: [['newPlaster']] })
  expect(specification.clashes[0]?.ids).toEqual(['r', 'new-plaster', 'oil-bonding-primer'])
})

test('the compatibility table answers for every coat and finish, and never lets clear varnish over paint', () => {
  for (const row of Object.values(compatibilityTable)) {
    for (const family of finishFamilies) expect(row[family].source).not.toBe('')
  }
  const specification = specifyOne({ surfaceClass: 'trim', coat: 'oilPaint', productClass: 'clearVarnish' })
  expect(notices(specification, 'compatibility')).toMatchObject([{ hold: true }])
  const poor = specifyOne({ surfaceClass: 'trim', coat: 'latexFlat', productClass: 'alkydEnamel' })
  expect(notices(poor, 'compatibility')).toMatchObject([{ hold: false }])
})

test('degree of degradation: sound, slight, moderate, severe and widespread, unsound', () => {
  const found = (
    kind: 'grease' | 'hole' | 'loosePaint' | 'loosePlasterKeys',
    spotArea: number,
    severity = 'moderate',
  ) => ({ condition: { kind, severity }, spotArea }) as unknown as Finding
  const degree = (...findings: readonly Finding[]) => surfaceDegree(findings, 100, 30)
  expect([
    degree(),
    degree(found('grease', 50)),
    degree(found('hole', 29)),
    degree(found('hole', 30)),
    degree(found('loosePaint', 5, 'severe')),
    degree(found('loosePlasterKeys', 1)),
  ]).toEqual([0, 1, 2, 3, 3, 4])
})

test('a condition noted for a room is shared out by area and no piece is lost', () => {
  const job = buildJob({
    rooms: [rectangularRoom('r', 12, 10)],
    existing: [
      existingOn('ceiling', 'gypsumBoard', 'latexFlat'),
      existingOn('walls', 'gypsumBoard', 'latexFlat'),
    ],
    finishes: [
      finishFor('ceiling', 'latexCeiling', 'white', 'flat'),
      finishFor('walls', 'latexWall', 'sage', 'flat'),
    ],
    conditions: [conditionOn('pops', 'poppedFastener', { roomId: 'r', surfaceClass: null }, { count: 10 })],
  })
  const driven = specify(job, takeoff).steps.filter((step) => step.operation === 'driveFastener')
  // Ceiling 120 of 472 sq ft: 10 x 0.254 = 2.5, rounded 3; the walls take the other 7.
  expect(driven.map((step) => [step.groupKey, step.amounts.count])).toEqual([
    ['ceiling', 3],
    ['walls', 7],
  ])
})

test('what was noted on a whole wall stays with its upper part when a rail divides it', () => {
  const job = oneSurfaceJob({ surfaceClass: 'walls', conditions: [['hole', { areaMm2: squareFoot }]] })
  const [whole] = takeoffOf(...plainSurfaces('r').slice(1, 2)).surfaces
  if (whole === undefined) throw new Error('there is a wall')
  const zone = (name: 'upper' | 'lower') => ({
    ...whole,
    key: `wall:r:north:${name}`,
    surface: { ...whole.surface, zone: name } as typeof whole.surface,
  })
  const specification = specify(job, takeoffOf(zone('lower'), zone('upper')))
  expect(specification.steps.find((step) => step.operation === 'fill')?.surfaceKeys).toEqual([
    'wall:r:north:upper',
  ])
})

test('the rooms that others lead through come last', () => {
  const job = buildJob({
    rooms: [rectangularRoom('hall', 12, 10, { wayOut: true }), rectangularRoom('bed', 12, 10)],
    existing: [existingOn('ceiling', 'plaster', 'latexFlat')],
    finishes: [finishFor('ceiling', 'latexCeiling', 'white', 'flat')],
  })
  const both = takeoffOf(...plainSurfaces('hall').slice(0, 1), ...plainSurfaces('bed').slice(0, 1))
  expect([...new Set(specify(job, both).steps.map((step) => step.roomId))]).toEqual(['bed', 'hall'])
})
