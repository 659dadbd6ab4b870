import { expect, test } from 'vitest'
import { dotRadius, roomMarks } from '../../renderer/panels/walk/mark-places.ts'
import { rectangularRoom } from '../fixtures/job-builder.ts'

/** A screen point is 15 mm, as in a house 25 ft across on a plan of 520 points. */
const pixel = 15
const passage = rectangularRoom('Back passage', 3, 14)

function spots(openings: readonly { readonly x: number; readonly y: number }[]) {
  const { name, ceiling, walls } = roomMarks(passage, () => 1, true, openings, pixel)
  return { name, dots: [ceiling, ...walls.values(), ...openings] }
}

test('a narrow room has its name in two lines, and its counts neither on the name nor on one another', () => {
  const { name, dots } = spots([])
  expect(name.lines).toEqual(['Back', 'passage'])
  expect(dots).toHaveLength(5)
  for (const dot of dots) {
    expect(Math.abs(dot.y - name.y)).toBeGreaterThan(name.size * 1.15 + dotRadius * pixel)
    const nearest = Math.min(
      ...dots.filter((other) => other !== dot).map(({ x, y }) => Math.hypot(x - dot.x, y - dot.y)),
    )
    expect(nearest).toBeGreaterThan(2 * dotRadius * pixel)
  }
})

test('counts give way to those of openings', () => {
  const [ceiling] = spots([]).dots
  if (ceiling === undefined) throw new Error('the ceiling has no count')
  const [moved] = spots([{ x: ceiling.x, y: ceiling.y }]).dots
  expect(Math.abs((moved?.y ?? 0) - ceiling.y)).toBeGreaterThan(2 * dotRadius * pixel)
})
