import { readFileSync } from 'node:fs'
import { join, posix } from 'node:path'
import { expect, test } from 'vitest'
import { findOffences, printTable } from './offences.ts'
import { roomTable } from './room-table.ts'
import { readSources } from './source-reading.ts'
import { sourcesOf } from './sources-of.ts'

const root = join(import.meta.dirname, '..', '..')
const houses = ['core', 'renderer', 'electron', 'demo-data']

function offencesIn(sources: Readonly<Record<string, string>>): readonly string[] {
  const texts = Object.entries(sources).map(([path, text]) => ({ path, text }))
  return findOffences(readSources(texts), roomTable)
}

test('every import keeps to the table of rooms', () => {
  const sources = houses.flatMap(sourcesOf)
  expect(sources.length).toBeGreaterThan(80)
  expect(findOffences(readSources(sources), roomTable)).toEqual([])
})

test('every room enters rooms named before it only, so that no folders import in a circle', () => {
  const back = roomTable.flatMap(({ room, mayEnter }, index) => {
    const before = roomTable.slice(0, index)
    const isBefore = (entered: string) =>
      before.some((other) => other.room === entered || other.room.startsWith(`${entered}/`))
    return mayEnter.filter((entered) => !isBefore(entered)).map((entered) => `${room} enters ${entered}`)
  })
  expect(back).toEqual([])
})

test('the judge of plans shares nothing with the search but lists, dates and the model', () => {
  const judge = sourcesOf('core/schedule').filter(({ path }) => path.includes('/judge/'))
  expect(judge.length).toBeGreaterThan(1)
  const own = new Set(judge.map(({ path }) => path))
  const taken = readSources(judge).flatMap(({ path, imports }) =>
    imports.map((specifier) => posix.join(posix.dirname(path), specifier)),
  )
  expect([...new Set(taken)].filter((path) => !own.has(path))).toEqual([
    'core/lists/lists.ts',
    'core/time/local-date.ts',
    'core/time/local-time.ts',
    'core/schedule/model.ts',
  ])
})

test('nothing that is stored is called something it was not checked to be', () => {
  const readers = [
    'core/project',
    'core/contract',
    'core/progress',
    'core/work-order',
    'renderer',
    'electron',
  ]
  const blind = readers
    .flatMap(sourcesOf)
    .filter(({ text }) => text.includes('as unknown as'))
    .map(({ path }) => path)
  expect(blind).toEqual([])
})

test('the table in DEVELOPERS.md is this one', () => {
  const lines = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').split('\n')
  const start = lines.findIndex((line) => line.startsWith('| room | may enter |'))
  const end = lines.findIndex((line, at) => at > start && !line.startsWith('|'))
  expect(lines.slice(start + 2, end)).toEqual(printTable(roomTable))
})

test('planted offences are caught, each by its own name', () => {
  expect(
    offencesIn({
      'core/quantities/a.ts': `import { x } from '../schedule/x.ts'`,
      'core/units/b.ts': `import type { Job } from '../project/job.ts'`,
      'core/project/c.ts': `import { readFileSync } from 'node:fs'`,
      'core/price/d.ts': `import { readFileSync } from 'fs/promises'`,
      'core/sketch/e.ts': `import { create } from 'zustand'`,
      'core/progress/f.ts': `export { page } from '../../renderer/app/page.ts'`,
      'core/schedule/g.ts': `import house from '../../demo-data/old-house.json'`,
      'renderer/panels/walk/h.tsx': `import { createStore } from '../../../electron/storage/store.ts'`,
      'renderer/state/i.ts': `const open = () => import('better-sqlite3')`,
      'renderer/canvas/j.tsx': `const electron = require('electron')`,
      'renderer/app/k.ts': `type Store = import('../../electron/storage/store.ts').Store`,
      'renderer/bridge/l.ts': `import '../app/page.ts'`,
      'electron/main/m.ts': `import { App } from '../../renderer/app/App.tsx'`,
      'electron/storage/n.ts': `import { app } from 'electron/main'`,
      'electron/handlers/o.ts': `import Database = require('better-sqlite3')`,
      'electron/preload/p.ts': `import { answerRequest } from '../handlers/answer.ts'`,
      'renderer/panels/site/t.tsx': `import { WalkStation } from '../walk/WalkStation.tsx'`,
      'renderer/state/u.ts': `import type { View } from '../canvas/view.ts'`,
      'renderer/canvas/v.tsx': `import { Tick } from '../panels/parts/Tick.tsx'`,
      'renderer/panels/house/w.ts': `import { everywhereKeys } from '../../app/keys.ts'`,
      'renderer/panels/parts/x.tsx': `import { getDocument } from 'pdfjs-dist'`,
      'renderer/panels/y.tsx': 'export const stray = 1',
      'core/units/q.ts': 'const name = "fs"; const what = await import(name)',
      'elsewhere/r.ts': 'export const x = 1',
      'core/units/s.ts': 'export const made = [Date.now(), Math.random(), new Date(), new Date]',
    }),
  ).toEqual([
    'core/quantities/a.ts may not import ../schedule/x.ts',
    'core/units/b.ts may not import ../project/job.ts',
    'core/project/c.ts may not import node:fs',
    'core/price/d.ts may not import fs/promises',
    'core/sketch/e.ts may not import zustand',
    'core/progress/f.ts may not import ../../renderer/app/page.ts',
    'core/schedule/g.ts may not import ../../demo-data/old-house.json',
    'renderer/panels/walk/h.tsx may not import ../../../electron/storage/store.ts',
    'renderer/state/i.ts may not import better-sqlite3',
    'renderer/canvas/j.tsx may not import electron',
    'renderer/app/k.ts may not import ../../electron/storage/store.ts',
    'renderer/bridge/l.ts may not import ../app/page.ts',
    'electron/main/m.ts may not import ../../renderer/app/App.tsx',
    'electron/storage/n.ts may not import electron/main',
    'electron/handlers/o.ts may not import better-sqlite3',
    'electron/preload/p.ts may not import ../handlers/answer.ts',
    'renderer/panels/site/t.tsx may not import ../walk/WalkStation.tsx',
    'renderer/state/u.ts may not import ../canvas/view.ts',
    'renderer/canvas/v.tsx may not import ../panels/parts/Tick.tsx',
    'renderer/panels/house/w.ts may not import ../../app/keys.ts',
    'renderer/panels/parts/x.tsx may not import pdfjs-dist',
    'renderer/panels/y.tsx stands in no room of the table',
    'core/units/q.ts may not import (computed)',
    'elsewhere/r.ts stands in no room of the table',
    'core/units/s.ts may not use Date.now',
    'core/units/s.ts may not use Math.random',
    'core/units/s.ts may not use new Date()',
    'core/units/s.ts may not use new Date()',
  ])
})

test('what only looks like an import is left alone, and the doors that are open stay open', () => {
  expect(
    offencesIn({
      'core/units/a.ts': `// import 'node:fs'\nconst text = "require('electron')" + \`import('zustand')\``,
      'core/quantities/b.ts': `import type { Job } from '../project/job.ts'\nimport { own } from './own.ts'`,
      'core/price/c.ts': 'export const day = new Date(0).getUTCDate()',
      'renderer/panels/walk/d.tsx': `import './d.css'\nexport const Note = () => <p>don't import 'electron'</p>`,
      'renderer/app/e.tsx': `import { useStore } from 'zustand'\nimport { ask } from '../bridge/client.ts'`,
      'electron/storage/f.ts': `import Database from 'better-sqlite3'\nimport { join } from 'node:path'`,
      'electron/main/g.ts': `import { app } from 'electron'\nimport { createStore } from '../storage/store.ts'`,
    }),
  ).toEqual([])
})
