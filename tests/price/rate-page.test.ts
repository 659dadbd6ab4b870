import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { defaultRate } from '../../core/price/default-rates.ts'

const page = readFileSync(join(import.meta.dirname, '..', '..', 'core', 'price', 'rates.md'), 'utf8')

/** Lines `| \`coat\` | 200 sq ft | sources | judged |`. */
const lines = [
  ...page.matchAll(/^\| `([\w-]+)` \| ([\d,]+) (sq ft|ft|pieces)[^|]*\| ([^|]+) \| ([^|]+) \|$/gm),
].map(([, id = '', figure = '', unit = '', sources = '', judged = '']) => ({
  id,
  perHour: Number(figure.replace(',', '')),
  basis: { 'sq ft': 'area', ft: 'length', pieces: 'count' }[unit],
  sources,
  judged,
}))

test('the page of rates holds the figures the program starts with, in their units', () => {
  expect(lines.length).toBeGreaterThan(40)
  expect(lines.length).toBe([...page.matchAll(/^\| `/gm)].length)
  expect(lines.map(({ id, perHour, basis }) => ({ id, perHour, basis }))).toEqual(
    lines.map(({ id }) => ({ id, perHour: defaultRate(id)?.perHour, basis: defaultRate(id)?.basis })),
  )
})

test('a rate without a source says that it is a shop assumption or common practice', () => {
  const bare = lines.filter(({ sources }) => sources.startsWith('none'))
  expect(bare.length).toBeGreaterThan(0)
  expect(bare.filter(({ judged }) => !/shop assumption|common practice/.test(judged))).toEqual([])
})

test('every letter of a source that a line names stands in the list of sources', () => {
  const known = new Set([...page.matchAll(/^- \*\*([A-Z])\*\*/gm)].map(([, letter]) => letter))
  const named = lines.flatMap(({ sources }) =>
    [...sources.matchAll(/\b([A-Z])\b/g)].map(([, letter]) => letter),
  )
  expect(named.filter((letter) => !known.has(letter))).toEqual([])
})
