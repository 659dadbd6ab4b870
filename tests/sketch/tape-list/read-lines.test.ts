import { expect, test } from 'vitest'
import { readTapeLine, readTapeList } from '../../../core/sketch/tape-list/read-line.ts'
import type { TapeLine } from '../../../core/sketch/tape-list/tape-records.ts'
import { type LengthUnitSystem, toMillimetres, unitsPerInch } from '../../../core/units/length.ts'

/** A line in short: name | sides and height | openings | trim | note, lengths in inches or millimeters; `-` where nothing is made. */
function short(text: string, system: LengthUnitSystem = 'imperial'): string {
  const { room } = readTapeLine(text, 1, system)
  if (room === null) return '-'
  const show = (length: number | null) =>
    length === null ? '?' : String(system === 'metric' ? toMillimetres(length) : length / unitsPerInch)
  const openings = room.openings.map((one) => {
    const size = one.width === null ? '' : ` ${show(one.width)}x${show(one.height)}`
    const sort = [
      one.slab,
      one.parts > 1 ? `of ${one.parts}` : null,
      one.isFixed ? 'fixed' : null,
      one.isOutside ? 'out' : null,
    ]
    return [`${one.count} ${one.kind}${size}`, ...sort.filter((word) => word !== null)].join(' ')
  })
  const trim = [
    ...room.trim.map(({ kind, height }) => (height === null ? kind : `${kind} ${show(height)}`)),
    ...room.without.map((kind) => `no ${kind}`),
  ]
  return [
    room.name,
    [room.width, room.depth, ...(room.height === null ? [] : [room.height])].map(show).join('x'),
    room.isUsual ? 'usual' : openings.join(', '),
    trim.join(', '),
    room.note,
  ]
    .join(' | ')
    .replace(/[ |]+$/, '')
}

function sentences(line: TapeLine): string {
  return line.sentences.map(({ weight, sentence }) => `${weight}: ${sentence}`).join('\n')
}

/** Ways to write a side in feet and inches, and how many inches it has. */
const writtenSides: readonly (readonly [string, number])[] = [
  ['12', 12 * 12],
  ["12'", 12 * 12],
  ['12 ft', 12 * 12],
  ['12ft', 12 * 12],
  ['12 ft.', 12 * 12],
  ['12 feet', 12 * 12],
  ['12 foot', 12 * 12],
  ['12f', 12 * 12],
  ['12-6', 12 * 12 + 6],
  ['12 6', 12 * 12 + 6],
  ['12f6', 12 * 12 + 6],
  [`12'6"`, 12 * 12 + 6],
  ["12'6", 12 * 12 + 6],
  [`12' 6"`, 12 * 12 + 6],
  ["12' 6", 12 * 12 + 6],
  [`12'-6"`, 12 * 12 + 6],
  [`12' - 6"`, 12 * 12 + 6],
  ["12'6''", 12 * 12 + 6],
  ['12’6”', 12 * 12 + 6],
  ['12′6″', 12 * 12 + 6],
  ['12-6"', 12 * 12 + 6],
  ['12 6"', 12 * 12 + 6],
  ['12–6', 12 * 12 + 6],
  ['12ft6in', 12 * 12 + 6],
  ['12 ft 6 in', 12 * 12 + 6],
  ['12 ft. 6 in.', 12 * 12 + 6],
  ['12ft 6', 12 * 12 + 6],
  ['12 feet 6 inches', 12 * 12 + 6],
  ['12-0', 12 * 12],
  ["12'0", 12 * 12],
  ['12-11', 12 * 12 + 11],
  ['12-6 1/2', 12 * 12 + 6.5],
  ['12-6½', 12 * 12 + 6.5],
  ['12 6 1/2', 12 * 12 + 6.5],
  [`12' 6 1/2"`, 12 * 12 + 6.5],
  [`12'6-1/2"`, 12 * 12 + 6.5],
  [`12' 6½"`, 12 * 12 + 6.5],
  [`12' 6 3/16"`, 12 * 12 + 6.1875],
  [`12' 1/2"`, 12 * 12 + 0.5],
  [`12' 6.5"`, 12 * 12 + 6.5],
  ['12.5', 12.5 * 12],
  ["12.5'", 12.5 * 12],
  ['12.25', 12.25 * 12],
  ['12½', 12.5 * 12],
  ['12 1/2', 12.5 * 12],
  ['150"', 150],
  ['150 in', 150],
  ['150 inches', 150],
  ['150in.', 150],
  ['150 1/2"', 150.5],
  ['150½"', 150.5],
]

test('reads a side in every way painters write feet and inches, on either side of the x', () => {
  for (const [written, inches] of writtenSides) {
    expect([written, short(`Dining ${written} x 10'`)]).toEqual([written, `Dining | ${inches}x120 | usual`])
    expect([written, short(`Dining 10' x ${written}, 2 win`)]).toEqual([
      written,
      `Dining | 120x${inches} | 2 window`,
    ])
    expect([written, short(`Dining: ${written} by ${written} by 9', 1 dr`)]).toEqual([
      written,
      `Dining | ${inches}x${inches}x108 | 1 door`,
    ])
  }
  expect(writtenSides.length * 3).toBeGreaterThan(150)
})

const dining = (rest: string) => `Dining | 168x168x108${rest}`

/** Whole lines of a job in feet. */
const lines: readonly (readonly [string, string])[] = [
  ['Dining 14 x 14 x 9, 3 win, 2 dr, crown', dining(' | 3 window, 2 door | crown')],
  ['Dining 14x14x9 3w 2d crown', dining(' | 3 window, 2 door | crown')],
  ['Dining 14X14X9', dining(' | usual')],
  ['Dining 14×14×9', dining(' | usual')],
  ['Dining 14*14*9', dining(' | usual')],
  ['Dining 14 by 14 by 9', dining(' | usual')],
  ['Dining - 14x14x9', dining(' | usual')],
  ['Dining, 14x14, 9 ceilings', dining(' | usual')],
  ["Dining 14x14 9' clg 3 win", dining(' | 3 window')],
  ['Dining 14x14, ceiling 9, 3 win', dining(' | 3 window')],
  ['Dining 14x14, ceilings at 9', dining(' | usual')],
  ['Dining 14x14, h 9', dining(' | usual')],
  ["Dining 14x14, 9' high ceilings", dining(' | usual')],
  ['Dining 14 x 14 x 108"', dining(' | usual')],
  ['Dining 14 x 14 x 108 in', dining(' | usual')],
  ['Dining 14 x 14 x 9 3 win 2 dr', dining(' | 3 window, 2 door')],
  ["Dining 14' x 14' x 9' 3 win", dining(' | 3 window')],
  ['Dining 14x14x9,3 win,2 dr', dining(' | 3 window, 2 door')],
  ['Dining 14x14x9; 3 win; 2 dr', dining(' | 3 window, 2 door')],
  ['Dining 14x14x9 w/ 3 windows and 2 doors', dining(' | 3 window, 2 door')],
  ['Dining 14x14x9 with three windows, a door', dining(' | 3 window, 1 door')],
  ['Dining 14x14x9 windows: 3, doors: 2', dining(' | 3 window, 2 door')],
  ['Dining 14x14x9 windows x3', dining(' | 3 window')],
  ['Dining 14x14x9 no windows, 1 dr', dining(' | 1 door')],
  ['Dining 14x14x9 0 win 0 dr', dining('')],
  ['Dining 14W x 14L x 9H, 2 win', dining(' | 2 window')],
  ["Dining 14' W x 14' L x 9' H", dining(' | usual')],
  ['- Dining 14 x 14 x 9', dining(' | usual')],
  ['• Dining 14 x 14 x 9', dining(' | usual')],
  ['3. Dining 14 x 14 x 9', dining(' | usual')],
  ['  Dining   14  x  14  x  9  ', dining(' | usual')],
  ['dining 14 x 14 x 9.', dining(' | usual')],
  ['14x14x9 dining 2 win', dining(' | 2 window')],
  ['14 x 14 x 9 Dining, 2 win, 1 dr', dining(' | 2 window, 1 door')],
  ['Dining room 12 x 10', 'Dining room | 144x120 | usual'],
  ['Bedroom 2 12 x 10', 'Bedroom 2 | 144x120 | usual'],
  ['Bedroom 2, 10 x 12', 'Bedroom 2 | 120x144 | usual'],
  ['Bedroom 2: 10 x 12', 'Bedroom 2 | 120x144 | usual'],
  ['Bedroom #2 10 x 12', 'Bedroom #2 | 120x144 | usual'],
  ['BR2 10x12', 'BR2 | 120x144 | usual'],
  ['Room 14, 13 x 10', 'Room 14 | 156x120 | usual'],
  ['2nd floor hall 4 x 18, 5 dr', '2nd floor hall | 48x216 | 5 door'],
  ['Bath 5-6 x 8', 'Bath | 66x96 | usual'],
  ['Closet 2-6 x 5', 'Closet | 30x60 | usual'],
  ['DR 12x10, 1 dr', 'DR | 144x120 | 1 door'],
  ["Kids' room 10x10", "Kids' room | 120x120 | usual"],
  ['Hall (back) 4 x 9', 'Hall (back) | 48x108 | usual'],
  ['Dining 12x10, crown 4-1/2", base 8 in', 'Dining | 144x120 | usual | crown 4.5, baseboard 8'],
  ['Dining 12x10, 4 1/2 crown, 5" base', 'Dining | 144x120 | usual | crown 4.5, baseboard 5'],
  ['Dining 12x10 4 1/2" crown', 'Dining | 144x120 | usual | crown 4.5'],
  [
    'Dining 12x10, crown molding, chair rail, no base',
    'Dining | 144x120 | usual | crown, chairRail, no baseboard',
  ],
  ['Dining 12x10 picture rail baseboards', 'Dining | 144x120 | usual | pictureRail, baseboard'],
  ['Dining 12x10, wainscot', 'Dining | 144x120 | usual | wainscotCap'],
  ['Dining 12x10, 2 french doors', 'Dining | 144x120 | 2 door glazed of 2'],
  ['Dining 12x10, 1 front door, 2 closet doors', 'Dining | 144x120 | 1 door out, 2 door'],
  ['Dining 12x10, 1 ext dr', 'Dining | 144x120 | 1 door out'],
  ['Dining 12x10, 1 flush door', 'Dining | 144x120 | 1 door flush'],
  ['Dining 12x10, 1 louvered door', 'Dining | 144x120 | 1 door louvred'],
  ['Dining 12x10, 2 double win', 'Dining | 144x120 | 2 window of 2'],
  ['Dining 12x10, 2 double-hung windows', 'Dining | 144x120 | 2 window'],
  ['Dining 12x10, 1 picture window', 'Dining | 144x120 | 1 window fixed'],
  ['Dining 12x10, 1 co, 1 fireplace', 'Dining | 144x120 | 1 casedOpening, 1 fireplace'],
  ['Dining 12x10, 2 built-ins', 'Dining | 144x120 | 2 builtIn'],
  ['Dining 12x10, cased opening', 'Dining | 144x120 | 1 casedOpening'],
  ['Dining 12x10, 2 2868 doors', 'Dining | 144x120 | 2 door 32x80'],
  ['Dining 12x10, 2868 door', 'Dining | 144x120 | 1 door 32x80'],
  ['Dining 12x10, 3 win 30x54', 'Dining | 144x120 | 3 window 30x54'],
  ['Dining 12x10, 3 win 30" x 54"', 'Dining | 144x120 | 3 window 30x54'],
  ['Dining 12x10, 3 win 2-6 x 4-6', 'Dining | 144x120 | 3 window 30x54'],
  ['Dining 12x10, 3 win 2-6x4-6, 1 dr 2-8x6-8', 'Dining | 144x120 | 3 window 30x54, 1 door 32x80'],
  ['Dining 12x10, 2 4x6 windows', 'Dining | 144x120 | 2 window 48x72'],
  ['Dining 12x10, 3 win 3 x 5', 'Dining | 144x120 | 3 window 36x60'],
  ['Dining 12x10 (peeling at the sill), 2 win', 'Dining | 144x120 | 2 window |  | peeling at the sill'],
  ['Dining 12x10 note: check ceiling 2x', 'Dining | 144x120 | usual |  | check ceiling 2x'],
  ['Dining 12x10 -- dog sleeps here', 'Dining | 144x120 | usual |  | dog sleeps here'],
  ['Dining 3.81 m x 4.2 m', 'Dining | 150x165.35433070866142 | usual'],
  ['Dining 381 x 300 cm', 'Dining | 150x118.11023622047244 | usual'],
  ['Dining 3810 x 3000 mm', 'Dining | 150x118.11023622047244 | usual'],
  ['Dining 3,81 x 3,0 m', 'Dining | 150x118.11023622047244 | usual'],
]

test('reads whole lines', () => {
  for (const [text, expected] of lines) expect([text, short(text)]).toEqual([text, expected])
  expect(lines.length).toBeGreaterThan(75)
})

test('says nothing where nothing is in doubt', () => {
  for (const [text] of lines) expect([text, sentences(readTapeLine(text, 1, 'imperial'))]).toEqual([text, ''])
})

/** Lines that make a room and say how a part was taken. */
const doubted: readonly (readonly [string, string, string])[] = [
  ['Bedroom 2 10 x 12', 'Bedroom 2 | 120x144 | usual', '“Bedroom 2” is taken as the name'],
  ['Closet 2 6 x 5', 'Closet 2 | 72x60 | usual', '“Closet 2” is taken as the name'],
  ['Bath 5 6 x 8', 'Bath | 66x96 | usual', '“5 6” is taken as 5 feet and inches'],
  ['Room 12 10 x 14', 'Room | 154x168 | usual', '“12 10” is taken as 12 feet and inches'],
  ['Dining 12 13 x 10', 'Dining 12 | 156x120 | usual', '“12” before the size is taken as part of the name'],
  ['Dining 12.6 x 10', 'Dining | 151.2x120 | usual', '“12.6” is taken as a part of a foot'],
  [`Dining 12 x 10' 4" crown`, 'Dining | 144x124 | usual | crown', '“4"” is taken with the size'],
  ['Dining 12-1/2 x 10', 'Dining | 150x120 | usual', '“12-1/2” is taken as 12 1/2 feet'],
  ['Dining 12x10, L shaped', 'Dining | 144x120 | usual |  | L shaped', '“L shaped” is not understood'],
  ['Dining 12x10, 3 wn, 2 dr', 'Dining | 144x120 | 2 door |  | 3 wn', '“3 wn” is not understood'],
  ['Dining 12x10 2 closets', 'Dining | 144x120 | usual', 'a door is set for each'],
  ['Dining 12x10 sloped, crown', 'Dining | 144x120 | usual | crown | sloped', '“sloped” is not understood'],
]

test('says how it took what can be read two ways, and what it did not understand', () => {
  for (const [text, expected, said] of doubted) {
    expect([text, short(text)]).toEqual([text, expected])
    expect(sentences(readTapeLine(text, 1, 'imperial'))).toContain(said)
  }
})

/** Lines of which nothing is made, and the word that is said. */
const stopped: readonly (readonly [string, string])[] = [
  ['Hall', 'No size is understood'],
  ['Hall 12', 'No size is understood'],
  ['Hall 12, 3 win', 'No size is understood'],
  ['Hall twelve by ten', 'No size is understood'],
  ['Dining 12/6 x 10', 'No size is understood'],
  ['Dining 12,6 x 10', 'No size is understood'],
  ['Dining 12:6 x 10', 'No size is understood'],
  ['Dining 3,810 x 4', 'No size is understood'],
  ['10 x 12', 'The room has no name'],
  ['10 x 12, 2 win', 'The room has no name'],
  [`Dining 12' 14" x 10`, '14 inches beside the feet'],
  ['Dining 12-14 x 10', '14 inches beside the feet'],
  [`Dining 12.5' 6" x 10`, 'a part of a foot and inches'],
  ['Dining 14 x 14 x 9 x 3', 'more lengths stand here'],
  ['Dining 14 x 14 x 96', `A height of 96' 0"`],
  ['Dining 14 x 14 x 2', `A height of 2' 0"`],
  ['Dining 140 x 12', `A side of 140' 0"`],
  ['Dining 0 x 12', `A side of 0' 0"`],
  ['Dining .5 x 10', `A side of 0' 6"`],
  ['Dining 14 x 14 x 9, 8 ceilings', 'Two heights stand here'],
  ['Dining 14 x 14, 96 ceiling', `A height of 96' 0"`],
  ['Dining 14 x 12w', 'without a space'],
  ["Dining 10'x12'x8'2win", 'without a space'],
  ['Dining 12x10x', 'without a space'],
  ['Dining 12 x 10 x', '“x” belongs to nothing'],
  ['Dining 12x10, 3', '“3” belongs to nothing'],
  ["Dining 12x10, 9'", "“9'” belongs to nothing"],
  ['Dining 12x10 + 4x3', '“4x3” belongs to nothing'],
  ['Dining 12x10 win 2 dr 1', '“1” belongs to nothing'],
  ['Dining 12x10, 2 crown', '“2” belongs to nothing'],
  ['Dining 12x10, 6/6 win', '“6/6” belongs to nothing'],
  ['Dining 12x10, win 3x5 door', 'may belong to what stands before it or behind it'],
  ['Dining 12x10, 3 win 3x5x2', 'more than a width and a height'],
  ['Dining 12x10, 1 win 40x60 ft', 'An opening of'],
  ['2 bedrooms 12x10', 'says several rooms'],
  ['Dining 3 win 10 x 12', '“3 win” stands in the name'],
  ['Dining 12/6 4 x 10', '“12/6” before the size is not understood'],
]

test('makes nothing of a line with a number that may have been misread, and says which', () => {
  for (const [text, said] of stopped) {
    expect([text, short(text)]).toEqual([text, '-'])
    expect(sentences(readTapeLine(text, 1, 'imperial'))).toContain(said)
  }
})

const metricLines: readonly (readonly [string, string])[] = [
  ['Dining 3.8 x 4.2', 'Dining | 3800x4200 | usual'],
  ['Dining 3,8 x 4,2', 'Dining | 3800x4200 | usual'],
  ['Dining 3,80 x 4,20 x 2,50', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 3,8x4,2x2,5, 3 win', 'Dining | 3800x4200x2500 | 3 window'],
  ['Dining 3,8 x 4,2, 2,5 ceiling', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 3.80m x 4.20m x 2.50m', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 3,8mx4,2mx2,5m', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 380 x 420 x 250 cm', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 380cm x 420cm', 'Dining | 3800x4200 | usual'],
  ['Dining 3800x4200x2500 mm', 'Dining | 3800x4200x2500 | usual'],
  ['Dining 380 x 420', 'Dining | 3800x4200 | usual'],
  ['Dining 3800 x 4200', 'Dining | 3800x4200 | usual'],
  [`Dining 12'6" x 10'`, 'Dining | 3810x3048 | usual'],
  [
    'Dining 3.8 x 4.2, 2 win 0.9 x 1.4, base 140 mm',
    'Dining | 3800x4200 | 2 window 900x1400 | baseboard 140',
  ],
  ['Dining 4 x 5, 2.5 m high', 'Dining | 4000x5000x2500 | usual'],
  ['Bedroom 2 3,5 x 4', 'Bedroom 2 | 3500x4000 | usual'],
  ['Dining 3,8 x 4,2 x 2,5,3 win', '-'],
  ['Dining 3,810 x 4,200', '-'],
  ['Dining 12-6 x 10', '-'],
  ['Dining 12 6 x 10', '-'],
  ['Dining 38 x 4', '-'],
]

test('reads a metric job', () => {
  for (const [text, expected] of metricLines) expect([text, short(text, 'metric')]).toEqual([text, expected])
})

test('headings give the storey and the height of the rooms below them', () => {
  const list = readTapeList('Upstairs:\nceilings 8-6\nBedroom 12 x 10\n\n2nd floor\nAttic', 'imperial')
  expect(
    list.map(({ number, storey, ceilings, room }) => [
      number,
      storey?.level ?? null,
      ceilings,
      room?.name ?? null,
    ]),
  ).toEqual([
    [1, 1, null, null],
    [2, null, 102 * 203_200, null],
    [3, null, null, 'Bedroom'],
    [4, null, null, null],
    [5, 1, null, null],
    [6, 2, null, null],
  ])
  expect(list.every((line) => line.sentences.length === 0)).toBe(true)
})

test('counts the lines of this file', () => {
  const all = writtenSides.length * 3 + lines.length + doubted.length + stopped.length + metricLines.length
  expect(all).toBeGreaterThanOrEqual(200)
})
