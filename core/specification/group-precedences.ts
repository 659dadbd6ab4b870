import { present } from '../lists/lists.ts'
import { isWetWork } from './operation-facts.ts'
import type { Precedence } from './order.ts'
import type { PlannedStep } from './planned-step.ts'
import type { Rule } from './rule.ts'
import type { RuleBook } from './rule-book.ts'
import type { OrderStatement, Selector } from './rule-facts.ts'

interface SaidBy {
  readonly rule: Rule
  readonly statement: OrderStatement
}

/** What the rules say of two steps of one group, by their roles without batch numbers. */
type StatementIndex = (before: string, after: string) => readonly SaidBy[]

/** Rules never change while the program runs, so each pair of roles is looked up once. */
export function statementIndex(rules: readonly Rule[]): StatementIndex {
  const said = rules.flatMap((rule) =>
    rule.level === 'room' ? [] : rule.order.map((statement): SaidBy => ({ rule, statement })),
  )
  const byBefore = new Map<string, Map<string, readonly SaidBy[]>>()
  return (before, after) => {
    const byAfter = byBefore.get(before) ?? new Map<string, readonly SaidBy[]>()
    byBefore.set(before, byAfter)
    const known = byAfter.get(after)
    if (known !== undefined) return known
    const found = said.filter(
      ({ statement }) => isNamed(before, statement.before) && isNamed(after, statement.after),
    )
    byAfter.set(after, found)
    return found
  }
}

/** `sand` names every sanding, `sand/1` one of them. */
function isNamed(role: string, selectors: readonly Selector[]): boolean {
  return selectors.some((selector) => role === selector || role.startsWith(`${selector}/`))
}

/** `coat/1` of the batch `coat/1.2`. */
function roleWithoutBatch(role: string): string {
  const dot = role.indexOf('.')
  return dot < 0 ? role : role.slice(0, dot)
}

/** One precedence for every two steps of a group that any rule in force puts in order. */
export function groupPrecedences(
  steps: readonly PlannedStep[],
  index: StatementIndex,
  book: RuleBook,
): readonly Precedence[] {
  const roles = steps.map((each) => roleWithoutBatch(each.role))
  return steps.flatMap((before, from) =>
    steps.flatMap((after, to) => {
      if (from === to || isBatchPair(before, after)) return []
      const said = index(roles[from] ?? '', roles[to] ?? '').filter(
        ({ rule, statement }) =>
          book.isOn(rule.id) && (statement.ownSteps !== true || isAbout(rule, before, after)),
      )
      return said.length === 0 ? [] : [precedenceBetween(before, after, said)]
    }),
  )
}

/** The reason is the first special one of a rule that asked for one of the two steps itself, else the first at all. */
function precedenceBetween(before: PlannedStep, after: PlannedStep, said: readonly SaidBy[]): Precedence {
  const special = said.find(({ rule, statement }) => statement.special && isAbout(rule, before, after))
  const { rule, statement } = special ?? present(said[0])
  return {
    before: before.step.key,
    after: after.step.key,
    ...waits(before, after),
    ruleId: rule.id,
    reason: statement.reason,
    source: rule.source,
    special: special !== undefined,
  }
}

function isAbout(rule: Rule, before: PlannedStep, after: PlannedStep): boolean {
  return (
    rule.level !== 'group' ||
    [...before.step.because, ...after.step.because].some((because) => because.ruleId === rule.id)
  )
}

/** Batches of a deglosser and of the coat inside its window are put in order by the window alone. */
function isBatchPair(before: PlannedStep, after: PlannedStep): boolean {
  return before.step.operation === 'degloss' && after.role.includes('.')
}

/** Wet work dries before the surface is touched again; tape comes off when the paint is touch dry. */
export function waits(
  before: PlannedStep,
  after: PlannedStep,
): { readonly minimumWait: number; readonly maximumWait: number | null } {
  const wet = isWetWork(before.step.operation) || before.recoatMinimum > 0
  if (!wet) return { minimumWait: 0, maximumWait: null }
  if (after.step.operation === 'unmask') return { minimumWait: before.step.touchDry, maximumWait: null }
  const recoats = after.step.operation === 'coat' || after.step.operation === 'prime'
  const limit = recoats ? before.recoatMaximum : null
  return {
    minimumWait: before.recoatMinimum,
    maximumWait: limit === null ? null : Math.max(limit, before.recoatMinimum),
  }
}
