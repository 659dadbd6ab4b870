import { builtinModules } from 'node:module'
import { dirname, join } from 'node:path/posix'
import type { RoomRule } from './room-table.ts'
import type { Reading } from './source-reading.ts'

/** Every import that the table does not allow, and every look at the clock in core, as sentences. */
export function findOffences(readings: readonly Reading[], table: readonly RoomRule[]): readonly string[] {
  return readings.flatMap((reading) => {
    const rule = ruleOf(reading.path, table)
    if (rule === undefined) return [`${reading.path} stands in no room of the table`]
    const imports = reading.imports
      .filter((specifier) => !isAllowed(reading.path, specifier, rule))
      .map((specifier) => `${reading.path} may not import ${specifier}`)
    const glances = rule.room.startsWith('core/') ? reading.clockAndDice : []
    return [...imports, ...glances.map((glance) => `${reading.path} may not use ${glance}`)]
  })
}

/** The rule of the innermost room a file stands in. */
function ruleOf(path: string, table: readonly RoomRule[]): RoomRule | undefined {
  return table
    .filter(({ room }) => isInside(path, room))
    .reduce<RoomRule | undefined>(
      (best, rule) => (rule.room.length > (best?.room.length ?? 0) ? rule : best),
      undefined,
    )
}

function isAllowed(path: string, specifier: string, rule: RoomRule): boolean {
  if (specifier === '(computed)') return rule.room === 'electron/launch'
  if (!specifier.startsWith('.')) return rule.mayName.includes(packageOf(specifier))
  // Vite's suffixes (`?raw`, `?worker`) say how to load a file, not which.
  const target = join(dirname(path), specifier.replace(/\?.*$/, ''))
  return [rule.room, ...rule.mayEnter].some((room) => isInside(target, room))
}

function isInside(path: string, room: string): boolean {
  return path.startsWith(`${room}/`)
}

function packageOf(specifier: string): string {
  const name = specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/')
  return specifier.startsWith('node:') || builtinModules.includes(name) ? 'node:' : name
}

/** The table as DEVELOPERS.md prints it. */
export function printTable(table: readonly RoomRule[]): readonly string[] {
  const words = (names: readonly string[]) => (names.length === 0 ? '–' : names.join(', '))
  return table.map(({ room, mayEnter, mayName }) => {
    const toTheLeft = room.startsWith('core/') && mayEnter.length > 0
    return `| ${room} | ${toTheLeft ? 'core rooms to its left' : words(mayEnter)} | ${words(mayName)} |`
  })
}
