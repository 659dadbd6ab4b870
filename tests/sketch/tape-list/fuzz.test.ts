import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Job } from '../../../core/project/job.ts'
import { records } from '../../../core/project/job.ts'
import type { StoreyId } from '../../../core/project/sketch-records.ts'
import { applyCommand } from '../../../core/sketch/apply-command.ts'
import { planTapeRooms } from '../../../core/sketch/tape-list/plan-rooms.ts'
import { readTapeLine, readTapeList } from '../../../core/sketch/tape-list/read-line.ts'
import { contactOf, type RoomRectangle } from '../../../core/sketch/tape-list/rectangles.ts'
import { tidyLine } from '../../../core/sketch/tape-list/tidy-line.ts'
import type { LengthUnitSystem } from '../../../core/units/length.ts'
import { inches } from '../../../core/units/length.ts'
import { buildJob } from '../../fixtures/job-builder.ts'

const pieces = [
  ...[
    'Dining',
    'Bedroom',
    'Hall',
    'BR2',
    'room',
    'peeling',
    'sloped',
    'note:',
    'no',
    'a',
    'two',
    'with',
    'and',
  ],
  ...[
    'win',
    'windows',
    'w',
    'd',
    'dr',
    'door',
    'co',
    'fp',
    'french',
    'double',
    'front',
    'crown',
    'base',
    'chair rail',
  ],
  ...[
    'ceiling',
    'h',
    'high',
    'clg',
    'x',
    'by',
    '*',
    '×',
    ',',
    ';',
    ':',
    '.',
    '-',
    '--',
    '(',
    ')',
    '/',
    '#',
    '+',
    '@',
  ],
  ...[
    "'",
    '"',
    'ft',
    'in',
    'f',
    'm',
    'cm',
    'mm',
    '½',
    '1/2',
    '3/4',
    '12',
    '6',
    '9',
    '10',
    '2',
    '0',
    '14',
    '2868',
    '3.5',
    '3,5',
  ],
  ...[
    ' ',
    ' ',
    ' ',
    ' ',
    'x 10',
    '12 x 10',
    '12-6',
    '12 6',
    "12'6",
    '9 ceilings',
    '3 win',
    '3w',
    '2d',
    '30x54',
    '“',
    'é',
    '−',
  ],
]

const soup = fc.array(fc.constantFrom(...pieces), { maxLength: 14 }).map((parts) => parts.join(''))
const system = fc.constantFrom<LengthUnitSystem>('imperial', 'metric')

const signs = (text: string) => [...text.toLowerCase().replace(/[^a-z\d]/g, '')].sort().join('')

test('every letter and figure of a line is taken for something or said to be not understood', () => {
  let rooms = 0
  fc.assert(
    fc.property(
      fc.oneof(
        soup,
        soup.map((text) => `Dining 12 x 10 ${text}`),
        fc.string(),
      ),
      system,
      (text, units) => {
        const line = readTapeLine(text, 1, units)
        const parts = line.parts.map((part) => part.text).join('')
        expect(signs(parts)).toBe(signs(tidyLine(text, units)))
        const unread = line.parts.filter(({ role }) => role === 'unread')
        for (const part of unread) {
          expect(line.sentences.some((sentence) => sentence.part.includes(part.text))).toBe(true)
        }
        const isStopped = line.sentences.some(({ weight }) => weight === 'stop')
        const isHeading = line.storey !== null || line.ceilings !== null
        if (signs(parts) !== '')
          expect([line.room !== null, isHeading, isStopped].filter(Boolean)).toHaveLength(1)
        if (line.room !== null) rooms++
      },
    ),
    { numRuns: 6000, seed: 20270415 },
  )
  expect(rooms).toBeGreaterThan(800)
})

/** Styles that write quarter inches exactly; `whole` ones only whole inches. */
const styles: readonly ((feet: number, quarters: number) => string)[] = [
  (feet, quarters) => `${feet}'${spoken(quarters, '0')}"`,
  (feet, quarters) => `${feet}' ${spoken(quarters, '0')}"`,
  (feet, quarters) => dashed(feet, quarters),
  (feet, quarters) => `${feet} ft ${spoken(quarters, '0')} in`,
  (feet, quarters) => `${feet}f${spoken(quarters, '0')}`,
  (feet, quarters) =>
    quarters % 4 === 0 && quarters > 0 ? `${feet} ${quarters / 4}` : dashed(feet, quarters),
  (feet, quarters) => `${spoken(feet * 48 + quarters, '0')}"`,
]

/** `5-0 1/4`: a fraction right behind the hyphen would be one of a foot. */
function dashed(feet: number, quarters: number): string {
  return quarters > 0 && quarters < 4
    ? `${feet}-0 ${spoken(quarters, '0')}`
    : `${feet}-${spoken(quarters, '0')}`
}

function spoken(quarters: number, none: string): string {
  const whole = Math.floor(quarters / 4)
  const rest = ['', '1/4', '1/2', '3/4'][quarters % 4] ?? ''
  if (whole === 0) return rest === '' ? none : rest
  return rest === '' ? String(whole) : `${whole} ${rest}`
}

const side = fc.record({ feet: fc.integer({ min: 5, max: 30 }), quarters: fc.integer({ min: 0, max: 47 }) })

test('a size written in any style comes back exactly, with what stands behind it', () => {
  const style = fc.constantFrom(...styles)
  const counts = fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 9 }))
  const separator = fc.constantFrom(' x ', 'x', ' X ', ' by ', '×')
  fc.assert(
    fc.property(
      side,
      side,
      style,
      style,
      separator,
      counts,
      fc.constantFrom(', ', '; ', ' ', ' w/ '),
      (a, b, one, other, x, [win, dr], gap) => {
        const text = `Living room, ${one(a.feet, a.quarters)}${x}${other(b.feet, b.quarters)}${gap}${win} win${gap}${dr} dr, crown`
        const line = readTapeLine(text, 1, 'imperial')
        expect([text, line.sentences.map(({ sentence }) => sentence)]).toEqual([text, []])
        expect([text, line.room?.name, line.room?.width, line.room?.depth]).toEqual([
          text,
          'Living room',
          inches(a.feet * 12 + a.quarters / 4),
          inches(b.feet * 12 + b.quarters / 4),
        ])
        expect(line.room?.openings.map(({ kind, count }) => [kind, count])).toEqual([
          ['window', win],
          ['door', dr],
        ])
      },
    ),
    { numRuns: 1500, seed: 20270416 },
  )
})

const names = [
  'Hall',
  'Living',
  'Dining',
  'Kitchen',
  'Entry',
  'Bath',
  'Bedroom',
  'Closet',
  'Attic room',
  'Study',
  'Solarium',
]
const listed = fc.array(
  fc.record({
    name: fc.constantFrom(...names),
    width: fc.integer({ min: 3, max: 20 }),
    depth: fc.integer({ min: 3, max: 20 }),
    doors: fc.integer({ min: 0, max: 4 }),
    windows: fc.integer({ min: 0, max: 4 }),
    upstairs: fc.boolean(),
  }),
  { minLength: 1, maxLength: 9 },
)

function planned(job: Job, text: string) {
  let serial = 0
  const lines = readTapeList(text, 'imperial')
  return { lines, plan: planTapeRooms(job, lines, 'ground' as StoreyId, (prefix) => `${prefix}-${++serial}`) }
}

test('rooms of any list have what their lines say, stand clear of each other, and may be stored', () => {
  let shared = 0
  fc.assert(
    fc.property(listed, (rooms) => {
      const job = buildJob({})
      const text = rooms
        .map(({ name, width, depth, doors, windows, upstairs }) =>
          [
            ...(upstairs ? ['Upstairs'] : []),
            `${name} ${width} x ${depth}, ${doors} dr, ${windows} win`,
          ].join('\n'),
        )
        .join('\n')
      const { lines, plan } = planned(job, text)
      const outcome = applyCommand(job, { kind: 'addDrawn', drawn: plan.drawn, joins: plan.joins })
      expect(outcome).toEqual({ ok: true, value: plan.job })
      for (const line of lines.filter((one) => one.room !== null)) {
        const roomId = plan.roomIds.get(line.number)
        const said = plan.sentences.get(line.number) ?? []
        expect(roomId === undefined).toBe(said.some(({ weight }) => weight === 'stop'))
        if (roomId === undefined) continue
        const openings = records(plan.job.openings).filter(
          (one) => one.roomId === roomId || one.far?.roomId === roomId,
        )
        for (const kind of ['door', 'window'] as const) {
          const wanted = line.room?.openings.find((one) => one.kind === kind)?.count ?? 0
          expect(openings.filter((one) => one.kind === kind)).toHaveLength(wanted)
        }
        shared += openings.filter((one) => one.far !== null).length / 2
      }
      for (const [index, one] of plan.drawn.rooms.entries()) {
        for (const other of plan.drawn.rooms.slice(index + 1)) {
          if (one.storeyId === other.storeyId) expect(overlap(placeOf(one), placeOf(other))).toBe(false)
        }
      }
    }),
    { numRuns: 250, seed: 20270417 },
  )
  expect(shared).toBeGreaterThan(200)
})

function placeOf({ corners }: Job['rooms'][string]): RoomRectangle {
  const [first, , third] = corners
  const { x, y } = first ?? { x: 0, y: 0 }
  return { x, y, width: (third?.x ?? 0) - x, depth: (third?.y ?? 0) - y }
}

function overlap(one: RoomRectangle, other: RoomRectangle): boolean {
  return (
    one.x < other.x + other.width &&
    other.x < one.x + one.width &&
    one.y < other.y + other.depth &&
    other.y < one.y + one.depth
  )
}

test('two places back on each other only across the given gap', () => {
  const place = { x: 0, y: 0, width: 10, depth: 10 }
  expect(contactOf(place, { x: 12, y: 4, width: 5, depth: 20 }, 2)).toEqual({ side: 'east', from: 4, to: 10 })
  expect(contactOf(place, { x: 13, y: 4, width: 5, depth: 20 }, 2)).toBeNull()
  expect(contactOf(place, { x: 12, y: 12, width: 5, depth: 20 }, 2)).toBeNull()
})
