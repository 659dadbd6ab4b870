import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import type { Outcome } from '../../core/project/problem.ts'
import { createKeeper, type Keeper, keeperTimes } from '../../electron/storage/keeper.ts'
import { type Migration, readMigrations } from '../../electron/storage/migrations.ts'
import type { SessionOptions } from '../../electron/storage/session.ts'
import { createStore, type Store } from '../../electron/storage/store.ts'

export const migrations = readMigrations(join(import.meta.dirname, '..', '..', 'migrations'))

/** A folder of this test alone, gone when it ends. */
export function testFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'coatwright-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** A clock that moves on by a minute each time it is asked, from 2027-03-29 08:00 UTC and so many hours. */
export function steadyClock(hours = 0): () => string {
  let minutes = 60 * hours
  return () => new Date(Date.UTC(2027, 2, 29, 8, minutes++)).toISOString()
}

/** Opens a book with predictable keys `job-1`, `job-2` ... and a clock of its own that starts `hours` later. */
export function tryBook(
  path: string,
  steps: readonly Migration[] = migrations,
  firstKey = 1,
  hours = 0,
): Outcome<Store> {
  let key = firstKey
  const store = createStore(path, {
    migrations: steps,
    now: steadyClock(hours),
    newJobKey: () => `job-${key++}`,
  })
  if (store.ok) onTestFinished(() => store.value.close())
  return store
}

/** Opens a book as the hosts do, with all care; closed when the test ends. */
export async function openKeeper(path: string, changes: Partial<SessionOptions> = {}): Promise<Keeper> {
  return granted(await tryKeeper(path, changes))
}

export async function tryKeeper(
  path: string,
  changes: Partial<SessionOptions> = {},
): Promise<Outcome<Keeper>> {
  const keeper = await createKeeper(path, {
    migrations,
    now: steadyClock(),
    newJobKey: newTestKey,
    ...keeperTimes,
    ...changes,
  })
  if (keeper.ok) onTestFinished(() => keeper.value.close())
  return keeper
}

let lastKey = 0
function newTestKey(): string {
  lastKey += 1
  return `key-${lastKey}`
}

/** Instants that stand still until they are set, of a clock that starts on 2027-03-29 08:00 UTC. */
export function handClock(): { readonly now: () => string; readonly pass: (hours: number) => void } {
  let at = Date.UTC(2027, 2, 29, 8)
  return {
    now: () => new Date(at++).toISOString(),
    pass: (hours) => {
      at += hours * 3_600_000
    },
  }
}

export function openBook(path: string): Store {
  return granted(tryBook(path))
}

export function granted<Value>(outcome: Outcome<Value>): Value {
  if (!outcome.ok) throw new Error(`${outcome.problem.kind}: ${outcome.problem.sentence}`)
  return outcome.value
}

export function problemOf(outcome: Outcome<unknown>): string {
  return outcome.ok ? 'no problem' : outcome.problem.kind
}
