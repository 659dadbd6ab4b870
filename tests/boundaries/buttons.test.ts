import { expect, test } from 'vitest'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

/** Where the page draws a `button` element itself instead of taking the button of react-aria-components. */
const kept: Readonly<Record<string, string>> = {
  'renderer/panels/house/SheetList.tsx':
    'a button for each room: those of the library took a fifth of the time in which 60 rooms appear',
  'renderer/panels/house/underlay/PicturePoints.tsx':
    'a point that is dragged: the press has to go on to the picture under it, which the button would keep to itself',
  'renderer/panels/parts/HintButton.tsx': 'the button itself, with the hint that it would drop',
}

test('there is one kind of button on the page', () => {
  const drawing = readSources(sourcesOf('renderer')).filter(({ elements }) => elements.includes('button'))
  expect(drawing.map(({ path }) => path).sort()).toEqual(Object.keys(kept).sort())
})

test('elements are read from the markup, not from words that look like it', () => {
  const text = 'const a = <p><b.C>{"<button>"}</b.C><br /></p> // <button>'
  expect(readSources([{ path: 'renderer/a.tsx', text }])[0]?.elements).toEqual(['p', 'b.C', 'br'])
})
