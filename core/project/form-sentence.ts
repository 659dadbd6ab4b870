import type { z } from 'zod'
import { isGroup } from '../lists/lists.ts'

type Issue = z.core.$ZodIssue

/** `rooms[2].corners[0].x`: the place of a value in a file. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`
    return text === '' ? String(step) : `${text}.${String(step)}`
  }, '')
}

/**
 * The issue to tell of. Where a value may have one of several forms, that is what is wrong in the form it comes nearest to: the one
 * that is left deepest inside.
 */
export function issueToTell(issue: Issue): Issue {
  if (issue.code !== 'invalid_union') return issue
  const inner = issue.errors.flatMap((issues) => issues.slice(0, 1).map((each) => issueToTell(each)))
  const deepest = inner.toSorted((one, other) => other.path.length - one.path.length)[0]
  if (deepest === undefined || deepest.path.length === 0) return issue
  return { ...deepest, path: [...issue.path, ...deepest.path] }
}

/** What the form says is wrong with a value, as a sentence for the user: the place, what is there, what belongs there. */
export function formSentence(issue: Issue, data: unknown): string {
  const place = pathText(issue.path)
  const text = `${complaint(issue, valueAt(data, issue.path))}${nearestName(data, issue.path)}.`
  return place === '' ? `${text.charAt(0).toUpperCase()}${text.slice(1)}` : `At ${place}: ${text}`
}

function complaint(issue: Issue, value: unknown): string {
  if (value === undefined && issue.code !== 'unrecognized_keys') return 'a value is missing'
  switch (issue.code) {
    case 'unrecognized_keys':
      return strangers(issue.keys)
    case 'invalid_type':
      return `${shown(value)} is not ${words(issue.expected)}`
    case 'too_small':
      return `${measured(issue.origin, value)} is too small; it must be ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}`
    case 'too_big':
      return `${measured(issue.origin, value)} is too large; it may be ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}`
    case 'invalid_value':
      return `${shown(value)} will not do; this version knows ${someOf(issue.values.map(String))}`
    case 'invalid_union':
      return `${shown(value)} is not a kind this version knows`
    default:
      return `${shown(value)} will not do: ${issue.message}`
  }
}

/** `this version knows no field "foo"`: what was mistyped stands last, beside the name it is in. */
function strangers(keys: readonly string[]): string {
  return `this version knows no ${keys.length === 1 ? 'field' : 'fields'} ${someOf(keys.map((key) => `"${key.slice(0, 60)}"`))}`
}

const mostNamed = 12

/** A list a person can take in: a dozen at most, and how many more there are. */
function someOf(names: readonly string[]): string {
  const more = names.length - mostNamed
  const named = names.slice(0, mostNamed).join(', ')
  return more > 0 ? `${named} and ${more} more` : named
}

function words(expected: string): string {
  switch (expected) {
    case 'int':
      return 'a whole number'
    case 'string':
      return 'text'
    case 'boolean':
      return 'yes or no (true or false)'
    case 'array':
      return 'a list'
    case 'object':
    case 'record':
      return 'a group of fields'
    default:
      return `a ${expected}`
  }
}

function measured(origin: string, value: unknown): string {
  if (origin === 'string') return `text of ${String(value).length} characters`
  if (origin === 'array' && Array.isArray(value)) return `a list of ${value.length}`
  return shown(value)
}

function shown(value: unknown): string {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (value === null) return 'an empty value (null)'
  if (Array.isArray(value)) return 'a list'
  if (typeof value === 'object') return 'a group of fields'
  const text = JSON.stringify(String(value).slice(0, 60))
  return text.length > 40 ? `${text.slice(0, 39)}…` : text
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>((value, step) => (isGroup(value) ? value[String(step)] : undefined), data)
}

/** The name or id of the record the place is in, so that a painter need not count rooms. */
function nearestName(data: unknown, path: readonly PropertyKey[]): string {
  if (path.length < 2) return ''
  const record = valueAt(data, path.slice(0, 2))
  if (!isGroup(record)) return ''
  const { name, id } = record
  const known = typeof name === 'string' && name !== '' ? name : id
  return typeof known === 'string' && known !== '' ? ` (in "${known.slice(0, 60)}")` : ''
}
