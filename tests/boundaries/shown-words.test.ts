import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

/** Spellings of another English; stored names that have them are no text. */
const british =
  /colour|\blabour|\bstoreys?\b|\bgrey\b|centre|millimetre|\bmetres?\b|\blitres?\b|\bmoulding|\bmould\b|\bcheques?\b|\blicence|\bfavour|\bneighbour|\bplough|\bjewell|\bcancelled|\blevelled|panelled|louvred|\b(?:real|organ|recogn|minim|optim)is(?:e|ed|ing)\b/i

test('what people read is spelled as Americans spell it', () => {
  const wrong = readSources(['core', 'renderer', 'electron'].flatMap(sourcesOf)).flatMap(({ path, shown }) =>
    shown.filter((text) => british.test(text)).map((text) => `${path}: ${text}`),
  )
  expect(wrong).toEqual([])
})

test('texts are read from markup and strings, names of the program are not', () => {
  const text = `const a = <p className="plain-button stop" title="Put it back">Colour <b>of</b></p>; f('labourMinutes', \`Grey \${a} wall\`)`
  expect(readSources([{ path: 'renderer/a.tsx', text }])[0]?.shown).toEqual([
    'Put it back',
    'Colour',
    'of',
    'Grey',
    'wall',
  ])
})
