import { basename } from 'node:path/posix'
import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

const program = ['core', 'renderer', 'electron'].flatMap(sourcesOf)

/** What stands more than once, with the places where it does. */
function doubled(things: readonly (readonly [name: string, place: string])[]): readonly string[] {
  const places = new Map<string, readonly string[]>()
  for (const [name, place] of things) places.set(name, [...(places.get(name) ?? []), place])
  return [...places].filter(([, at]) => at.length > 1).map(([name, at]) => `${name}: ${at.join(', ')}`)
}

test('an exported name stands for one thing: one file exports it', () => {
  const names = readSources(program).flatMap(({ path, exports }) =>
    exports.map(({ name }) => [name, path] as const),
  )
  expect(names.length).toBeGreaterThan(1000)
  expect(doubled(names.filter(([name]) => name !== 'default'))).toEqual([])
})

test('a file has a name that no other file of the program has', () => {
  expect(doubled(program.map(({ path }) => [basename(path), path] as const))).toEqual([])
})

test('what stands twice is told with its places', () => {
  expect(
    doubled([
      ['rate', 'a.ts'],
      ['step', 'a.ts'],
      ['rate', 'b.ts'],
    ]),
  ).toEqual(['rate: a.ts, b.ts'])
})
