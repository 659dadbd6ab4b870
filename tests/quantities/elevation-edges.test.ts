import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import type { HeightPoint } from '../../core/geometry/height-line.ts'
import { records } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { roomElevations } from '../../core/quantities/elevation.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { granted } from '../storage/books.ts'

function oldHouse() {
  const path = join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json')
  return granted(readJobFile(readFileSync(path, 'utf8')))
}

function lengthOf(line: readonly HeightPoint[]): number {
  return line.slice(1).reduce((sum, point, index) => {
    const before = line[index] ?? point
    return sum + Math.hypot(point.at - before.at, point.height - before.height)
  }, 0)
}

test('the lines drawn as cut in are as long together as the cutting-in of the wall, on every wall of the old house', () => {
  const job = oldHouse()
  const takeoff = takeOff(job)
  let walls = 0
  for (const room of records(job.rooms)) {
    roomElevations(job, room.id).forEach((wall, index) => {
      const cutIn = wall.edges.filter((edge) => edge.kind === 'cutIn')
      const drawn = cutIn.reduce((sum, edge) => sum + lengthOf(edge.line), 0)
      const measured = wall.zones.reduce(
        (sum, zone) => sum + (takeoff.byKey.get(zone.key)?.cuttingIn ?? 0),
        0,
      )
      // Each zone's figure is rounded once to whole units of 1/8000 mm.
      expect(Math.abs(drawn - measured), `${room.name}, wall ${index}`).toBeLessThanOrEqual(2)
      walls++
    })
  }
  expect(walls).toBeGreaterThan(60)
})
