import fc from 'fast-check'
import { expect, test } from 'vitest'
import { roomSpan } from '../../core/project/heights.ts'
import { lightCells, lightSize, type SashFrame } from '../../core/project/opening-layout.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

test('a room is as long on an axis wherever it lies on the plan', () => {
  const study = twoRooms().rooms.study
  if (study === undefined) throw new Error('the study is missing')
  const apart = 8000 * 5000
  const moved = {
    ...study,
    corners: study.corners.map((corner) => ({ ...corner, x: corner.x + apart, y: corner.y - apart })),
  }
  expect(roomSpan(study, 'x')).toBeGreaterThan(0)
  expect(roomSpan(moved as unknown as typeof study, 'x')).toBe(roomSpan(study, 'x'))
  expect(roomSpan(moved as unknown as typeof study, 'y')).toBe(roomSpan(study, 'y'))
})

const members = { stile: 50, topRail: 60, bottomRail: 80, meetingRail: 40, muntin: 20 }

test('the lights of a sash fill its frame but for the members, row by row from the bottom', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 6 }),
      fc.integer({ min: 1, max: 6 }),
      (lightsAcross, lightsDown) => {
        const frame = {
          frame: { from: 1000, to: 2000, bottom: 300, top: 1700 },
          members,
          lightsAcross,
          lightsDown,
        } as unknown as SashFrame
        const cells = lightCells(frame)
        const { width, height } = lightSize(frame)
        expect(cells).toHaveLength(lightsAcross * lightsDown)
        for (const [index, { from, to, bottom, top }] of cells.entries()) {
          expect(to - from).toBeCloseTo(width, 6)
          expect(top - bottom).toBeCloseTo(height, 6)
          const next = cells[index + 1]
          if (next !== undefined && (index + 1) % lightsAcross !== 0)
            expect(next.from - to).toBeCloseTo(20, 6)
          const over = cells[index + lightsAcross]
          if (over !== undefined) expect(over.bottom - top).toBeCloseTo(20, 6)
        }
        expect(cells[0]?.from).toBeCloseTo(1000 + 50, 6)
        expect(cells[0]?.bottom).toBeCloseTo(300 + 80, 6)
        expect(cells.at(-1)?.to).toBeCloseTo(2000 - 50, 6)
        expect(cells.at(-1)?.top).toBeCloseTo(1700 - 60, 6)
      },
    ),
  )
})
