import { isFields } from '../../../core/lists/lists.ts'
import { rateName } from '../../../core/price/rate-names.ts'
import type { Job } from '../../../core/project/job.ts'
import { sameValue } from '../../../core/project/same-value.ts'
import type { ShopDifference } from '../../../core/project/shop-differences.ts'
import { ruleBook } from '../../../core/specification/rule-settings.ts'
import { formatCents } from '../../../core/units/money.ts'
import { capital, plainWords } from '../../../core/words/text.ts'

export const partNames: Readonly<Record<ShopDifference['part'], string>> = {
  business: 'Business and proposal',
  houseRules: 'Money, hours and house rules',
  crew: 'People',
  rates: 'Rates',
  products: 'Products',
  rules: 'Rules',
}

/** What a line is about: a field in words, or the record by its name. */
export function differenceTitle(job: Job, { part, path, here, there }: ShopDifference): string {
  const id = path[0] ?? ''
  if (part === 'business' || part === 'houseRules') return fieldWords(path)
  if (part === 'rates') return rateName(id)
  if (part === 'rules') return ruleBook(job).find(({ facts }) => facts.id === id)?.facts.title ?? id
  return nameOf(there) ?? nameOf(here) ?? id
}

/** What one copy says there, where it differs from the other. */
export function valueWords(value: unknown, other: unknown): string {
  if (value === undefined) return 'not there'
  const leaves = changedLeaves([], value, other)
  return leaves.length === 0 ? 'there' : leaves.join('; ')
}

function changedLeaves(path: readonly string[], value: unknown, other: unknown): readonly string[] {
  if (sameValue(value, other)) return []
  if (isFields(value) && (isFields(other) || other === undefined)) {
    if (other === undefined) return ['there']
    return Object.entries(value).flatMap(([name, inner]) =>
      changedLeaves([...path, name], inner, other[name]),
    )
  }
  const words = leafWords(path.at(-1) ?? '', value)
  return [path.length === 0 ? words : `${fieldWords(path)}: ${words}`]
}

function leafWords(name: string, value: unknown): string {
  if (value === null) return 'none'
  if (name === 'logo') return 'a picture'
  if (value === true) return 'yes'
  if (value === false) return 'no'
  if (typeof value === 'number') return /cents/i.test(name) ? formatCents(value) : String(value)
  if (typeof value === 'string') return value === '' ? 'empty' : value
  if (Array.isArray(value))
    return value.length === 0 ? 'none' : value.map((each) => itemWords(each)).join(', ')
  return 'there'
}

function itemWords(item: unknown): string {
  if (!isFields(item)) return typeof item === 'string' ? plainWords(item) : String(item)
  return Object.entries(item)
    .map(([name, value]) => leafWords(name, value))
    .join(' ')
}

/** `price.labourTaxPercent` as `Labor tax percent`. */
function fieldWords(path: readonly string[]): string {
  const words = path.slice(-2).map((name) =>
    plainWords(name)
      .replace('labour', 'labor')
      .replace(/ cents\b/, ''),
  )
  return capital(words.join(', '))
}

function nameOf(record: unknown): string | null {
  return isFields(record) && typeof record.name === 'string' ? record.name : null
}
