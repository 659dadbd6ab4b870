import { expect, test } from 'vitest'
import { present } from '../../core/lists/lists.ts'
import { records } from '../../core/project/job.ts'
import { applyCommands } from '../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../core/sketch/commands.ts'
import { sketchNews } from '../../core/sketch/sketch-news.ts'
import { feet } from '../../core/units/length.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const job = plainJob()
const room = present(records(job.rooms)[0])

function after(...commands: readonly SketchCommand[]) {
  const outcome = applyCommands(job, commands)
  if (!outcome.ok) throw new Error(outcome.problem.sentence)
  return outcome.value
}

test('a room that was moved is said with its way, across before down', () => {
  const moved = after({ kind: 'moveRooms', roomIds: [room.id], dx: feet(2), dy: -feet(1) })
  expect(sketchNews(job, moved)).toBe(`${room.name} moved 2' 0" right and 1' 0" up.`)
  expect(sketchNews(moved, job)).toBe(`${room.name} moved 2' 0" left and 1' 0" down.`)
})

test('nothing is said where rooms and openings are the same', () => {
  expect(sketchNews(job, { ...job, header: { ...job.header, title: 'Another' } })).toBe('')
})

test('a room that went, and many at once', () => {
  const gone = { ...job, rooms: {}, openings: {} }
  const openings = records(job.openings).length
  expect(sketchNews(job, gone)).toContain(`${room.name} removed.`)
  expect(sketchNews(job, gone).includes('more changed.')).toBe(openings > 2)
  expect(sketchNews(gone, { ...job, openings: {} })).toMatch(
    new RegExp(`^${room.name} added, .* by .* sq ft\\.$`),
  )
})
