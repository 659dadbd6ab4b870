import { expect, test } from 'vitest'
import { isServing } from '../../core/specification/operation-facts.ts'
import type { Operation, Specification, Step } from '../../core/specification/types.ts'
import { everySpecification } from './random-house.ts'
import { comesBefore } from './step-list.ts'

const primings: readonly Operation[] = ['sealChalk', 'sealBare', 'blockStain', 'spotPrime', 'prime']
const roleOf = (step: Step) => step.key.split('/').slice(-2).join('/')

/** Everything that comes right before a step, dusting and the like left out. */
function workBefore({ steps, order }: Specification, key: string): readonly string[] {
  return order
    .filter((edge) => edge.after === key)
    .map((edge) => edge.before)
    .filter((before) => steps.some((step) => step.key === before && !isServing(roleOf(step))))
}

test('no finish coat in a room before its last primer', () => {
  everySpecification((specification, job) => {
    // Inside the window of a deglosser its own coat comes at once.
    if (job.rules['oil-deglosser']?.on) return
    const coats = specification.steps.filter((step) => step.coat === 1)
    for (const primer of specification.steps.filter((step) => primings.includes(step.operation))) {
      for (const coat of coats) {
        expect(comesBefore(specification, primer.key, coat.key), `${primer.key}, ${coat.key}`).toBe(true)
      }
    }
  })
})

test('every dust-off stands right before the step it serves and may start no sooner', () => {
  everySpecification((specification) => {
    const { steps } = specification
    for (const [index, step] of steps.entries()) {
      if (step.operation !== 'dustOff') continue
      const served = steps.slice(index + 1).find((each) => !isServing(roleOf(each)))
      expect(served?.groupKey, step.key).toBe(step.groupKey)
      expect(comesBefore(specification, step.key, served?.key ?? ''), step.key).toBe(true)
      for (const before of workBefore(specification, served?.key ?? '')) {
        expect(comesBefore(specification, before, step.key), `${before}, ${step.key}`).toBe(true)
      }
    }
  })
})

test('no coat is dusted off after the one before it without being sanded', () => {
  everySpecification(({ steps }) => {
    const keys = new Set(steps.map((step) => step.key))
    for (const { key } of steps) {
      const between = /^(.*)\/dustOff\/([2-9])$/.exec(key)
      if (between !== null) expect(keys).toContain(`${between[1]}/sand/${between[2]}`)
    }
  })
})

test('nothing in a room is sanded before all that is washed in it was washed', () => {
  everySpecification((specification) => {
    const washes = specification.steps.filter((step) => step.operation === 'wash')
    for (const sanding of specification.steps.filter((step) => roleOf(step) === 'sand/1')) {
      for (const wash of washes) expect(comesBefore(specification, wash.key, sanding.key)).toBe(true)
    }
  })
})
