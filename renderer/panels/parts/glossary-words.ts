import type { ConditionKind, ExistingCoat, Severity, Substrate } from '../../../core/project/vocabulary.ts'

export const conditionNotes = {} as Readonly<Record<ConditionKind, string>>
export const conditionSigns = {} as Readonly<Record<ConditionKind, string>>
export const coatNotes = {} as Readonly<Record<ExistingCoat, string>>
export const substrateNotes = {} as Readonly<Record<Substrate, string>>
export const severityNotes = {} as Readonly<Record<Severity, string>>
