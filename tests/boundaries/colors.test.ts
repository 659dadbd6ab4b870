import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const root = join(import.meta.dirname, '..', '..', 'renderer')
const tokensPath = join('app', 'tokens.css')
const tokens = readFileSync(join(root, tokensPath), 'utf8')

type Scheme = ReadonlyMap<string, string>

/** `--name: value` of a piece of a style sheet. */
function namesIn(text: string): Scheme {
  return new Map(
    [...text.matchAll(/--([\w-]+):\s*([^;]+);/g)].map(([, name = '', value = '']) => [name, value]),
  )
}

const [lightText = '', darkText = '', forcedText = ''] = tokens.split(/^@media/m)
const light = namesIn(lightText)
const dark = new Map([...light, ...namesIn(darkText)])

/** Relative luminance of `#rrggbb`, 0 to 1, as WCAG 2.2 defines it. */
function luminance(color: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(color.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** 1 to 21. */
function contrast(scheme: Scheme, front: string, back: string): number {
  const [one, other] = [front, back]
    .map((name) => luminance(scheme.get(name) ?? ''))
    .toSorted((a, b) => b - a)
  return ((one ?? 0) + 0.05) / ((other ?? 0) + 0.05)
}

const sheets = ['paper', 'paper-raised', 'paper-sunk']
const softs = ['act-soft', 'wait-soft', 'stop-soft', 'done-soft']
/** What is written on what. */
const written: readonly (readonly [string, string])[] = [
  ...['dark', 'dark-soft', 'act', 'wait', 'stop', 'done'].flatMap((front) =>
    sheets.map((back) => [front, back] as const),
  ),
  ...softs.flatMap((back) => [['dark', back] as const, [back.replace('-soft', ''), back] as const]),
  ['dark-soft', 'act-soft'],
  ['dark', 'wet'],
  ['on-act', 'act'],
  ['on-act', 'dark'],
]

test.each([
  ['light', light],
  ['dark', dark],
] as const)(
  'words can be read on every ground of the %s scheme, and edges of fields are seen',
  (_, scheme) => {
    const weak = written.filter(([front, back]) => contrast(scheme, front, back) < 4.5)
    expect(
      weak.map(([front, back]) => `${front} on ${back}: ${contrast(scheme, front, back).toFixed(2)}`),
    ).toEqual([])
    for (const back of ['paper', 'paper-raised']) {
      expect(contrast(scheme, 'line-strong', back), `line-strong on ${back}`).toBeGreaterThanOrEqual(3)
    }
  },
)

test('the dark scheme and the forced colors have a word for every color of the light one', () => {
  const colors = [...light].filter(([, value]) => /^(#|rgb)/.test(value)).map(([name]) => name)
  expect(colors.filter((name) => !namesIn(darkText).has(name))).toEqual([])
  const veils = new Set(['veil', 'shadow'])
  expect(colors.filter((name) => !veils.has(name) && !namesIn(forcedText).has(name))).toEqual([])
})

test('colors and sizes of words in the style sheets are tokens, and every token that is used is there', () => {
  const paths = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
    (path) => path.endsWith('.css') && path !== tokensPath,
  )
  const wrong = paths.flatMap((path) => {
    const text = readFileSync(join(root, path), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '')
    const own = namesIn(text)
    const found = [
      ...text.matchAll(/:[^;{}]*(#[0-9a-f]{3,8}\b|rgba?\(|hsla?\()[^;{}]*;/gi),
      ...text.matchAll(/font-size:(?! var\(--text-| inherit)[^;]+;/g),
      ...[...text.matchAll(/var\(--([\w-]+)/g)].filter(
        ([, name = '']) => !light.has(name) && !own.has(name) && !givenByLibrary.has(name),
      ),
    ]
    return found.map(([words]) => `${path}: ${words}`)
  })
  expect(paths.length).toBeGreaterThan(10)
  expect(wrong).toEqual([])
})

/** Set by react-aria-components on a popover. */
const givenByLibrary = new Set(['trigger-width'])
