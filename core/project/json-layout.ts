/**
 * Writes JSON so that a person can read it and a version control system can compare it: what fits on a line of `width` characters
 * stays on one line, the rest is broken one item to a line. The same value always gives the same text.
 */
export function layOutJson(value: unknown, width = 110): string {
  return `${layOut(value, '', width)}\n`
}

function layOut(value: unknown, indent: string, width: number): string {
  const short = oneLine(value)
  if (typeof value !== 'object' || value === null || indent.length + short.length <= width) return short
  const deeper = `${indent}  `
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => deeper + layOut(item, deeper, width)).join(',\n')}\n${indent}]`
  }
  const lines = definedEntries(value).map(([name, item]) => {
    const label = `${JSON.stringify(name)}: `
    return deeper + label + layOut(item, deeper, width - label.length)
  })
  return `{\n${lines.join(',\n')}\n${indent}}`
}

function oneLine(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value)
  if (Array.isArray(value)) return `[${value.map(oneLine).join(', ')}]`
  const parts = definedEntries(value).map(([name, item]) => `${JSON.stringify(name)}: ${oneLine(item)}`)
  return parts.length === 0 ? '{}' : `{ ${parts.join(', ')} }`
}

function definedEntries(value: object): [string, unknown][] {
  return Object.entries(value).filter(([, item]) => item !== undefined)
}
