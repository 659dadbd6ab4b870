import { isGroup } from '../../lists/lists.ts'
import { heldToLimit, isSafetyRule, safetyRules } from '../safety-limits.ts'
import type { FileData } from './file-data.ts'

/**
 * Safety rules could be switched off without a word, and their numbers made weaker than the law has them. Both are put right, and
 * `raised` says so to whoever opens the job.
 */
export function raiseSafetySettings(data: FileData): FileData {
  return Array.isArray(data.rules) ? { ...data, rules: data.rules.map(raisedSetting) } : data
}

function raisedSetting(setting: unknown): unknown {
  if (!isSetting(setting) || !isSafetyRule(setting.id)) return setting
  const raised: string[] = []
  const numbers: Record<string, unknown> = { ...setting.numbers }
  for (const [name, limit] of Object.entries(safetyRules[setting.id] ?? {})) {
    const value = numbers[name]
    if (typeof value !== 'number' || heldToLimit(limit, value) === value) continue
    numbers[name] = limit.published
    raised.push(
      `${limit.words} stood at ${value} and is ${limit.published} again, the published limit (${limit.source})`,
    )
  }
  const isSilent = setting.on === false && setting.leftOut === undefined
  if (isSilent) raised.push('it was switched off without a written reason and is on again')
  if (raised.length === 0) return setting
  return {
    ...setting,
    on: isSilent ? true : setting.on,
    numbers,
    raised: `Put right when this job was opened: ${raised.join('; ')}.`,
  }
}

interface Setting {
  readonly id: string
  readonly on: unknown
  readonly numbers: object
  readonly leftOut?: unknown
}

function isSetting(value: unknown): value is Setting {
  if (!isGroup(value)) return false
  const { id, numbers } = value
  return typeof id === 'string' && typeof numbers === 'object' && numbers !== null
}
