import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import type { Mark } from '../../core/project/progress-records.ts'
import type { Colour, Condition } from '../../core/project/survey-records.ts'
import { readMigrations } from '../../electron/storage/migrations.ts'
import { createStore } from '../../electron/storage/store.ts'
import { plainJob, roomId } from '../fixtures/plain-room.ts'

/**
 * Times how long it takes to bring a job file with thousands of marks, conditions or colors into a book, and how that grows: milliseconds,
 * and each time beside that of the smallest file, for whose records 1.0 would be the same time for each.
 *   npm run bench:import
 */
const sizes = [1000, 4000, 19_000]

function many<Item extends { readonly id: string }>(count: number, make: (index: number) => Item) {
  return Object.fromEntries(
    Array.from({ length: count }, (_, index) => make(index)).map((each) => [each.id, each]),
  )
}

const kinds: Readonly<Record<string, (count: number) => Partial<Job>>> = {
  marks: (count) => ({
    marks: many(
      count,
      (index): Mark => ({
        id: `mark-${index}` as Mark['id'],
        stepKey: 'study/protect',
        mark: 'done',
        at: '2027-03-29T09:30',
        crewMemberIds: [],
        actualMinutes: 45,
        note: '',
      }),
    ),
  }),
  conditions: (count) => ({
    conditions: many(
      count,
      (index): Condition => ({
        id: `hole-${index}` as Condition['id'],
        on: { level: 'room', roomId, surfaceClass: 'walls' },
        kind: 'hole',
        severity: 'slight',
        length: null,
        areaMm2: null,
        count: 1,
        suspectedCause: '',
        causeCured: false,
        note: '',
        photo: null,
        foundOn: null,
      }),
    ),
  }),
  colors: (count) => ({
    finishes: {},
    colours: many(
      count,
      (index): Colour => ({
        id: `color-${index}` as Colour['id'],
        name: `Color ${index}`,
        depth: 'light',
        code: '',
        shown: '#aabbcc',
      }),
    ),
  }),
}

function importTime(text: string): { readonly read: number; readonly store: number } {
  const folder = mkdtempSync(join(tmpdir(), 'coatwright-bench-'))
  const store = createStore(join(folder, 'book.sqlite'), {
    migrations: readMigrations(join(import.meta.dirname, '..', '..', 'migrations')),
    now: () => '2027-03-29T08:00:00.000Z',
    newJobKey: () => 'job-1',
  })
  if (!store.ok) throw new Error(store.problem.sentence)
  const start = performance.now()
  const job = readJobFile(text)
  if (!job.ok) throw new Error(job.problem.sentence)
  const middle = performance.now()
  const created = store.value.create(job.value)
  if (!created.ok) throw new Error(created.problem.sentence)
  const end = performance.now()
  store.value.close()
  rmSync(folder, { recursive: true, force: true })
  return { read: middle - start, store: end - middle }
}

for (const [kind, make] of Object.entries(kinds)) {
  const times = sizes.map((count) => {
    const text = writeJobFile(plainJob(make(count)))
    const rounds = [importTime(text), importTime(text), importTime(text)]
    return rounds.toSorted((a, b) => a.read + a.store - b.read - b.store)[0] ?? { read: 0, store: 0 }
  })
  for (const [index, { read, store }] of times.entries()) {
    const count = sizes[index] ?? 1
    const [first] = times
    const growth = ((read + store) / count) * ((sizes[0] ?? 1) / ((first?.read ?? 1) + (first?.store ?? 1)))
    console.log(
      `${kind.padEnd(10)} ${String(count).padStart(6)}: read ${read.toFixed(0)} ms, store ${store.toFixed(0)} ms, for each record ${growth.toFixed(2)} of the smallest`,
    )
  }
}
