import type { Operation } from './types.ts'

/** What a rule guards against, besides bad work. */
const safetyClasses = [
  'none',
  'lead',
  'asbestos',
  'dust',
  'fumes',
  'fire',
  'height',
  'electricity',
  'alarm',
  'moisture',
] as const
type SafetyClass = (typeof safetyClasses)[number]

export const ruleThemes = [
  'dust',
  'paint',
  'plaster',
  'calcimine',
  'wallpaper',
  'trim',
  'sash',
  'stains',
  'metal',
  'coats',
  'order',
  'keptItems',
  'air',
  'lead',
  'asbestos',
  'difficulty',
] as const
export type RuleTheme = (typeof ruleThemes)[number]

/** A number of a rule that the owner may change. `source` says where the default comes from. */
export interface RuleNumber {
  readonly value: number
  readonly unit: string
  readonly meaning: string
  readonly source: string
  /** What the owner may set it to; anything else is taken to the nearest of these. */
  readonly least: number
  readonly most: number
  readonly whole: boolean
}

/** Names an operation in every ordinal, or one ordinal of it: `fill`, `coat/1`. */
export type Selector = Operation | `${Operation}/${string}`

/**
 * Every step named in `before` ends before any step named in `after` starts. Within a group unless a rule says otherwise.
 * Where two rules say the same of a pair, the more special one gives the reason.
 */
export interface OrderStatement {
  readonly before: readonly Selector[]
  readonly after: readonly Selector[]
  readonly reason: string
  readonly special: boolean
  /** True where it holds only of steps that its own rule asked for. */
  readonly ownSteps?: boolean
}

export interface RuleFacts {
  readonly id: string
  readonly title: string
  readonly theme: RuleTheme
  /** When it applies, in the trade's words. */
  readonly found: string
  readonly reason: string
  /** Standard, section, edition; or `common practice`; or `shop assumption`. */
  readonly source: string
  readonly safety: SafetyClass
  /** On by default. */
  readonly on: boolean
  readonly numbers: Readonly<Record<string, RuleNumber>>
}
