import { expect, test } from 'vitest'
import { pinchedView } from '../../renderer/canvas/fingers.ts'
import { firstView, toHouse } from '../../renderer/canvas/view.ts'

const at = (left: number, top: number) => ({ left, top })

test('what lies between two fingers stays between them while they part', () => {
  const view = pinchedView(firstView, [at(100, 100), at(200, 100)], [at(50, 140), at(250, 140)])
  expect(view.scale).toBeCloseTo(firstView.scale * 2, 12)
  const [before, after] = [toHouse(firstView, at(150, 100)), toHouse(view, at(150, 140))]
  expect(after.x).toBeCloseTo(before.x, 3)
  expect(after.y).toBeCloseTo(before.y, 3)
})

test('two fingers that keep their distance only shift the sheet', () => {
  const view = pinchedView(firstView, [at(0, 0), at(0, 80)], [at(30, 10), at(30, 90)])
  expect(view).toEqual({ ...firstView, x: firstView.x + 30, y: firstView.y + 10 })
})
