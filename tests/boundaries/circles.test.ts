import { expect, test } from 'vitest'
import { findCircles } from './circles.ts'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

test('no files import one another in a circle', () => {
  const sources = ['core', 'renderer', 'electron', 'demo-data'].flatMap(sourcesOf)
  expect(sources.length).toBeGreaterThan(80)
  expect(findCircles(readSources(sources))).toEqual([])
})

test('a circle is found, also one of types, and files that only lead to it are not in it', () => {
  const files = {
    'core/a.ts': `import { b } from './b.ts'`,
    'core/b.ts': `import type { C } from './c.ts'`,
    'core/c.ts': `import { b } from './b.ts'\nimport { d } from './d.ts'`,
    'core/d.ts': 'export const d = 1',
  }
  const sources = Object.entries(files).map(([path, text]) => ({ path, text }))
  expect(findCircles(readSources(sources))).toEqual([['core/b.ts', 'core/c.ts']])
})
