import { expect, test } from 'vitest'
import { sheens } from '../../core/project/vocabulary.ts'
import { glossLevel } from '../../core/specification/coats.ts'
import { sheenGlossary } from '../../core/specification/glossary.ts'

test('the painters words for sheen are the seven levels of the MPI table in order', () => {
  for (const [index, sheen] of sheens.entries()) {
    expect(glossLevel(sheen)).toBe(index + 1)
    expect(sheenGlossary[sheen].meaning).toContain(`level ${index + 1}`)
  }
})
