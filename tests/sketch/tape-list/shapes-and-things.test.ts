import { expect, test } from 'vitest'
import { records } from '../../../core/project/job.ts'
import { readTapeLine } from '../../../core/sketch/tape-list/read-line.ts'
import { feet } from '../../../core/units/length.ts'
import { buildJob } from '../../fixtures/job-builder.ts'
import { planned } from './plan-a-list.ts'

function said(text: string): string {
  return readTapeLine(text, 1, 'imperial')
    .sentences.map(({ weight, sentence }) => `${weight}: ${sentence}`)
    .join('\n')
}

const counted: readonly (readonly [string, number | null, number, number])[] = [
  ['Dining 14 x 12, 3 lights', 3, 0, 0],
  ['Dining 14 x 12, 2 ceiling lights, 1 sconce', 3, 0, 0],
  ['Dining 14 x 12, chandelier', 1, 0, 0],
  ['Dining 14 x 12, no lights', 0, 0, 0],
  ['Dining 14 x 12, light blue', null, 0, 0],
  ['Dining 14 x 12, 1 radiator', null, 1, 0],
  ['Dining 14 x 12 x 9, two rads, 3 win', null, 2, 0],
  ['Dining 14 x 12, radiator, 2 fixtures', 2, 1, 0],
  ['Dining 14 x 12, 2 closets', null, 0, 2],
  ['Dining 14 x 12, 2 closet doors', null, 0, 0],
  ['10 x 12 Closet', null, 0, 0],
]

test('counts lights, radiators and closets', () => {
  for (const [text, lights, radiators, closets] of counted) {
    const { room } = readTapeLine(text, 1, 'imperial')
    expect([text, room?.lights, room?.radiators, room?.closets]).toEqual([text, lights, radiators, closets])
  }
})

test('makes lights and radiators, and a door for each closet beside the usual openings', () => {
  const { drawn } = planned(buildJob({}), 'Bedroom 14 x 12, 3 lights, 2 radiators, 2 closets')
  expect(drawn.keptItems.find(({ kind }) => kind === 'lightFixture')?.count).toBe(3)
  expect(drawn.builtItems.map(({ kind }) => kind)).toEqual(['radiator', 'radiator'])
  expect(drawn.openings.map(({ kind }) => kind).sort()).toEqual(['door', 'door', 'door', 'window', 'window'])
  expect(said('Bedroom 14 x 12, 2 closets')).toContain('say: “2 closets”: a door is set for each')
})

const slopes: readonly (readonly [string, number, number])[] = [
  ['Attic room 10 x 14, low 5 high 8', 60, 96],
  ['Attic room 10 x 14 low 4-6, high 8', 54, 96],
  [`Attic room 10 x 14, low side 4'6" high side 8'`, 54, 96],
  ['Attic room 10 x 14, 5 low 8 high', 60, 96],
  ['Attic room 10 x 14, slopes 5 to 8', 60, 96],
  ['Attic room 10 x 14, sloping from 8 to 5, 1 win', 60, 96],
]

test('reads a ceiling that slopes one way', () => {
  for (const [text, low, high] of slopes) {
    const { room } = readTapeLine(text, 1, 'imperial')
    expect([text, room?.slope]).toEqual([text, { low: feet(0, low), high: feet(0, high) }])
    expect([text, room?.note]).toEqual([text, ''])
  }
})

test('says what is wrong with a slope or a missing corner', () => {
  const wrong: readonly (readonly [string, string])[] = [
    ['Attic room 10 x 14, low 8 high 5', 'The low side is higher'],
    ['Attic room 10 x 14, low 8 high 8', 'Both sides of the slope are the same height'],
    ['Attic room 10 x 14 x 8, low 5 high 8', 'leave the other height out'],
    ['Attic room 10 x 14, low 5 high 80', 'A height of'],
    ['Kitchen 14 x 12 less 15 x 5', 'has to be smaller'],
    ['Kitchen 14 x 12 less 4 x 5, less 2 x 2', 'less one corner'],
    ['Kitchen 14 x 12 less 4', 'has one side'],
  ]
  for (const [text, sentence] of wrong) {
    expect([text, readTapeLine(text, 1, 'imperial').room]).toEqual([text, null])
    expect(said(text)).toContain(sentence)
  }
})

test('a slope goes down to a side under which the openings fit', () => {
  const { drawn, sentences } = planned(buildJob({}), 'Attic room 10 x 14, low 5 high 8, 1 dr, 1 win 2-6 x 3')
  expect([...sentences.values()]).toEqual([])
  expect(drawn.rooms.map(({ ceiling }) => ceiling.kind)).toEqual(['shed'])
})

test('a room less a corner is L-shaped, with its openings on the walls it has', () => {
  const { drawn } = planned(
    buildJob({}),
    'Hall 4 x 30, 6 dr\nKitchen 14 x 12 less 4 x 5, 3 win, 2 dr\nBath 6 x 8, 1 win, 1 dr',
  )
  const kitchen = drawn.rooms.find(({ name }) => name === 'Kitchen')
  const corners = kitchen?.corners ?? []
  expect(corners).toHaveLength(6)
  const area = corners.reduce((sum, { x, y }, index) => {
    const next = corners[(index + 1) % corners.length] ?? { x, y }
    return sum + (x * next.y - next.x * y) / 2
  }, 0)
  expect(area / (feet(1) * feet(1))).toBeCloseTo(14 * 12 - 4 * 5)
  const inner = [corners[2]?.wallId, corners[3]?.wallId]
  expect(
    drawn.openings.filter(({ wallId, far }) => inner.includes(wallId) || inner.includes(far?.wallId)),
  ).toEqual([])
})

test('new rooms stand beside rooms drawn before, clear of them and of their windows', () => {
  const first = planned(buildJob({}), 'Hall 4 x 18, 2 dr\nLiving 15 x 13, 3 win, 1 dr')
  const next = planned(first.job, 'Den 10 x 9, 1 win, 1 dr\nBath 5 x 8, 1 dr')
  const boxes = records(next.job.rooms).map(({ corners }) => ({
    left: Math.min(...corners.map(({ x }) => x)),
    right: Math.max(...corners.map(({ x }) => x)),
    top: Math.min(...corners.map(({ y }) => y)),
    bottom: Math.max(...corners.map(({ y }) => y)),
  }))
  expect(boxes).toHaveLength(4)
  for (const [index, one] of boxes.entries()) {
    const others = boxes.filter((_, at) => at !== index)
    expect(
      others.some(
        (two) => one.left < two.right && two.left < one.right && one.top < two.bottom && two.top < one.bottom,
      ),
    ).toBe(false)
    const near = others.some(
      (two) =>
        Math.max(one.left - two.right, two.left - one.right, one.top - two.bottom, two.top - one.bottom) <
        feet(1),
    )
    expect(near).toBe(true)
  }
  // What stood before is as it was, but for what lies behind its walls.
  expect(
    records(next.job.rooms)
      .slice(0, 2)
      .map(({ corners }) => corners.map(({ x, y }) => [x, y])),
  ).toEqual(first.drawn.rooms.map(({ corners }) => corners.map(({ x, y }) => [x, y])))
  for (const opening of records(first.job.openings).filter(({ kind }) => kind === 'window'))
    expect(
      next.job.rooms[opening.roomId]?.corners.find(({ wallId }) => wallId === opening.wallId)?.behind,
    ).toBe('outside')
})
