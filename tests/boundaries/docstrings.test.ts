import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

/** So many of the functions that core exports say what their name does not. */
const leastShare = 0.95

function exportedFunctions(sources: Parameters<typeof readSources>[0]) {
  return readSources(sources).flatMap(({ path, functions }) =>
    functions
      .filter(({ isExported }) => isExported)
      .map(({ name, isDocumented }) => ({ name: `${path} ${name}`, isDocumented })),
  )
}

test('the functions that core exports have a comment of documentation', () => {
  const all = exportedFunctions(sourcesOf('core'))
  const bare = all.filter(({ isDocumented }) => !isDocumented).map(({ name }) => name)
  expect(all.length).toBeGreaterThan(900)
  expect(1 - bare.length / all.length, bare.join('\n')).toBeGreaterThan(leastShare)
})

test('only a comment of documentation right before an exported function counts', () => {
  const text = [
    '/** Said. */\nexport function said() {}',
    '// Not said.\nexport function plain() {}',
    '/** Of another. */\nconst other = 1\nexport const bare = () => 1',
    '/** Said. */\nexport const arrow = () => ({ inner() {} })',
    '/** Not given out. */\nfunction own() {}',
  ].join('\n')
  const said = exportedFunctions([{ path: 'core/a.ts', text }])
  expect(said.map(({ name, isDocumented }) => [name, isDocumented])).toEqual([
    ['core/a.ts said', true],
    ['core/a.ts plain', false],
    ['core/a.ts bare', false],
    ['core/a.ts arrow', true],
  ])
})
