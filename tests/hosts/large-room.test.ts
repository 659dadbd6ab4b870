import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readJobFile } from '../../core/project/job-file.ts'
import { planFiles } from '../../electron/headless/plan-files.ts'
import { granted } from '../storage/books.ts'

/** The plain room of the demonstration jobs with nothing in it, as a square of so many meters. */
function squareRoom(metres: number): string {
  const file = JSON.parse(
    readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'plain-room.json'), 'utf8'),
  )
  const side = metres * 1000
  const [room] = file.rooms
  const places = [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ] as const
  room.corners = room.corners.map((corner: object, index: number) => ({
    ...corner,
    x: places[index]?.[0],
    y: places[index]?.[1],
  }))
  const ofHouse = (records: readonly { readonly scope: { readonly level: string } }[]) =>
    records.filter(({ scope }) => scope.level === 'house')
  return JSON.stringify({
    ...file,
    rooms: [room],
    openings: [],
    conditions: [],
    keptItems: [],
    builtItems: [],
    ceilingOpenings: [],
    trimRuns: [],
    existing: ofHouse(file.existing),
    finishes: ofHouse(file.finishes),
  })
}

test.each([12, 18, 25])('a square room of %d m is planned, however many days its ceiling takes', (metres) => {
  const job = granted(readJobFile(squareRoom(metres)))
  const { files } = granted(planFiles(job, '2027-03-26T18:00', () => undefined))
  const { tasks } = JSON.parse(files['schedule.json'] ?? '') as { readonly tasks: readonly unknown[] }
  expect(tasks.length).toBeGreaterThan(5)
})
