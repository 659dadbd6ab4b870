import type { z } from 'zod'
import type { Pass, Passes } from '../passes/pass-types.ts'
import { amountEntry, places } from './amount-entry.ts'
import type { specificationSchema } from './output-forms/specification-form.ts'

type SpecificationFile = z.output<typeof specificationSchema>

/** Passes with their lines and their order, as `specification.json` lists them. */
export function passEntries(passes: Passes): Pick<SpecificationFile, 'roomSets' | 'passes' | 'passOrder'> {
  return {
    roomSets: passes.sets.map(({ id, name, roomIds }) => ({ roomSetId: id, name, roomIds: [...roomIds] })),
    passes: passes.passes.map(passEntry),
    passOrder: passes.order.map((order) => ({
      before: order.before,
      after: order.after,
      atLeastElapsedMinutes: order.atLeast,
      atMostElapsedMinutes: order.atMost,
      sameOrder: order.sameOrder,
      reason: order.reason,
    })),
  }
}

function passEntry(pass: Pass): SpecificationFile['passes'][number] {
  const { touchDry, dusty, fumesFor, closedFor } = pass.effects
  return {
    passKey: pass.key,
    roomSetId: pass.roomSetId,
    roomIds: [...pass.roomIds],
    kind: pass.kind,
    name: pass.name,
    stepKeys: [...pass.stepKeys],
    personMinutes: places(pass.personMinutes),
    people: { ...pass.people },
    skills: [...pass.skills],
    breaking: pass.breaking,
    smallestPartPersonMinutes: pass.smallestPart === null ? null : places(pass.smallestPart),
    wetForElapsedMinutes: touchDry,
    dusty,
    fumesForElapsedMinutes: fumesFor,
    closedForElapsedMinutes: closedFor,
    holdKeys: [...pass.holdKeys],
    notBefore: pass.notBefore,
    cautions: pass.cautions.map(({ text, rule }) => ({ text, rule })),
    lines: pass.lines.map((line) => ({
      words: line.words,
      operation: line.operation,
      surfaceClass: line.surfaceClass,
      coat: line.coat,
      productId: line.productId,
      colourId: line.colourId,
      sheen: line.sheen,
      stepKeys: [...line.stepKeys],
      ...amountEntry(line.amounts),
      woodwork: line.parts.map(({ kind, amounts }) => ({ kind, ...amountEntry(amounts) })),
      personMinutes: places(line.personMinutes),
    })),
  }
}
