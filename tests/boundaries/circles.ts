import { dirname, join } from 'node:path/posix'
import type { Reading } from './source-reading.ts'

/** Every set of files that import one another in a circle, types included; the files of each in the order they are come upon. */
export function findCircles(readings: readonly Reading[]): readonly (readonly string[])[] {
  const imports = new Map(
    readings.map(({ path, imports: specifiers }) => [
      path,
      specifiers.map((specifier) => join(dirname(path), specifier.replace(/\?.*$/, ''))),
    ]),
  )
  const seen = new Set<string>()
  const circles: (readonly string[])[] = []
  function follow(path: string, road: readonly string[]): void {
    const at = road.indexOf(path)
    if (at >= 0) circles.push(road.slice(at))
    if (at >= 0 || seen.has(path)) return
    for (const next of imports.get(path) ?? []) follow(next, [...road, path])
    seen.add(path)
  }
  for (const path of imports.keys()) follow(path, [])
  return circles
}
