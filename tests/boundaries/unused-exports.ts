import { dirname, join } from 'node:path/posix'
import type { Reading } from './source-reading.ts'

/** An export that looks unused and stands for good reason. */
export interface Exception {
  /** `core/units/area.ts sumAreas`. */
  readonly export: string
  readonly reason: string
}

/**
 * Every export of the program that the program does not reach, as `path name`: no other file of the program imports it, and its own
 * file does not use it or no test imports it either. Sorted as the files are; an exception that is none is listed as well.
 */
export function findUnusedExports(
  program: readonly Reading[],
  tests: readonly Reading[],
  exceptions: readonly Exception[],
): readonly string[] {
  const byProgram = namesTaken(program)
  const byTests = namesTaken(tests)
  const unused = program.flatMap(({ path, exports }) =>
    exports
      .filter(({ name, usedAtHome }) => {
        const isTested = takes(byTests, path, name)
        return !takes(byProgram, path, name) && !(usedAtHome && isTested)
      })
      .map(({ name }) => `${path} ${name}`),
  )
  const excepted = exceptions.map((exception) => exception.export)
  const idle = excepted.filter((name) => !unused.includes(name))
  return [
    ...unused.filter((name) => !excepted.includes(name)),
    ...idle.map((name) => `${name} is no exception`),
  ]
}

type NamesByFile = ReadonlyMap<string, ReadonlySet<string>>

function namesTaken(readings: readonly Reading[]): NamesByFile {
  const taken = new Map<string, Set<string>>()
  for (const { path, takings } of readings) {
    for (const { specifier, names } of takings.filter((taking) => taking.specifier.startsWith('.'))) {
      const target = join(dirname(path), specifier.replace(/\?.*$/, ''))
      taken.set(target, new Set([...(taken.get(target) ?? []), ...names]))
    }
  }
  return taken
}

function takes(taken: NamesByFile, path: string, name: string): boolean {
  const names = taken.get(path)
  return names !== undefined && (names.has('*') || names.has(name))
}
