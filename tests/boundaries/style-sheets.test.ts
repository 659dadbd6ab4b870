import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'

const root = join(import.meta.dirname, '..', '..', 'renderer')

/** Classes that a rule of the sheet styles by their name alone. */
function plainClasses(sheet: string): readonly string[] {
  // What stands in brackets, as in `:is(...)`, is no head of its own.
  const bare = sheet.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\([^()]*\)/g, '')
  return [...bare.matchAll(/([^{}]+)\{/g)]
    .flatMap(([, heads]) => (heads ?? '').split(','))
    .flatMap((head) => /^\s*\.([\w-]+)\s*$/.exec(head)?.[1] ?? [])
}

test('a class is styled by its name alone in one style sheet only, for all of them hold on every page', () => {
  const paths = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.css'),
  )
  const sheets = paths.map((path) => ({
    path,
    classes: new Set(plainClasses(readFileSync(join(root, path), 'utf8'))),
  }))
  expect(sheets.length).toBeGreaterThan(10)
  const homesOf = (name: string) => sheets.filter(({ classes }) => classes.has(name)).map(({ path }) => path)
  const shared = [...new Set(sheets.flatMap(({ classes }) => [...classes]))].filter(
    (name) => homesOf(name).length > 1,
  )
  expect(shared.map((name) => `${name}: ${homesOf(name)}`)).toEqual([])
})

test('what is shown before the style sheets are read has their paper and dark, in the window and on the page', () => {
  const tokens = readFileSync(join(root, 'app', 'tokens.css'), 'utf8')
  const [light = '', dark = ''] = tokens.split('@media (prefers-color-scheme: dark)')
  const colorsIn = (scheme: string) =>
    ['paper', 'dark'].map((name) => new RegExp(`--${name}: (#[0-9a-f]{6});`).exec(scheme)?.[1])
  const page = readFileSync(join(root, 'app', 'index.html'), 'utf8')
  const shown = [...page.matchAll(/(?:background|color): (#[0-9a-f]{6});/g)].map(([, color]) => color)
  expect(shown).toEqual([...colorsIn(light), ...colorsIn(dark)])
  const window = readFileSync(join(root, '..', 'electron', 'main', 'window.ts'), 'utf8')
  const [ofWindow] = [...window.matchAll(/'(#[0-9a-f]{6})' : '(#[0-9a-f]{6})'/g)]
  expect(ofWindow?.slice(1)).toEqual([colorsIn(dark)[0], colorsIn(light)[0]])
})
