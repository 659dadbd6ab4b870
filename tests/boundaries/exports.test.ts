import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'
import { type Exception, findUnusedExports } from './unused-exports.ts'

/** Exports that look unused and stand for good reason. */
const exceptions: readonly Exception[] = [
  { export: 'core/project/job-file-schema.ts jobFileJsonSchema', reason: 'published in demo-data' },
  { export: 'core/work-order/output-schemas.ts outputJsonSchema', reason: 'published in demo-data' },
  {
    export: 'electron/headless/headless.ts runHeadless',
    reason: 'the launch scripts load it from the build',
  },
  {
    export: 'electron/loopback/loopback.ts startLoopback',
    reason: 'the launch scripts load it from the build',
  },
  ...[
    'electron-binary.mjs installedBinary',
    'node-guard.mjs oldestNode',
    'node-guard.mjs oldNodeSentence',
  ].map((name) => ({
    export: `electron/launch/${name}`,
    reason: 'launch.test.ts loads the scripts by their path',
  })),
]

test('the program reaches everything that a file exports', () => {
  const program = readSources(['core', 'renderer', 'electron'].flatMap(sourcesOf))
  const others = readSources(['tests', 'demo-data'].flatMap(sourcesOf))
  expect(findUnusedExports(program, others, exceptions)).toEqual([])
})

test('an export is used where the program imports it, or where its own file and a test do', () => {
  const read = (files: Readonly<Record<string, string>>) =>
    readSources(Object.entries(files).map(([path, text]) => ({ path, text })))
  const program = read({
    'core/a.ts':
      'export const used = 1, idle = 2\nexport function home() { return home() }\nexport const tested = 3\nhome() + tested',
    'core/b.ts': `import { used as mine } from './a.ts'\nexport type Kept = typeof mine`,
    'core/c.ts': `import type { Kept } from './b.ts'\nexport { used } from './a.ts'`,
    'core/d.ts': `import * as all from './e.ts'`,
    'core/e.ts': 'export interface Any {}',
  })
  const tests = read({ 'tests/a.test.ts': `import { idle, tested } from '../core/a.ts'` })
  expect(findUnusedExports(program, tests, [{ export: 'core/e.ts Any', reason: '' }])).toEqual([
    'core/a.ts idle',
    'core/a.ts home',
    'core/c.ts used',
    'core/e.ts Any is no exception',
  ])
})
