import { copyFileSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import type { Job } from '../../core/project/job.ts'
import { logOf } from '../../electron/storage/book-files.ts'
import type { Keeper } from '../../electron/storage/keeper.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { crashedBook } from '../storage/book-states.ts'
import { granted, openKeeper, testFolder } from '../storage/books.ts'
import { rounds, seededNumbers } from './book-process.ts'

const counts: string[] = []
afterAll(() => console.log(`Flipped bytes: ${counts.join('; ')}`))

/** Every job of the book by its key; null where one cannot be read. */
function jobsOf(keeper: Keeper): Record<string, Job> | null {
  const store = granted(keeper.store())
  const jobs: Record<string, Job> = {}
  for (const { jobKey } of granted(store.list())) {
    const opened = store.open(jobKey)
    if (!opened.ok) return null
    jobs[jobKey] = opened.value.job
  }
  return jobs
}

async function copyOf(path: string): Promise<string> {
  const copy = join(testFolder(), 'book.sqlite')
  copyFileSync(path, copy)
  copyFileSync(logOf(path), logOf(copy))
  return copy
}

/** Most of a small book is room that nothing is written in yet; a flip there shows nothing. */
function placeInUse(bytes: Buffer, random: () => number): number {
  for (;;) {
    const at = Math.floor(random() * bytes.length)
    if (bytes[at] !== 0) return at
  }
}

for (const [what, placeOf] of [
  ['file', (path: string) => path],
  ['log', logOf],
] as const) {
  test(`a byte flipped in the ${what}: the book is the same as ever, or the program says that it is damaged`, {
    timeout: 300_000,
  }, async () => {
    const path = await crashedBook(everyRecordJob())
    const sound = await openKeeper(await copyOf(path))
    const expected = jobsOf(sound)
    await sound.close()
    const random = seededNumbers(what === 'file' ? 31_415 : 27_182)
    const seen = { same: 0, told: 0, unnoticed: 0 }
    for (let round = 0; round < rounds(60); round++) {
      const copy = await copyOf(path)
      const bytes = readFileSync(placeOf(copy))
      const at = placeInUse(bytes, random)
      bytes[at] = (bytes[at] as number) ^ (1 << Math.floor(random() * 8))
      writeFileSync(placeOf(copy), bytes)
      const keeper = await openKeeper(copy)
      if (keeper.state().shut !== null) {
        seen.told++
        expect(readFileSync(placeOf(copy)).equals(bytes)).toBe(true)
      } else {
        const jobs = jobsOf(keeper)
        const isSame = JSON.stringify(jobs) === JSON.stringify(expected)
        seen[isSame ? 'same' : jobs === null ? 'told' : 'unnoticed']++
      }
      await keeper.close()
    }
    counts.push(
      `${rounds(60)} in the ${what}: ${seen.told} told, ${seen.same} without effect, ${seen.unnoticed} lost unnoticed`,
    )
    expect(seen.unnoticed).toBe(0)
    expect(seen.told).toBeGreaterThan(rounds(60) / 4)
  })
}
