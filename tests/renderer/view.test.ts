import { expect, test } from 'vitest'
import { feet } from '../../core/units/length.ts'
import { fitView, toHouse, toScreen, zoomAt } from '../../renderer/canvas/view.ts'

const view = { scale: 40 / 8_000_000, x: 80, y: 120 }

test('a place on the plan and its pixel lead back to one another', () => {
  const place = { x: feet(7, 3), y: feet(-2) }
  const back = toHouse(view, toScreen(view, place))
  expect(back.x).toBeCloseTo(place.x, 3)
  expect(back.y).toBeCloseTo(place.y, 3)
})

test('zooming keeps the place under the pointer where it is', () => {
  const pointer = { left: 300, top: 200 }
  const before = toHouse(view, pointer)
  const after = toHouse(zoomAt(view, pointer, 3), pointer)
  expect(after.x).toBeCloseTo(before.x, 3)
  expect(after.y).toBeCloseTo(before.y, 3)
})

test('the whole storey stands inside the margins, its middle in the middle of the sheet', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: feet(30), y: feet(20) },
  ]
  const size = { width: 700, height: 500 }
  const fitted = fitView(corners, size)
  const [a, b] = corners.map((corner) => toScreen(fitted, corner))
  // 360 pixels for 20 ft are fewer to the foot than 560 for 30 ft, so the height fills its margins.
  expect(a?.top).toBeCloseTo(70, 6)
  expect(b?.top).toBeCloseTo(500 - 70, 6)
  expect(((a?.left ?? 0) + (b?.left ?? 0)) / 2).toBeCloseTo(350, 6)
})
