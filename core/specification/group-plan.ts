import { type Problem, problem } from '../project/problem.ts'
import type { ProductClass } from '../project/vocabulary.ts'
import type { Finding } from './findings.ts'
import type { HoldNeed } from './holds.ts'
import { broadClasses } from './operation-facts.ts'
import { choosePrimer, clashingNeeds, primerDoes } from './primers.ts'
import type {
  Contribution,
  GroupRule,
  GroupView,
  PlannedRequest,
  PrimerLayer,
  PrimerRequest,
  StepRequest,
} from './rule.ts'
import { isDustyPreparation } from './rules/dust.ts'
import { wholeStep } from './step-requests.ts'
import type { Stock } from './stock.ts'
import { operationWords, productClassWords, surfaceNoun } from './trade-words.ts'
import type { Notice, Operation } from './types.ts'

/** What the rules ask for on one group of surfaces. */
export interface GroupPlan {
  readonly view: GroupView
  readonly requests: readonly PlannedRequest[]
  readonly coats: readonly CoatRequest[]
  readonly holds: readonly HoldNeed[]
  readonly notices: readonly Notice[]
  readonly clashes: readonly Problem[]
}

interface CoatRequest {
  /** Coats up to this one, counted from the first that it gives a reason for. */
  readonly count: number
  readonly first: number
  readonly ruleId: string
}
interface AskedPrimer extends PrimerRequest {
  readonly ruleId: string
}

/** The reason of a coat that no other rule gives a reason for. */
const finishRuleId = 'finish-coat'

/** Preparation, primers and coats of one group, before what they make necessary is added. */
export function planGroup(view: GroupView, rules: readonly GroupRule[], stock: Stock): GroupPlan {
  const asked = ask(view, rules, ['found', 'system'])
  const primed = primerRequests(view, asked.primers, stock)
  const requests = [...asked.requests, ...primed.requests]
  const over = ask({ ...view, planned: requests }, rules, ['coats'])
  const counted = [...asked.coats, ...over.coats]
  const coats = [...counted, ...onTop(counted, over.more)]
  return {
    view,
    requests: [...requests, ...coatRequests(view, coats)],
    coats,
    holds: [...asked.holds, ...over.holds],
    notices: [...asked.notices, ...over.notices],
    clashes: [...insteadClashes(view, rules), ...primed.clashes],
  }
}

/** Adds what the steps so far make necessary: dusting off, sanding between coats, masking. */
export function followUp(plan: GroupPlan, rules: readonly GroupRule[], roomIsDusty: boolean): GroupPlan {
  let requests = plan.requests
  for (const rule of rules.filter((each) => each.phase === 'follow')) {
    const view = { ...plan.view, roomIsDusty, planned: requests }
    requests = [...requests, ...ask(view, [rule], ['follow']).requests]
  }
  return { ...plan, requests }
}

/** Some of its preparation raises dust that settles on wet paint. */
export function isDusty(plan: GroupPlan): boolean {
  return plan.requests.some(isDustyPreparation)
}

/** Two rules that treat the same thing in two ways, both on. */
function insteadClashes(view: GroupView, rules: readonly GroupRule[]): readonly Problem[] {
  return rules
    .filter((rule) => view.book.isOn(rule.id) && rule.when(view))
    .flatMap((rule) =>
      (rule.instead ?? [])
        .filter((other) => view.book.isOn(other))
        .map((other) =>
          problem(
            'ruleClash',
            `In ${view.room.name}, ${surfaceNoun(view.group.surfaceClass)}: the rules “${rule.title}” and “${view.book.title(other)}” treat the same thing in two ways and both are on. Switch one of them off.`,
            [view.room.id, rule.id, other],
          ),
        ),
    )
}

interface Asked {
  readonly requests: readonly PlannedRequest[]
  readonly primers: readonly AskedPrimer[]
  readonly coats: readonly CoatRequest[]
  readonly more: readonly CoatRequest[]
  readonly holds: readonly HoldNeed[]
  readonly notices: readonly Notice[]
}

function ask(view: GroupView, rules: readonly GroupRule[], phases: readonly GroupRule['phase'][]): Asked {
  const answers = rules
    .filter((rule) => phases.includes(rule.phase) && view.book.isOn(rule.id) && rule.when(view))
    .map((rule): readonly [string, Contribution] => [rule.id, rule.consequence(view)])
  return {
    requests: answers.flatMap(([ruleId, { steps = [] }]) => steps.map((step) => ({ ...step, ruleId }))),
    primers: answers.flatMap(([ruleId, { primers = [] }]) => primers.map((each) => ({ ...each, ruleId }))),
    coats: answers.flatMap(([ruleId, { coats }]) =>
      coats === undefined ? [] : [{ count: coats, first: 1, ruleId }],
    ),
    more: answers.flatMap(([ruleId, { moreCoats }]) =>
      moreCoats === undefined ? [] : [{ count: moreCoats, first: 1, ruleId }],
    ),
    holds: answers.flatMap(([, { holds = [] }]) => holds),
    notices: answers.flatMap(([, { notices = [] }]) => notices),
  }
}

function countOf(coats: readonly CoatRequest[]): number {
  return Math.max(1, ...coats.map((each) => each.count))
}

/** Coats asked for beyond those that the rules count. */
function onTop(counted: readonly CoatRequest[], more: readonly CoatRequest[]): readonly CoatRequest[] {
  const below = countOf(counted)
  return more.map(({ count, ruleId }) => ({ count: below + count, first: below + 1, ruleId }))
}

function coatRequests(view: GroupView, coats: readonly CoatRequest[]): readonly PlannedRequest[] {
  return Array.from({ length: countOf(coats) }, (_, index) => index + 1).flatMap((coat) => {
    const step = wholeStep('coat', {
      ordinal: `${coat}`,
      productClass: view.group.finish.productClass,
      coloured: true,
    })
    const reasons = coats.filter((each) => each.first <= coat && coat <= each.count)
    const ruleIds = reasons.length === 0 ? [finishRuleId] : reasons.map((each) => each.ruleId)
    return ruleIds.map((ruleId) => ({ ...step, ruleId }))
  })
}

const operationOfLayer: Readonly<Record<Exclude<PrimerLayer, 'prime'>, Operation>> = {
  sealChalk: 'sealChalk',
  sealBare: 'sealBare',
  block: 'blockStain',
}

interface Primed {
  readonly requests: readonly PlannedRequest[]
  readonly clashes: readonly Problem[]
}

function primerRequests(view: GroupView, asked: readonly AskedPrimer[], stock: Stock): Primed {
  const layers = (['sealChalk', 'sealBare', 'block'] as const).map((layer) => {
    const inLayer = asked.filter((each) => each.layer === layer)
    return primerStep(view, operationOfLayer[layer], inLayer, stock)
  })
  const ground = asked.filter((each) => each.layer === 'prime')
  const whole = ground.filter((each) => each.extent === 'whole')
  const full = primerStep(view, 'prime', whole, stock)
  const covers = full.requests[0]?.productClass ?? null
  const spots = ground.filter((each) => each.extent === 'spots')
  const [covered, bare] = [
    spots.filter((each) => covers !== null && primerDoes(covers, each.need)),
    spots.filter((each) => covers === null || !primerDoes(covers, each.need)),
  ]
  const parts = [
    ...layers,
    full,
    { requests: reasonsFor(full.requests[0], covered), clashes: [] },
    primerStep(
      view,
      'spotPrime',
      withFindings(bare, (finding) => !isLargePatch(view, finding)),
      stock,
    ),
    wholeSurfaces(
      primerStep(
        view,
        'prime',
        withFindings(bare, (finding) => isLargePatch(view, finding)),
        stock,
      ),
    ),
  ]
  return {
    requests: parts.flatMap((part) => part.requests),
    clashes: parts.flatMap((part) => part.clashes),
  }
}

/** A patch larger than a share of its own wall or ceiling shows through as a spot: all of that wall is primed. */
function isLargePatch({ group, book }: GroupView, { surfaceKeys, spotArea }: Finding): boolean {
  const [key, ...others] = surfaceKeys
  if (others.length > 0 || !broadClasses.includes(group.surfaceClass)) return false
  const wall = group.quantities.find((quantity) => quantity.key === key)
  return wall !== undefined && spotArea * 100 >= wall.netArea * book.number('spot-or-full', 'wallPercent')
}

function withFindings(
  asked: readonly AskedPrimer[],
  isMeant: (finding: Finding) => boolean,
): readonly AskedPrimer[] {
  return asked
    .map((each) => ({ ...each, findings: each.findings.filter(isMeant) }))
    .filter((each) => each.findings.length > 0)
}

function wholeSurfaces({ requests, clashes }: Primed): Primed {
  return {
    requests: requests.map((request) => ({ ...request, ordinal: 'walls', extent: 'surfaces' as const })),
    clashes,
  }
}

/** Spots that a full coat of primer covers are not primed twice; they are one more reason for the full coat. */
function reasonsFor(
  full: PlannedRequest | undefined,
  covered: readonly AskedPrimer[],
): readonly PlannedRequest[] {
  if (full === undefined) return []
  return covered.map((each) => ({ ...full, findings: each.findings, ruleId: each.ruleId }))
}

/** One step for all primers asked for in a layer: the plainest product that does everything, or a clash that names the rules. */
function primerStep(
  view: GroupView,
  operation: Operation,
  asked: readonly AskedPrimer[],
  stock: Stock,
): Primed {
  if (asked.length === 0) return { requests: [], clashes: [] }
  const needs = asked.map((each) => each.need)
  const whole = asked.some((each) => each.extent === 'whole')
  const chosen = choosePrimer(needs, stock.classes, whole ? undefined : quickOn(view, stock))
  const productClass = chosen ?? choosePrimer(needs.slice(0, 1), stock.classes)
  const step: StepRequest = wholeStep(operation, {
    extent: whole ? 'whole' : 'spots',
    productClass,
    coloured: asked.some((each) => each.tinted),
  })
  return {
    requests: asked.map((each) => ({ ...step, findings: each.findings, ruleId: each.ruleId })),
    clashes: chosen === null ? [primerClash(view, operation, asked, productClass)] : [],
  }
}

/** Which primers the rule `quick-spots` takes for spots of this group; undefined where it has no say. */
function quickOn(
  { book, group }: GroupView,
  stock: Stock,
): ((productClass: ProductClass) => boolean) | undefined {
  if (!book.isOn('quick-spots') || group.substrate === 'metal') return undefined
  const longest = book.number('quick-spots', 'hours') * 60
  return (productClass) => (stock.product(productClass, null)?.recoatMinimumMinutes ?? 0) <= longest
}

function primerClash(
  view: GroupView,
  operation: Operation,
  asked: readonly AskedPrimer[],
  productClass: ProductClass | null,
): Problem {
  const pair = clashingNeeds(asked.map((each) => each.need)) ?? [asked[0]?.need, asked[1]?.need]
  const [first, second] = pair.map((need) => asked.find((each) => each.need === need)?.ruleId ?? '')
  const named = [first, second]
    .flatMap((ruleId) => (ruleId ? [`“${view.book.title(ruleId)}”`] : []))
    .join(' and ')
  return problem(
    'ruleClash',
    `In ${view.room.name}, ${surfaceNoun(view.group.surfaceClass)}: the rules ${named} ask for one primer that does two things no class of primer does together. The steps show ${productClass === null ? 'none' : productClassWords[productClass]} for “${operationWords[operation]}”; decide which rule gives way, or note the surfaces apart.`,
    [view.room.id, first ?? '', second ?? ''],
  )
}
