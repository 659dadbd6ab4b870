import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import { conditionKinds } from '../../core/project/vocabulary.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { specify } from '../../core/specification/specify.ts'
import { demoFiles } from '../../demo-data/demo-files.ts'
import { oldHouse } from '../../demo-data/old-house.ts'

const folder = join(import.meta.dirname, '..', '..', 'demo-data')
const files = Object.entries(demoFiles())
const jobFiles = files.filter(([name]) => !name.endsWith('.schema.json'))

test.each(files)('%s is what its source builds', (name, text) => {
  // When this fails after a change of the source or of the form: npx node demo-data/build-demo.ts
  expect(readFileSync(join(folder, name), 'utf8')).toBe(text)
})

test.each(jobFiles)('%s has no problems and is given back by its own file', (_name, text) => {
  const read = readJobFile(text)
  if (!read.ok) throw new Error(read.problem.sentence)
  expect(jobProblems(read.value)).toEqual([])
  expect(writeJobFile(read.value)).toBe(text)
})

test('the old house is old, lived in, and has two storeys and at least twelve rooms', () => {
  const house = oldHouse()
  const rooms = Object.values(house.rooms)
  expect(house.header.yearBuilt).toBeLessThan(1940)
  expect(house.header.occupied).toBe(true)
  expect(Object.keys(house.storeys)).toHaveLength(2)
  expect(rooms.length).toBeGreaterThanOrEqual(12)
  expect(rooms.filter((room) => room.use === 'bedroom')).toHaveLength(3)
  expect(rooms.filter((room) => room.use === 'closet').length).toBeGreaterThanOrEqual(2)
})

test('every kind of condition is found somewhere in the old house', () => {
  const found = new Set(Object.values(oldHouse().conditions).map((condition) => condition.kind))
  expect(conditionKinds.filter((kind) => !found.has(kind))).toEqual([])
})

test('rooms of a storey stand side by side without overlapping, five inches apart', () => {
  const rooms = Object.values(oldHouse().rooms)
  for (const one of rooms) {
    for (const other of rooms) {
      if (one.id >= other.id || one.storeyId !== other.storeyId) continue
      expect([one.name, other.name, roomsOverlap(one, other)]).toEqual([one.name, other.name, false])
    }
  }
})

type Room = ReturnType<typeof oldHouse>['rooms'][string]

/** Square-cornered rooms overlap when a point just inside some corner of one lies in the other; tried on a 1 in lattice instead. */
function roomsOverlap(one: Room, other: Room): boolean {
  const inch = 203_200
  const xs = one.corners.map((corner) => corner.x)
  const ys = one.corners.map((corner) => corner.y)
  for (let x = Math.min(...xs) + inch / 2; x < Math.max(...xs); x += inch) {
    for (let y = Math.min(...ys) + inch / 2; y < Math.max(...ys); y += inch) {
      if (holds(one, x, y) && holds(other, x, y)) return true
    }
  }
  return false
}

function holds(room: Room, x: number, y: number): boolean {
  let inside = false
  room.corners.forEach((corner, index) => {
    const next = room.corners[(index + 1) % room.corners.length] ?? corner
    if (
      corner.y > y !== next.y > y &&
      x < corner.x + ((y - corner.y) / (next.y - corner.y)) * (next.x - corner.x)
    ) {
      inside = !inside
    }
  })
  return inside
}

test('every room of the old house can be reached from the front door', () => {
  const house = oldHouse()
  const reached = new Set(['entry'])
  for (let grown = true; grown; ) {
    const before = reached.size
    for (const opening of Object.values(house.openings)) {
      if (opening.far === null) continue
      if (reached.has(opening.roomId)) reached.add(opening.far.roomId)
      if (reached.has(opening.far.roomId)) reached.add(opening.roomId)
    }
    grown = reached.size > before
  }
  expect(Object.keys(house.rooms).filter((id) => !reached.has(id))).toEqual([])
})

test('what the old house must show is in it', () => {
  const house = oldHouse()
  const kept = Object.values(house.keptItems)
  const alarms = kept.filter((item) => item.kind === 'smokeAlarm' || item.kind === 'carbonMonoxideAlarm')
  expect(new Set(alarms.map((item) => item.wired))).toEqual(new Set([true, false]))
  expect(kept.some((item) => item.kind === 'hanging' && item.handling === 'loosen')).toBe(true)
  expect(house.existing['now-trim']?.coat).toBe('oilPaint')
  expect(house.finishes.trim?.productClass).toBe('waterborneEnamel')
  expect(house.rooms['attic-stair']).toMatchObject({ above: 'unheated', floor: { kind: 'stair' } })
  expect(house.existing['now-attic-ceiling']?.coat).toBe('calcimine')
  const weeks = Object.values(house.crew).map((member) => JSON.stringify(member.week))
  expect(new Set(weeks).size).toBe(3)
  const kinds = new Set(Object.values(house.trimRuns).map((run) => run.kind))
  expect([...kinds].sort()).toEqual(['baseboard', 'chairRail', 'crown', 'pictureRail', 'wainscotCap'])
})

test('the old house calls for every kind of preparation, and no rules clash in it', () => {
  const house = oldHouse()
  const { steps, notices, clashes } = specify(house, takeOff(house))
  expect(clashes).toEqual([])
  const operations = new Set(steps.map((step) => step.operation))
  for (const operation of [
    'dustDown',
    'scrape',
    'openCrack',
    'sealChalk',
    'driveFastener',
    'sandPatch',
    'blockStain',
    'washMildew',
    'stripWallpaper',
    'puttySash',
    'freeSash',
    'takeOff',
    'putBack',
    'coverAlarm',
    'restoreAlarm',
    'loosenHanging',
    'refitHanging',
  ] as const) {
    expect([operation, operations.has(operation)]).toEqual([operation, true])
  }
  const kinds = new Set(notices.map((notice) => notice.kind))
  for (const kind of ['leadSafe', 'asbestosSuspicion', 'dewPoint', 'cause'] as const) {
    expect([kind, kinds.has(kind)]).toEqual([kind, true])
  }
})

test('on the chalky attic ceiling the cracks are opened, the chalk is sealed, and only then is it filled', () => {
  const house = oldHouse()
  const keys = specify(house, takeOff(house)).steps.map((step) => step.key)
  const place = (operation: string) =>
    keys.findIndex((key) => key.startsWith(`attic-stair/ceiling/${operation}/`))
  const order = ['openCrack', 'sealChalk', 'fill', 'sandFill', 'spotPrime', 'coat'].map(place)
  expect(order.every((at) => at >= 0)).toBe(true)
  expect(order).toEqual(order.toSorted((one, other) => one - other))
})

interface SchemaNode {
  readonly [name: string]: unknown
}

/** Every property of a schema, however deep, with its own schema. */
function propertiesIn(node: unknown): readonly (readonly [string, SchemaNode])[] {
  if (typeof node !== 'object' || node === null) return []
  const { properties } = node as SchemaNode
  const own = typeof properties === 'object' && properties !== null ? Object.entries(properties) : []
  return [...own, ...Object.values(node).flatMap(propertiesIn)] as readonly (readonly [string, SchemaNode])[]
}

const schemaFiles = [
  'job.schema.json',
  ...readdirSync(join(folder, 'schemas')).map((name) => `schemas/${name}`),
]

test.each(schemaFiles)(
  '%s says its name, what it is of, and what every part and every number in it means',
  (name) => {
    const schema = JSON.parse(readFileSync(join(folder, name), 'utf8')) as SchemaNode
    expect(schema.$id).toMatch(/^https:\/\/coatwright\.example\/schemas\/[a-z-]+-\d+\.schema\.json$/)
    expect(String(schema.title)).toContain('Coatwright')
    expect(String(schema.description).length).toBeGreaterThan(40)
    const top = Object.entries(schema.properties as Record<string, SchemaNode>)
    const numbers = propertiesIn(schema).filter(([, { type }]) => type === 'number' || type === 'integer')
    // A new one is put into core/project/schema-words.ts.
    const silent = [...top, ...numbers].filter(([, { description }]) => description === undefined)
    expect([...new Set(silent.map(([property]) => property))]).toEqual([])
  },
)

test('no two published schemas have the same name', () => {
  const ids = schemaFiles.map(
    (name) => (JSON.parse(readFileSync(join(folder, name), 'utf8')) as SchemaNode).$id,
  )
  expect(new Set(ids).size).toBe(schemaFiles.length)
})
