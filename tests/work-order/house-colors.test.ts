import { expect, test } from 'vitest'
import type { RoomId } from '../../core/project/sketch-records.ts'
import type { Colour, Finish } from '../../core/project/survey-records.ts'
import type { SurfaceClass } from '../../core/project/vocabulary.ts'
import { colorsByLetter, houseColors } from '../../core/work-order/house-colors.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { plainTakeoff } from '../fixtures/plain-room.ts'
import { sampleInput, sampleOrder } from './sample-order.ts'

const { job } = sampleInput()
const study = 'study' as RoomId

function colour(id: string, shown: string): Colour {
  return { id: id as Colour['id'], name: id, code: '', depth: 'light', shown }
}

function finish(surfaceClass: SurfaceClass, colourId: string): Finish {
  return {
    id: surfaceClass as Finish['id'],
    scope: { level: 'house', surfaceClass },
    paint: true,
    colourId: colourId as Colour['id'],
    sheen: 'eggshell',
    productClass: 'latexWall',
  }
}

const twoColors = {
  ...job,
  finishes: {
    walls: finish('walls', 'moss'),
    ceiling: finish('ceiling', 'chalk'),
    trim: finish('trim', 'chalk'),
  },
  colours: {
    moss: colour('moss', '#667755'),
    unused: colour('unused', '#ff0000'),
    chalk: colour('chalk', '#eeeeee'),
  },
}

test('colors that are on something have letters in the order of the job, and others have none', () => {
  const { marks } = houseColors(twoColors, plainTakeoff)
  expect(marks).toEqual([
    { letter: 'a', name: 'moss', shown: '#667755' },
    { letter: 'b', name: 'chalk', shown: '#eeeeee' },
  ])
})

test('a room says by letters what its walls and ceiling get', () => {
  const room = houseColors(twoColors, plainTakeoff).rooms.get(study)
  if (room === undefined) throw new Error('the study has no colors')
  expect(room.ceiling?.name).toBe('chalk')
  expect(new Set([...room.walls.values()].map(({ upper }) => upper?.name))).toEqual(new Set(['moss']))
  expect(colorsByLetter(room)).toEqual(['walls a', 'ceiling b'])
})

test('what is left as it is has no color', () => {
  const bare = { ...twoColors, finishes: {} }
  const { marks, rooms } = houseColors(bare, plainTakeoff)
  expect(marks).toEqual([])
  expect(rooms.get(study)?.ceiling).toBeNull()
  expect([...(rooms.get(study)?.walls.values() ?? [])].map(({ upper }) => upper)).not.toContain('moss')
})

test('the client’s page has every color by letter and name, and the household’s page the weeks', () => {
  const order = sampleOrder(twoColors)
  const page = workOrderHtml(order, 'letter', ['houseColors'])
  expect(page).toContain('<b>a</b> moss')
  expect(page).toContain('fill="#eeeeee"')
  expect(page).not.toContain('#ff0000')
  const family = workOrderHtml(order, 'a4', ['family'])
  expect(family.match(/<figcaption>/g)).toHaveLength(order.house.days.length)
  expect(order.house.days[0]?.rooms.get(study)?.kind).toBe('inWork')
})
