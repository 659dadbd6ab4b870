import type { Rule } from './rule.ts'
import { airRules } from './rules/air-rules.ts'
import { allowanceRules } from './rules/allowances.ts'
import { asbestosRules } from './rules/asbestos.ts'
import { calcimineRules } from './rules/calcimine.ts'
import { coatRules, coatsAskedFor, patchedCoats, scuffBetweenCoats, sheenAdvice } from './rules/coat-rules.ts'
import { dustRules } from './rules/dust.ts'
import { keptItemRules } from './rules/kept-items.ts'
import { leadRules } from './rules/lead-safe.ts'
import { leadWorkRules } from './rules/lead-work.ts'
import { metalRules } from './rules/metal.ts'
import { amountRules, orderRules } from './rules/order-rules.ts'
import { paintRules } from './rules/paint.ts'
import { plasterRules } from './rules/plaster.ts'
import { primeBeforeCoats, sandBeforeCoats, stoveGrease, washBeforeSanding } from './rules/room-work.ts'
import { sashRules } from './rules/sash.ts'
import { newSurfaceRules } from './rules/skim-and-new-plaster.ts'
import { stainRules } from './rules/stains.ts'
import { systemRules } from './rules/systems.ts'
import { trimRules } from './rules/trim.ts'
import { wallpaperRules } from './rules/wallpaper.ts'

/** Every rule of the book, in the order in which they are asked; reasons of a step are listed in it. */
export const allRules: readonly Rule[] = [
  ...keptItemRules,
  ...paintRules,
  stoveGrease,
  ...plasterRules,
  ...newSurfaceRules,
  ...calcimineRules,
  ...wallpaperRules,
  ...stainRules,
  ...metalRules,
  ...allowanceRules,
  ...trimRules,
  ...sashRules,
  sheenAdvice,
  ...systemRules,
  ...coatRules,
  patchedCoats,
  coatsAskedFor,
  scuffBetweenCoats,
  ...dustRules,
  ...orderRules,
  sandBeforeCoats,
  primeBeforeCoats,
  washBeforeSanding,
  ...amountRules,
  ...airRules,
  ...leadRules,
  ...leadWorkRules,
  ...asbestosRules,
]

export const ruleById: ReadonlyMap<string, Rule> = new Map(allRules.map((rule) => [rule.id, rule]))
