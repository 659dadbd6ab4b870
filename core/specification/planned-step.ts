import type { Job } from '../project/job.ts'
import type { Product } from '../project/shop-records.ts'
import { type Area, toSquareFeet } from '../units/area.ts'
import { elapsedMinutes } from '../units/duration.ts'
import { difficultyOf } from './difficulty.ts'
import type { Drying } from './drying.ts'
import type { Finding } from './findings.ts'
import type { Group } from './groups.ts'
import { makesDust, putsOnFilm, skillFor } from './operation-facts.ts'
import type { Extent, Rule } from './rule.ts'
import type { RuleBook } from './rule-book.ts'
import type { Draft } from './step-drafts.ts'
import type { Stock } from './stock.ts'
import type { Because, Step } from './types.ts'

/** A step with what the order needs to know of it. */
export interface PlannedStep {
  readonly step: Step
  /** `operation/ordinal`, the way rules name it. */
  readonly role: string
  readonly product: Product | null
  /** Elapsed minutes before the same surface is worked on again. */
  readonly recoatMinimum: number
  /** After this it must be dulled again before the next coat; null without a limit. */
  readonly recoatMaximum: number | null
  readonly touchedArea: Area
  readonly extent: Extent
  readonly findings: readonly Finding[]
}

export interface StepMaker {
  readonly job: Job
  readonly book: RuleBook
  readonly stock: Stock
  readonly drying: Drying
  readonly ruleById: ReadonlyMap<string, Rule>
}

/** Why a step is there: reason and source of each rule that asked for it. Rules the maker does not know are left out. */
export function becauseOf(
  { ruleById }: Pick<StepMaker, 'ruleById'>,
  reasons: Draft['reasons'],
): readonly Because[] {
  return reasons.flatMap(({ ruleId, conditionIds }) => {
    const rule = ruleById.get(ruleId)
    return rule === undefined ? [] : [{ ruleId, reason: rule.reason, source: rule.source, conditionIds }]
  })
}

/** The step that a draft becomes on a group, with product, times and amounts filled in. */
export function plannedStep(
  maker: StepMaker,
  group: Group,
  roomKey: Step['roomId'],
  draft: Draft,
): PlannedStep {
  const sheen = draft.coloured ? group.finish.sheen : null
  const product = draft.productClass === null ? null : maker.stock.product(draft.productClass, sheen)
  const step: Step = {
    key: `${roomKey}/${group.key}/${draft.operation}/${draft.ordinal}`,
    roomId: roomKey,
    surfaceClass: draft.surfaceClass,
    groupKey: group.key,
    surfaceKeys: draft.surfaceKeys,
    keptItemIds: [],
    operation: draft.operation,
    coat: draft.operation === 'coat' ? Number(draft.ordinal) : 0,
    productClass: draft.productClass,
    productId: product?.id ?? null,
    colourId: draft.coloured ? group.finish.colourId : null,
    sheen: draft.operation === 'coat' ? sheen : null,
    amounts: draft.amounts,
    parts: draft.parts,
    difficulty: difficultyOf(maker, group, roomKey, draft),
    skill: skillFor(draft.operation, draft.surfaceClass),
    effects: {
      wet: putsOnFilm(draft.operation),
      dusty: makesDust(draft.operation),
      fumes: product?.fumes ?? false,
      closesRoom: closesRoom(group, draft),
    },
    touchDry: elapsedMinutes(maker.drying.touch(draft, product)),
    splittable: splittableOf(maker.book, group, draft),
    daily: false,
    because: becauseOf(maker, draft.reasons),
    cautions: [],
  }
  return {
    step,
    role: `${draft.operation}/${draft.ordinal}`,
    product,
    recoatMinimum: maker.drying.recoat(draft, product),
    recoatMaximum: putsOnFilm(draft.operation) ? (product?.recoatMaximumMinutes ?? null) : null,
    touchedArea: draft.touchedArea,
    extent: draft.extent,
    findings: draft.findings,
  }
}

/** Nobody walks over wet treads, and a room full of stripper's steam or old dust is shut off. */
function closesRoom(group: Group, draft: Draft): boolean {
  return (
    draft.operation === 'stripWallpaper' ||
    draft.operation === 'scrape' ||
    (group.surfaceClass === 'stairs' && draft.operation === 'coat')
  )
}

/** A ceiling is coated in one go; what has corners or pieces may stop at one. */
function splittableOf(book: RuleBook, group: Group, draft: Draft): Step['splittable'] {
  if (draft.operation !== 'coat' || group.surfaceClass !== 'ceiling' || !book.isOn('wet-edge')) return 'night'
  const area = toSquareFeet(draft.amounts.area)
  if (area > book.number('wet-edge', 'squareFeetOfDay')) return 'night'
  return area <= book.number('wet-edge', 'squareFeet') ? 'no' : 'break'
}
