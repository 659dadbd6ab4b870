import { heldToLimit, limitWords } from '../../../core/project/safety-limits.ts'
import type { RuleState } from '../../../core/specification/rule-settings.ts'
import type { Specification } from '../../../core/specification/types.ts'
import { decimalNumber, type ReadEntry } from '../parts/entries.ts'

/** How many steps each rule has asked for, by its id. */
export function countUses(specification: Specification): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const step of specification.steps) {
    for (const because of step.because) counts.set(because.ruleId, (counts.get(because.ruleId) ?? 0) + 1)
  }
  return counts
}

/** Refuses what is weaker than the published limit. */
export function strictNumber({ limit }: RuleState['numbers'][number]): ReadEntry<number> {
  const read = decimalNumber(-1e6, 1e6)
  return (text) => {
    const entry = read(text)
    if (!entry.ok || limit === null || heldToLimit(limit, entry.value) === entry.value) return entry
    return { ok: false, sentence: `It ${limitWords(limit)}.` }
  }
}

/** What stands below the number of a rule: its limit, else what the book says and where from. */
export function numberHint(number: RuleState['numbers'][number]): string {
  if (number.limit !== null) return limitWords(number.limit)
  return number.changed ? `the book says ${number.value} (${number.source})` : number.source
}
