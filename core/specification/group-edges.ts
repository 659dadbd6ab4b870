import type { RuleBook } from './book.ts'
import { isWetWork } from './operation-facts.ts'
import type { Edge } from './order.ts'
import type { PlannedStep } from './planned-step.ts'
import type { OrderStatement, Rule, Selector } from './rule.ts'

/** The edges that the rules' statements give among the steps of one group. */
export function groupEdges(
  steps: readonly PlannedStep[],
  rules: readonly Rule[],
  book: RuleBook,
): readonly Edge[] {
  return rules
    .filter((rule) => rule.level !== 'room' && book.isOn(rule.id))
    .flatMap((rule) =>
      rule.level === 'room' ? [] : rule.order.flatMap((statement) => edgesOf(steps, rule, statement)),
    )
}

function edgesOf(steps: readonly PlannedStep[], rule: Rule, statement: OrderStatement): readonly Edge[] {
  const befores = steps.filter((each) => isNamed(each.role, statement.before))
  const afters = steps.filter((each) => isNamed(each.role, statement.after))
  return befores.flatMap((before) =>
    afters
      .filter((after) => before !== after && !isBatchPair(before, after))
      .map((after) => ({
        before: before.step.key,
        after: after.step.key,
        ...waits(before, after),
        ruleId: rule.id,
        reason: statement.reason,
        source: rule.source,
        special: statement.special && isAbout(rule, before, after),
      })),
  )
}

/** A rule gives the reason before general ones only where it asked for one of the two steps itself. */
function isAbout(rule: Rule, before: PlannedStep, after: PlannedStep): boolean {
  return (
    rule.level !== 'group' ||
    [...before.step.because, ...after.step.because].some((because) => because.ruleId === rule.id)
  )
}

/** `sand` names every sanding, `sand/1` one of them; a batch `coat/1.2` is named by `coat/1`. */
export function isNamed(role: string, selectors: readonly Selector[]): boolean {
  return selectors.some(
    (selector) => role === selector || role.startsWith(`${selector}/`) || role.startsWith(`${selector}.`),
  )
}

/** Batches of a deglosser and of the coat inside its window are put in order by the window alone. */
function isBatchPair(before: PlannedStep, after: PlannedStep): boolean {
  return before.step.operation === 'degloss' && after.role.split('/')[1]?.includes('.') === true
}

/** Wet work dries before the surface is touched again; tape comes off when the paint is touch dry. */
export function waits(
  before: PlannedStep,
  after: PlannedStep,
): { readonly minimumWait: number; readonly maximumWait: number | null } {
  const wet = isWetWork(before.step.operation) || before.dryMinutes > 0
  if (!wet) return { minimumWait: 0, maximumWait: null }
  if (after.step.operation === 'unmask') return { minimumWait: before.step.touchDry, maximumWait: null }
  const recoats = after.step.operation === 'coat' || after.step.operation === 'prime'
  return { minimumWait: before.dryMinutes, maximumWait: recoats ? before.recoatMaximum : null }
}
