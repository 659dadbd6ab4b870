import { copyFileSync, readdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { collectionNames, type Job } from '../../core/project/job.ts'
import { raiseSafetySettings } from '../../core/project/upgrades/safety-settings.ts'
import { backupFolder } from '../../electron/storage/book-files.ts'
import { tableNames } from '../../electron/storage/collections.ts'
import { type Migration, migrationOf, readMigrations } from '../../electron/storage/migrations.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'
import { plainJob } from '../fixtures/plain-room.ts'
import {
  granted,
  migrations,
  openBook,
  openKeeper,
  problemOf,
  testFolder,
  tryBook,
} from '../storage/books.ts'

const databases = join(import.meta.dirname, '..', 'fixtures', 'databases')

/** A step that no program has, after all those that are there. */
function plantedMigration(sql: string): Migration {
  return migrationOf(migrations.length + 1, 'planted', sql)
}

function bookWithOneJob(): string {
  const path = join(testFolder(), 'book.sqlite')
  const book = openBook(path)
  granted(book.create(plainJob()))
  book.close()
  return path
}

function schemaOf(path: string): readonly unknown[] {
  const database = new Database(path, { readonly: true })
  const schema = database.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all()
  database.close()
  return schema
}

test('a folder of migrations is read in order, and a gap, a double or a strange name is refused', () => {
  const folder = testFolder()
  writeFileSync(join(folder, '0001-first.sql'), 'SELECT 1;')
  writeFileSync(join(folder, '0002-second.sql'), 'SELECT 2;')
  expect(readMigrations(folder).map(({ number, name }) => `${number} ${name}`)).toEqual([
    '1 first',
    '2 second',
  ])
  writeFileSync(join(folder, '0004-fourth.sql'), 'SELECT 4;')
  expect(() => readMigrations(folder)).toThrow('0003')
  writeFileSync(join(folder, '0002-again.sql'), 'SELECT 2;')
  expect(() => readMigrations(folder)).toThrow('should be')
  writeFileSync(join(folder, '0001_first.txt'), '')
  expect(() => readMigrations(folder)).toThrow('should be')
})

test('line ends of another system do not change the hash, a changed letter does', () => {
  const hash = (text: string) => migrationOf(1, 'first', text).sha256
  expect(hash('SELECT 1;\r\nSELECT 2;\r\n')).toBe(hash('SELECT 1;\nSELECT 2;\n'))
  expect(hash('SELECT 1;\nSELECT 3;\n')).not.toBe(hash('SELECT 1;\nSELECT 2;\n'))
})

test('an empty file becomes a book of the newest form, with every migration on record', () => {
  const path = join(testFolder(), 'new', 'folder', 'book.sqlite')
  openBook(path).close()
  const database = new Database(path, { readonly: true })
  onTestFinished(() => {
    database.close()
  })
  expect(database.prepare('SELECT number, name, sha256 FROM applied_migrations').all()).toEqual(
    migrations.map(({ number, name, sha256 }) => ({ number, name, sha256 })),
  )
  expect(database.pragma('journal_mode', { simple: true })).toBe('wal')
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
  expect(database.pragma('foreign_key_check')).toEqual([])
})

test('every table is strict', () => {
  const path = join(testFolder(), 'book.sqlite')
  openBook(path).close()
  const database = new Database(path, { readonly: true })
  onTestFinished(() => {
    database.close()
  })
  const tables = database.pragma('table_list') as { schema: string; name: string; strict: number }[]
  const loose = tables.filter((table) => table.strict === 0 && !table.name.startsWith('sqlite_'))
  expect(loose).toEqual([])
  expect(tables.length).toBeGreaterThan(18)
})

test('a migration runs once, after a copy of the book was made, and keeps the jobs', async () => {
  const path = bookWithOneJob()
  const steps = [...migrations, plantedMigration('ALTER TABLE jobs ADD COLUMN remark TEXT;')]
  await (await openKeeper(path, { migrations: steps })).close()
  const copiesBefore = () => readdirSync(backupFolder(path)).filter((name) => name.startsWith('before-'))
  const before = copiesBefore()
  expect(before).toEqual([
    expect.stringMatching(new RegExp(`^before-${String(steps.length).padStart(4, '0')}-.*\\.sqlite$`)),
  ])
  const copy = join(testFolder(), 'book.sqlite')
  copyFileSync(join(backupFolder(path), before[0] ?? ''), copy)
  expect(granted(openBook(copy).open('job-1')).job).toEqual(plainJob())
  const again = await openKeeper(path, { migrations: steps })
  expect(granted(granted(again.store()).open('job-1')).job).toEqual(plainJob())
  expect(copiesBefore()).toEqual(before)
})

test('a migration that fails half-way leaves the book as it was', () => {
  const path = bookWithOneJob()
  const before = schemaOf(path)
  const failing = plantedMigration(
    'ALTER TABLE jobs ADD COLUMN remark TEXT; DELETE FROM rooms; SELECT nonsense;',
  )
  const refused = tryBook(path, [...migrations, failing])
  expect(refused).toMatchObject({ ok: false, problem: { kind: 'storageFailed' } })
  expect(refused.ok ? '' : refused.problem.sentence).toContain('was left as it was')
  expect(schemaOf(path)).toEqual(before)
  expect(granted(openBook(path).open('job-1')).job).toEqual(plainJob())
})

test('a migration that leaves a reference leading nowhere is taken back', () => {
  const path = bookWithOneJob()
  expect(problemOf(tryBook(path, [...migrations, plantedMigration('DELETE FROM storeys;')]))).toBe(
    'storageFailed',
  )
  expect(granted(openBook(path).open('job-1')).job).toEqual(plainJob())
})

/** The job of every kept book; a collection that its form had no table for is empty in it. */
function jobInForm(path: string): Job {
  const database = new Database(path, { readonly: true })
  const tables = new Set(
    (database.pragma('table_list') as { readonly name: string }[]).map((table) => table.name),
  )
  database.close()
  const job = everyRecordJob()
  const unknown = collectionNames.filter((name) => !tables.has(tableNames[name]))
  return { ...job, ...Object.fromEntries(unknown.map((name) => [name, {}])) }
}

/** A released form of the book, kept as it was written, by the number of its last migration. */
function fixtureOf(migration: Migration): string {
  return `${String(migration.number).padStart(4, '0')}-${migration.name}.sqlite`
}

for (const migration of migrations) {
  test(`a book as form ${migration.number} (${migration.name}) left it opens in the newest form with its job whole`, () => {
    const path = join(testFolder(), 'book.sqlite')
    copyFileSync(join(databases, fixtureOf(migration)), path)
    const expected = jobInForm(path)
    const book = openBook(path)
    expect(granted(book.list())).toMatchObject([
      { title: 'One plain room', client: 'A. Client', roomCount: 2 },
    ])
    expect(granted(book.open('job-1')).job).toEqual(expected)
  })
}

test('no migration is without a book of its form, and no such book without its migration', () => {
  expect(readdirSync(databases).sort()).toEqual(migrations.map(fixtureOf))
})

test('safety rules that an older book holds weakened or off are brought to the limits, with the words of the job file', () => {
  const path = join(testFolder(), 'book.sqlite')
  const [first] = migrations
  if (first === undefined) throw new Error('there is no first migration')
  copyFileSync(join(databases, fixtureOf(first)), path)
  const settings = [
    {
      id: 'lead-safe',
      on: false,
      numbers: { interiorSquareFeet: 20.5, builtBefore: 1990, earlierSquareFeet: -1 },
    },
    { id: 'asbestos-suspicion', on: true, numbers: { builtBefore: 1960 } },
  ]
  const database = new Database(path)
  const put = database.prepare('INSERT INTO rules (job_key, id, position, body) VALUES (?, ?, ?, ?)')
  for (const [index, setting] of settings.entries()) {
    put.run('job-1', setting.id, 10 + index, JSON.stringify(setting))
  }
  database.close()
  const { rules } = granted(openBook(path).open('job-1')).job
  const ofFile = settings.map((setting) => raiseSafetySettings({ rules: [setting] }).rules)
  expect([[rules['lead-safe']], [rules['asbestos-suspicion']]]).toEqual(ofFile)
  expect(rules['dust-down']).toEqual({ id: 'dust-down', on: false, numbers: { minutes: 7.5 } })
  expect(rules['lead-safe']).toMatchObject({
    on: true,
    numbers: { interiorSquareFeet: 6, builtBefore: 1990, earlierSquareFeet: 0 },
  })
})

test('values that an older book holds beyond the bounds of today go to the nearest, and what stood there is said', () => {
  const path = join(testFolder(), 'book.sqlite')
  const [first] = migrations
  if (first === undefined) throw new Error('there is no first migration')
  copyFileSync(join(databases, fixtureOf(first)), path)
  const database = new Database(path)
  database.exec(`
    UPDATE products SET body = json_set(body, '$.source', 'label', '$.volumeSolidsPercent', 0.5, '$.containers',
      json('[{"name":"speck","gallons":1e-9,"priceCents":-5},{"name":"pail","gallons":5,"priceCents":100}]'))
    WHERE position = (SELECT min(position) FROM products);
    UPDATE crew SET body = json_set(body, '$.wageCents', -1);
    UPDATE rates SET body = json_set(body, '$.perHour', 1e-7, '$.source', 'guess');
    UPDATE jobs SET house_rules = json_set(house_rules, '$.price.sundriesCentsPerHour', -3)`)
  database.close()
  const { job } = granted(openBook(path).open('job-1'))
  const [product, ...others] = Object.values(job.products)
  expect(product).toMatchObject({
    volumeSolidsPercent: 1,
    containers: [
      { name: 'speck', gallons: 0.005, priceCents: 0 },
      { name: 'pail', gallons: 5, priceCents: 100 },
    ],
  })
  expect(product?.source).toMatch(
    /^label \(before: 0.5 % solids, .* mils, cans 1e-09 gal at -5 cents, 5 gal at 100 cents\)$/,
  )
  expect(others).toEqual(Object.values(everyRecordJob().products).slice(1))
  expect(Object.values(job.crew).map(({ wageCents }) => wageCents)).toEqual(
    Object.keys(job.crew).map(() => 0),
  )
  for (const { perHour, source } of Object.values(job.rates)) {
    expect([perHour, source]).toEqual([0.02, 'guess (before: 1.0e-07 an hour)'])
  }
  expect(job.houseRules.price.sundriesCentsPerHour).toBe(0)
})
