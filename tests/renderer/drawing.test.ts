import { expect, test } from 'vitest'
import { records } from '../../core/project/job.ts'
import { openingLetter } from '../../core/project/opening-letters.ts'
import { drawStorey } from '../../renderer/canvas/drawing/draw-storey.ts'
import { cutShort, wrapped } from '../../renderer/canvas/drawing/lettering.ts'
import type { Pen } from '../../renderer/canvas/drawing/pen.ts'
import type { StoreyLook } from '../../renderer/canvas/drawing/storey-look.ts'
import type { DrawingColors } from '../../renderer/canvas/drawing-colors.ts'
import { fitView } from '../../renderer/canvas/view.ts'
import { manyRooms } from '../benchmarks/many-rooms.ts'

const widthOf = (text: string) => text.length

/** Writes down texts and colors; a letter is one pixel wide. */
function recorder() {
  const texts: string[] = []
  const colors = new Set<string>()
  const calls: Record<string, unknown> = {
    fillText: (text: string) => texts.push(text),
    measureText: (text: string) => ({
      width: text.length,
      fontBoundingBoxAscent: 9,
      fontBoundingBoxDescent: 3,
    }),
  }
  const pen = new Proxy(calls, {
    get: (target, name) => target[String(name)] ?? (() => undefined),
    set(_, name, value) {
      if (name === 'fillStyle' || name === 'strokeStyle') colors.add(value)
      return true
    },
  })
  return { pen: pen as unknown as Pen, texts, colors }
}

const names = [
  ...['paper', 'paperRaised', 'paperSunk', 'dark', 'darkSoft', 'line', 'lineStrong', 'act', 'actSoft'],
  ...['onAct', 'wait', 'waitSoft', 'stop', 'face', 'faceDrawn'],
]
const colorsOf = (scheme: string) =>
  Object.fromEntries(names.map((name) => [name, `${scheme} ${name}`])) as unknown as DrawingColors

const house = manyRooms(4)
const size = { width: 900, height: 700 }

function drawn(changes: Partial<StoreyLook> = {}) {
  const { pen, ...seen } = recorder()
  drawStorey(pen, {
    job: house,
    storeyId: records(house.storeys)[0]?.id ?? '',
    system: 'imperial',
    view: fitView(
      records(house.rooms).flatMap(({ corners }) => corners),
      size,
    ),
    size,
    colors: colorsOf('light'),
    showsGrid: true,
    underlayImage: null,
    selected: new Set(),
    lit: new Set(),
    refused: new Set(),
    ...changes,
  })
  return seen
}

test('a storey is drawn with the name of each room and the letters of its openings', () => {
  const { texts } = drawn()
  for (const { name } of records(house.rooms)) expect(texts).toContain(name)
  const [room] = records(house.rooms)
  const letters = records(house.openings).flatMap(({ id }) =>
    room === undefined ? [] : openingLetter(house, id, room.id) || [],
  )
  expect(letters.length).toBeGreaterThan(5)
  expect(texts).toEqual(expect.arrayContaining(letters))
  expect(texts).toEqual(expect.arrayContaining([`low 9' 0"`, `high 11' 0"`, `ridge 12' 0"`]))
})

test('a selected room shows the lengths of its walls', () => {
  const room = records(house.rooms)[1]
  expect(drawn().texts).not.toContain(`14' 0"`)
  expect(drawn({ selected: new Set([room?.id ?? '']) }).texts).toContain(`14' 0"`)
})

test('another scheme of colors leaves nothing in the one before', () => {
  const { colors } = drawn({ colors: colorsOf('dark') })
  expect(colors.size).toBeGreaterThan(4)
  expect([...colors].filter((color) => !color.startsWith('dark '))).toEqual([])
})

test('another storey is drawn without these rooms', () => {
  expect(drawn({ storeyId: 'attic' }).texts).toEqual([])
})

test('a name that does not fit its line ends in dots', () => {
  expect(cutShort('Pantry', 6, widthOf)).toBe('Pantry')
  expect(cutShort('Broom closet', 6, widthOf)).toBe('Broom…')
  expect(cutShort('Pantry', 0, widthOf)).toBe('')
})

test('a name is broken at spaces and behind dashes', () => {
  expect(wrapped('Walk-in closet', 20, widthOf)).toEqual(['Walk-in closet'])
  expect(wrapped('Walk-in closet', 9, widthOf)).toEqual(['Walk-in', 'closet'])
  expect(wrapped('Walk-in closet', 6, widthOf)).toEqual(['Walk-', 'in', 'closet'])
  expect(wrapped('Conservatory', 4, widthOf)).toEqual(['Conservatory'])
})
