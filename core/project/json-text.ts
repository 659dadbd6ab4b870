/** Where JSON text goes wrong: `line` and `column` count from 1. */
interface JsonFault {
  readonly line: number
  readonly column: number
  readonly sentence: string
}

/** Deeper nesting than any file of ours has; a limit keeps hostile text from exhausting the stack of later readers. */
const deepestNesting = 64

const space = /[ \t\n\r]*/y
/** A stretch of a string without escapes. A text of millions of letters is read in such stretches, for one pattern over all of it exhausts the stack. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: JSON forbids bare control characters in strings (RFC 8259 section 7)
const plainLetters = /[^"\\\u0000-\u001f]{1,65536}/y
const escapedLetters = /(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})){1,8192}/y
const numberToken = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y
const wordToken = /true|false|null/y

/** What is open around the place being read: an object with the names it has so far, or an array. */
type Nest = { readonly kind: 'object'; readonly names: Set<string> } | { readonly kind: 'array' }

interface Reader {
  readonly text: string
  at: number
  readonly nests: Nest[]
  fault: string | null
}

/**
 * Checks text against the JSON grammar (RFC 8259) and answers the first fault, or null. Stricter than the grammar in two points:
 * a name may stand only once in an object (RFC 8259 section 4 leaves that open, and readers then drop data silently),
 * and nesting has a limit. The engine's own parser words and places its errors differently from host to host; this does not.
 */
export function findJsonFault(text: string): JsonFault | null {
  const reader: Reader = { text, at: 0, nests: [], fault: null }
  let valueFollows = true
  while (valueFollows && reader.fault === null) {
    const opened = startValue(reader)
    if (!opened && reader.fault === null) valueFollows = finishValue(reader)
  }
  return reader.fault === null ? null : { ...placeOf(text, reader.at), sentence: reader.fault }
}

/** Reads a word, number, string or empty nest whole; true when it opened a nest whose first value follows. */
function startValue(reader: Reader): boolean {
  take(reader, space)
  const character = reader.text[reader.at]
  if (character === '{' || character === '[') return openNest(reader, character)
  if (takeString(reader) || take(reader, numberToken) || take(reader, wordToken)) return false
  return fault(reader, character === undefined ? 'the text ends too early' : 'a value is expected here')
}

function openNest(reader: Reader, bracket: '{' | '['): boolean {
  if (reader.nests.length === deepestNesting) return fault(reader, 'the data is nested too deep')
  reader.at++
  take(reader, space)
  if (reader.text[reader.at] === (bracket === '{' ? '}' : ']')) {
    reader.at++
    return false
  }
  reader.nests.push(bracket === '{' ? { kind: 'object', names: new Set() } : { kind: 'array' })
  return readName(reader)
}

/** After a value: closes every nest that ends there; true when a comma says that another value follows. */
function finishValue(reader: Reader): boolean {
  for (;;) {
    take(reader, space)
    const character = reader.text[reader.at]
    const nest = reader.nests.at(-1)
    if (nest === undefined) {
      return character === undefined ? false : fault(reader, 'there is more text after the end of the data')
    }
    if (character === undefined) return fault(reader, 'the text ends too early')
    const close = nest.kind === 'object' ? '}' : ']'
    if (character !== ',' && character !== close) return fault(reader, `a comma or ${close} is expected here`)
    reader.at++
    if (character === ',') return readName(reader)
    reader.nests.pop()
  }
}

/** In an object, reads the name and the colon before a value. True when a value may follow. */
function readName(reader: Reader): boolean {
  const nest = reader.nests.at(-1)
  if (nest?.kind !== 'object') return true
  take(reader, space)
  const start = reader.at
  if (!takeString(reader)) return fault(reader, 'a name in double quotes is expected here')
  const name = String(JSON.parse(reader.text.slice(start, reader.at)))
  if (nest.names.has(name)) return fault(reader, `the name "${name}" stands a second time before here`)
  if (name === '__proto__') return fault(reader, 'the name before here is not allowed')
  nest.names.add(name)
  take(reader, space)
  if (reader.text[reader.at] !== ':') return fault(reader, 'a colon is expected here')
  reader.at++
  return true
}

function fault(reader: Reader, sentence: string): false {
  reader.fault = sentence
  return false
}

function take(reader: Reader, token: RegExp): boolean {
  token.lastIndex = reader.at
  if (!token.test(reader.text)) return false
  reader.at = token.lastIndex
  return true
}

/** Takes a whole string; where it is not one, nothing is taken. */
function takeString(reader: Reader): boolean {
  const start = reader.at
  if (reader.text[start] !== '"') return false
  reader.at++
  while (take(reader, plainLetters) || take(reader, escapedLetters));
  if (reader.text[reader.at] === '"') {
    reader.at++
    return true
  }
  reader.at = start
  return false
}

function placeOf(text: string, at: number): { readonly line: number; readonly column: number } {
  const before = text.slice(0, at)
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n') }
}
