/** How far a number of a safety rule may be changed: towards `stricter` only, from the published limit on. */
export interface SafetyLimit {
  readonly published: number
  readonly stricter: 'larger' | 'smaller'
  /** The number in words, for sentences. */
  readonly words: string
  readonly source: string
}

const renovationRule = '40 CFR 745.83'

/**
 * The rules that protect people from lead and asbestos, by id, with the numbers that a published limit holds. They follow the year the
 * house was built and what was found; none is left out without a written reason, and none is carried from one job to the next.
 */
export const safetyRules: Readonly<Record<string, Readonly<Record<string, SafetyLimit>>>> = {
  'lead-safe': {
    builtBefore: {
      published: 1978,
      stricter: 'larger',
      words: 'the year before which a house is taken to hold lead paint',
      source: renovationRule,
    },
    interiorSquareFeet: {
      published: 6,
      stricter: 'smaller',
      words: 'the square feet that count as minor repair in a room',
      source: renovationRule,
    },
    earlierSquareFeet: {
      published: 0,
      stricter: 'larger',
      words: 'the square feet disturbed in each room by jobs before this one',
      source: `${renovationRule} (30 days: memory)`,
    },
  },
  'lead-signs': {},
  'lead-sheeting': {
    reachFeet: {
      published: 6,
      stricter: 'larger',
      words: 'the feet of floor sheeted beyond the work',
      source: '40 CFR 745.85(a)(2)(i)(D)',
    },
  },
  'lead-tools': {},
  'lead-daily-cleaning': {},
  'lead-final-cleaning': {
    floorPerCloth: {
      published: 40,
      stricter: 'smaller',
      words: 'the square feet of floor wiped with one cloth',
      source: '40 CFR 745.85(b) (memory)',
    },
  },
  'lead-papers': {},
  'asbestos-suspicion': {
    builtBefore: {
      published: 1980,
      stricter: 'larger',
      words: 'the year before which texture and compound may hold asbestos',
      source: 'US EPA public text; 16 CFR 1304 (1977, memory) and old stock used up after it',
    },
  },
}

/** It is about lead or asbestos, so its numbers cannot be weakened and switching it off needs a reason. */
export function isSafetyRule(ruleId: string): boolean {
  return Object.hasOwn(safetyRules, ruleId)
}

/** The published limit of a number; undefined where none is published. */
export function safetyLimit(ruleId: string, name: string): SafetyLimit | undefined {
  const limits = isSafetyRule(ruleId) ? safetyRules[ruleId] : undefined
  return limits !== undefined && Object.hasOwn(limits, name) ? limits[name] : undefined
}

/** The value itself where it is no weaker than the limit, else the limit. */
export function heldToLimit({ published, stricter }: SafetyLimit, value: number): number {
  return stricter === 'larger' ? Math.max(published, value) : Math.min(published, value)
}

/** `may only be made larger than 1978 (40 CFR 745.83)`. */
export function limitWords({ published, stricter, source }: SafetyLimit): string {
  return `may only be made ${stricter} than ${published}, the published limit (${source})`
}

/** The rule settings that a new job takes over: all but those of safety rules, which start afresh in every house. */
export function rulesForNextJob<Setting>(
  rules: Readonly<Record<string, Setting>>,
): Readonly<Record<string, Setting>> {
  return Object.fromEntries(Object.entries(rules).filter(([ruleId]) => !isSafetyRule(ruleId)))
}
