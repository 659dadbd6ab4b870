import { expect, test } from 'vitest'
import { sheens } from '../../core/project/vocabulary.ts'
import { glossLevel } from '../../core/specification/coats.ts'
import { sheenGlossary } from '../../core/specification/glossary.ts'
import { adhesionClass, glossLevelOf } from '../../core/specification/surface-tests.ts'

test.each([
  // MPI gloss table: units at 60 and 85 degrees.
  [3, 5, 1],
  [8, 20, 2],
  [22, 20, 3],
  [22, 40, 4],
  [50, null, 5],
  [75, null, 6],
  [90, null, 7],
] as const)('a coat reading %s at 60 degrees and %s at 85 is of gloss level %d', (at60, at85, level) => {
  expect(glossLevelOf(at60, at85)).toBe(level)
})

test('the painters words for sheen are the seven levels of the MPI table in order', () => {
  for (const [index, sheen] of sheens.entries()) {
    expect(glossLevel(sheen)).toBe(index + 1)
    expect(sheenGlossary[sheen].meaning).toContain(`level ${index + 1}`)
  }
})

test.each([
  // ASTM D3359 cross-cut: percent removed.
  [0, '5B'],
  [4, '4B'],
  [10, '3B'],
  [25, '2B'],
  [50, '1B'],
  [70, '0B'],
] as const)('a cross-cut that loses %d percent is of class %s', (removed, expected) => {
  expect(adhesionClass(removed)).toBe(expected)
})
