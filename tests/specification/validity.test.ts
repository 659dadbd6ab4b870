import fc from 'fast-check'
import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import type { Condition } from '../../core/project/survey-records.ts'
import { primerDoes } from '../../core/specification/primers.ts'
import { createSpecify, specify } from '../../core/specification/specify.ts'
import type { Operation, Specification, Step } from '../../core/specification/types.ts'
import { sumAreas } from '../../core/units/area.ts'
import { buildJob, conditionOn, existingOn, finishFor, rectangularRoom } from '../fixtures/job-builder.ts'
import { plainSurfaces, takeoffOf } from './hand-takeoff.ts'
import { everySpecification, randomCondition, randomHouse, runs } from './random-house.ts'

/** Steps of one group in the order given. */
function groups(specification: Specification): readonly (readonly Step[])[] {
  const keys = [...new Set(specification.steps.map((step) => step.groupKey))]
  return keys.map((key) => specification.steps.filter((step) => step.groupKey === key))
}

const position = (steps: readonly Step[], ...operations: readonly Operation[]) =>
  steps.flatMap((step, index) => (operations.includes(step.operation) ? [index] : []))

test('the steps stand in an order that every edge of the order agrees with, and no edge names a step that is not there', () => {
  everySpecification((specification) => {
    expect(specification.clashes.filter((clash) => clash.ids.includes('craft-order'))).toEqual([])
    const place = new Map(specification.steps.map((step, index) => [step.key, index]))
    for (const edge of specification.order) {
      expect(place.has(edge.before) && place.has(edge.after)).toBe(true)
      expect(place.get(edge.before), `${edge.before} -> ${edge.after}`).toBeLessThan(
        place.get(edge.after) ?? -1,
      )
      expect(edge.minimumWait).toBeGreaterThanOrEqual(0)
      if (edge.maximumWait !== null) expect(edge.maximumWait).toBeGreaterThanOrEqual(edge.minimumWait)
    }
  })
})

test('no step is there twice, and every step says why it is there', () => {
  everySpecification(({ steps }) => {
    expect(new Set(steps.map((step) => step.key)).size).toBe(steps.length)
    for (const step of steps) expect(step.because.length, step.key).toBeGreaterThan(0)
  })
})

test('no filler and no water-borne coat goes on bare chalk', () => {
  everySpecification((specification, job) => {
    for (const steps of groups(specification)) {
      const chalky =
        Object.values(job.existing).some(
          (each) =>
            each.coat === 'calcimine' &&
            each.scope.level === 'house' &&
            each.scope.surfaceClass === steps[0]?.surfaceClass,
        ) ||
        Object.values(job.conditions).some(
          (each) =>
            each.kind === 'chalking' &&
            each.on.level === 'room' &&
            each.on.surfaceClass === steps[0]?.surfaceClass,
        )
      if (!chalky || steps[0]?.surfaceClass === 'trim') continue
      const sealed = position(steps, 'sealChalk')[0]
      expect(sealed).toBeDefined()
      expect(primerDoes(steps[sealed ?? 0]?.productClass ?? 'latexWall', 'chalk')).toBe(true)
      for (const wet of position(steps, 'fill', 'skim', 'spotPrime', 'prime', 'caulk', 'coat')) {
        expect(wet).toBeGreaterThan(sealed ?? Number.POSITIVE_INFINITY)
      }
    }
  })
})

test('no coat goes on before its primer, and no primer or coat on unsanded filler', () => {
  everySpecification((specification) => {
    for (const steps of groups(specification)) {
      const coats = position(steps, 'coat')
      for (const primer of position(steps, 'sealChalk', 'sealBare', 'blockStain', 'spotPrime', 'prime')) {
        for (const coat of coats) expect(coat).toBeGreaterThan(primer)
      }
      const filled = position(steps, 'fill', 'skim')
      if (filled.length === 0) continue
      const sanded = position(steps, 'sandFill')[0] ?? -1
      expect(sanded).toBeGreaterThan(Math.max(...filled))
      for (const over of position(steps, 'spotPrime', 'prime', 'coat')) expect(over).toBeGreaterThan(sanded)
    }
  })
})

test('after sanding, the surface is dusted off or vacuumed before anything is coated, in its own group and in the room', () => {
  const dry: readonly Operation[] = ['scrape', 'openCrack', 'sandPatch', 'sandFill', 'sand', 'treatRust']
  everySpecification((specification) => {
    for (const steps of groups(specification)) {
      for (const coat of position(steps, 'coat')) {
        const before = steps.slice(0, coat)
        const lastDust = Math.max(-1, ...position(before, ...dry))
        const lastClean = Math.max(-1, ...position(before, 'dustOff', 'vacuum'))
        if (lastDust >= 0) expect(lastClean, steps[coat]?.key).toBeGreaterThan(lastDust)
      }
    }
    // Preparation in the whole room is over before the first finish coat on anything.
    const firstCoat = position(specification.steps, 'coat')[0] ?? 0
    for (const [index, step] of specification.steps.entries()) {
      const betweenCoats = step.operation === 'sand' && !step.key.endsWith('/1')
      if (dry.includes(step.operation) && !betweenCoats) expect(index, step.key).toBeLessThan(firstCoat)
    }
  })
})

test('what is covered or taken off in the morning is restored or put back', () => {
  everySpecification(({ steps }) => {
    const items = (operation: Operation) =>
      steps.filter((step) => step.operation === operation).flatMap((step) => step.keptItemIds)
    expect(items('coverAlarm')).toEqual(['alarm'])
    expect(items('restoreAlarm')).toEqual(items('coverAlarm'))
    expect(items('putBack')).toEqual(items('takeOff'))
    const daily = steps.filter((step) => step.daily).map((step) => step.operation)
    expect(daily.filter((operation) => operation !== 'cleanDaily')).toEqual(['coverAlarm', 'restoreAlarm'])
  })
})

/** What waits for a hold is a step of its own; together with the free part it is the step that was there before. */
function unheld(key: string): string {
  return key.replace('+held/', '/').replace('dustDown/held', 'dustDown/1')
}

/** What was written down takes the place of what is only expected: a new skim leaves no nail holes. */
const allowances = ['allowance-dings', 'allowance-joints']

/** Spots need no priming of their own where a full coat of primer is there for the same reasons. */
function isMet(step: Step, after: Specification): boolean {
  if (after.steps.some((each) => unheld(each.key) === unheld(step.key))) return true
  const needed = step.because.filter((because) => !allowances.includes(because.ruleId))
  if (needed.length === 0) return true
  if (step.operation !== 'spotPrime' && step.operation !== 'blockStain') return false
  const full = after.steps.find((each) => each.groupKey === step.groupKey && each.operation === 'prime')
  const reasons = new Set(full?.because.map((because) => because.ruleId))
  return needed.every((because) => reasons.has(because.ruleId))
}

test('one more condition never takes a needed step away, and never makes an amount smaller', () => {
  fc.assert(
    fc.property(randomHouse, randomCondition, ({ job, takeoff }, more) => {
      // What was assumed of an unknown coat ends when somebody finds out what it is: see the next test.
      const tells = more.kind === 'oldWallpaper' || more.kind === 'chalking'
      fc.pre(!(tells && Object.values(job.existing).some((each) => each.coat === 'unknown')))
      const before = specify(job, takeoff)
      const added: Condition = conditionOn(
        'more',
        more.kind,
        { roomId: 'r', surfaceClass: more.surfaceClass },
        more.changes,
      )
      const conditions = tableOf([...Object.values(job.conditions), added])
      const after = specify({ ...job, conditions }, takeoff)
      const together = (steps: readonly Step[], key: string) =>
        sumAreas(steps.filter((step) => unheld(step.key) === key).map((step) => step.amounts.area))
      const byKey = new Map(after.steps.map((step) => [unheld(step.key), step]))
      for (const step of before.steps) {
        const key = unheld(step.key)
        expect(isMet(step, after), `${step.key} goes when ${more.kind} comes`).toBe(true)
        const now = byKey.get(key)
        // Spots that a full coat of primer has taken over are no loss.
        if (now !== undefined && now.because.length >= step.because.length)
          expect(together(after.steps, key), step.key).toBeGreaterThanOrEqual(together(before.steps, key) - 1)
      }
    }),
    runs,
  )
})

test('what was assumed of an unknown coat ends when somebody finds out what it is', () => {
  const job = (conditions: readonly Condition[]) =>
    buildJob({
      rooms: [rectangularRoom('r', 12, 10)],
      existing: [existingOn('ceiling', 'plaster', 'unknown')],
      finishes: [finishFor('ceiling', 'latexCeiling', 'white', 'flat')],
      conditions,
    })
  const takeoff = takeoffOf(...plainSurfaces('r').slice(0, 1))
  const has = (specification: Specification, key: string) =>
    specification.steps.some((step) => step.key === key)
  const assumed = specify(job([]), takeoff)
  const found = specify(
    job([conditionOn('chalk', 'chalking', { roomId: 'r', surfaceClass: 'ceiling' })]),
    takeoff,
  )
  expect([has(assumed, 'r/ceiling/sand/1'), has(assumed, 'r/ceiling/sealChalk/1')]).toEqual([true, false])
  expect([has(found, 'r/ceiling/sand/1'), has(found, 'r/ceiling/sealChalk/1')]).toEqual([false, true])
})

test('the same job gives the same specification, and an order of records is no order of work', () => {
  everySpecification((specification, job, takeoff) => {
    expect(specify(job, takeoff)).toEqual(specification)
    const turned = { ...job, conditions: tableOf(Object.values(job.conditions).toReversed()) }
    const keys = (each: Specification) => each.steps.map((step) => step.key).toSorted()
    expect(keys(specify(turned, takeoff))).toEqual(keys(specification))
  })
})

test('remembering the last job gives the very same answer as working it out afresh', () => {
  const remembering = createSpecify()
  fc.assert(
    fc.property(randomHouse, randomCondition, ({ job, takeoff }, more) => {
      const added = conditionOn(
        'more',
        more.kind,
        { roomId: 'r', surfaceClass: more.surfaceClass },
        more.changes,
      )
      const edited = { ...job, conditions: tableOf([...Object.values(job.conditions), added]) }
      for (const each of [job, edited, { ...edited, rules: {} }, job]) {
        expect(remembering(each, takeoff)).toEqual(specify(each, takeoff))
      }
    }),
    { numRuns: 50, seed: 7 },
  )
})

test('an edit in one room leaves the steps of the others as they are, the very same objects', () => {
  const job = buildJob({
    rooms: [rectangularRoom('one', 12, 10), rectangularRoom('two', 12, 10)],
    existing: [existingOn('ceiling', 'plaster', 'latexFlat')],
    finishes: [finishFor('ceiling', 'latexCeiling', 'white', 'flat')],
  })
  const takeoff = takeoffOf(...plainSurfaces('one').slice(0, 1), ...plainSurfaces('two').slice(0, 1))
  const remembering = createSpecify()
  const before = remembering(job, takeoff)
  const hole = conditionOn('hole', 'hole', { roomId: 'one', surfaceClass: 'ceiling' }, { count: 1 })
  const after = remembering({ ...job, conditions: tableOf([hole]) }, takeoff)
  const of = ({ steps }: Specification, roomId: string) => steps.filter((step) => step.roomId === roomId)
  expect(of(after, 'one').length).toBeGreaterThan(of(before, 'one').length)
  for (const [index, step] of of(after, 'two').entries()) expect(step).toBe(of(before, 'two')[index])
})
