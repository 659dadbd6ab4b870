import { expect, test } from 'vitest'
import { cheapestContainers } from '../../core/price/containers.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import { findJsonFault } from '../../core/project/json-text.ts'
import type { Problem } from '../../core/project/problem.ts'
import type { Mark } from '../../core/project/progress-records.ts'
import { everyRecordJob } from '../fixtures/every-record.ts'

type Json = string | number | boolean | null | Json[] | { [name: string]: Json }

/** The file of a job with something of everything, with one value of it replaced. */
function fileWith(place: string, value: Json): string {
  const file = JSON.parse(writeJobFile(everyRecordJob())) as Json
  const steps = place.split('.')
  const last = steps.pop() ?? ''
  const inner = steps.reduce<Json>((data, step) => (data as { [name: string]: Json })[step] ?? null, file)
  ;(inner as { [name: string]: Json })[last] = value
  return JSON.stringify(file)
}

function refusalOf(text: string): Problem {
  const read = readJobFile(text)
  if (read.ok) throw new Error('this should have been refused')
  return read.problem
}

test.each<[string, string, number]>([
  ['a container of a billionth of a gallon', 'products.0.containers.0.gallons', 1e-9],
  ['a container that earns money', 'products.0.containers.0.priceCents', -5_000_000],
  ['paint of next to no solids', 'products.0.volumeSolidsPercent', 1e-9],
  ['a film of next to nothing', 'products.0.dryFilmMils', 1e-9],
  ['a wage below nothing', 'crew.0.wageCents', -1],
  ['a rate of years for a foot', 'rates.0.perHour', 1e-9],
  ['sundries that earn money', 'houseRules.price.sundriesCentsPerHour', -1],
])('%s is refused with its place', (_, place, value) => {
  const { path, sentence } = refusalOf(fileWith(place, value))
  expect(path.replaceAll(/\[(\d+)\]/g, '.$1')).toBe(place)
  expect(sentence).toContain(String(value))
})

test.each<[string, string, readonly number[], readonly number[]]>([
  ['work that took no time', 'marks.0.actualMinutes', [0, 100_000], [-1, 100_001]],
  ['a basement and a tower', 'storeys.0.level', [-3, 0, 20], [-4, 21]],
  ['a helper without wage', 'crew.0.wageCents', [0], [-1]],
  ['a can that was a gift', 'products.0.containers.0.priceCents', [0], [-1]],
  ['paint of solids alone', 'products.0.volumeSolidsPercent', [1, 100], [0, 101]],
  ['paint none of which is lost', 'products.0.lossPercent', [0, 90], [-1, 91]],
  ['paint for frost', 'products.0.minimumTemperatureC', [-30, 0, 60], [-31, 61]],
  ['paint dry at once', 'products.0.touchDryMinutes', [0, 129_600], [-1, 129_601]],
  ['one thing and many', 'keptItems.0.count', [1, 1000], [0, 1001]],
  ['no dent at all', 'conditions.0.count', [0, 10_000], [-1, 10_001]],
  ['a radiator of one section', 'builtItems.0.sections', [1, 60], [0, 61]],
  ['every room in use every night', 'houseRules.maxRoomsOutOfUse', [0, 200], [-1, 201]],
  ['no setting up', 'houseRules.setUpMinutes', [0, 240], [-1, 241]],
  ['no clearing away', 'houseRules.cleanUpMinutes', [0, 240], [-1, 241]],
  ['no burden', 'houseRules.price.burdenPercent', [0, 300], [-1, 301]],
  ['no overhead', 'houseRules.price.overheadPercent', [0, 300], [-1, 301]],
  ['no profit', 'houseRules.price.profit.percent', [0, 95], [-1, 96]],
  ['no contingency', 'houseRules.price.contingencyPercent', [0, 100], [-1, 101]],
  ['untaxed materials', 'houseRules.price.materialsTaxPercent', [0, 50], [-1, 51]],
  ['untaxed labor', 'houseRules.price.labourTaxPercent', [0, 50], [-1, 51]],
  ['freezing outdoors', 'header.air.outdoorTemperatureC', [-60, 0, 60], [-61, 61]],
  ['fog', 'header.air.relativeHumidityPercent', [1, 100], [0, 101]],
  ['an old house', 'header.yearBuilt', [1600, 2200], [1599, 2201]],
])('%s: the least and the most are kept, beyond them is refused', (_, place, kept, refused) => {
  for (const value of kept) {
    const text = fileWith(place, value)
    const read = readJobFile(text)
    expect(read.ok ? '' : read.problem.sentence).toBe('')
    if (read.ok) expect(JSON.parse(writeJobFile(read.value))).toEqual(JSON.parse(text))
  }
  for (const value of refused) {
    expect(refusalOf(fileWith(place, value)).path.replaceAll(/\[(\d+)\]/g, '.$1')).toBe(place)
  }
})

test.each([
  'header.title',
  'header.timeZone',
  'rooms.0.name',
  'products.0.name',
  'crew.0.name',
  'colours.0.name',
  'marks.0.stepKey',
  'holds.0.holdKey',
])('an empty %s is refused', (place) => {
  expect(refusalOf(fileWith(place, '')).path.replaceAll(/\[(\d+)\]/g, '.$1')).toBe(place)
})

const tenMillion = 10_000_000

test.each([
  ['conditions.0.note', 'a'],
  ['conditions.0.note', '\n'],
  ['rooms.0.id', 'a'],
  ['rooms.0.id', '1'],
  ['header.startsOn', '2'],
  ['colours.0.shown', '#'],
  ['marks.0.stepKey', 'x'],
  ['header.timeZone', 'x'],
])('ten million letters at %s are refused in a short sentence that says how many', (place, letter) => {
  const { path, sentence } = refusalOf(fileWith(place, letter.repeat(tenMillion)))
  expect(path.replaceAll(/\[(\d+)\]/g, '.$1')).toBe(place)
  expect(sentence).toContain(`text of ${tenMillion} characters is too large`)
  expect(sentence.length).toBeLessThan(200)
})

test('a text of millions of letters and escapes is read as JSON, and a fault behind it is found in its place', () => {
  const text = `{"a":"${'x'.repeat(3_000_000)}${String.raw`\n`.repeat(1_000_000)}"}`
  expect(findJsonFault(text)).toBeNull()
  expect(findJsonFault(`${text.slice(0, -1)},`)).toMatchObject({ line: 1, column: text.length + 1 })
  expect(findJsonFault(text.slice(0, -2))).toMatchObject({ column: 6 })
})

test('a refusal names a dozen words or fields at most, and how many more there are', () => {
  const kinds = refusalOf(fileWith('conditions.0.kind', 'moonlight')).sentence
  expect(kinds).toMatch(/this version knows \w+(, \w+){11} and \d+ more \(in/)
  const strangers = Object.fromEntries(Array.from({ length: 40 }, (_, index) => [`stranger${index}`, 1]))
  const fields = refusalOf(fileWith('header.air', strangers)).sentence
  expect(fields.match(/stranger/g)?.length ?? 0).toBeLessThanOrEqual(12)
})

/** A job with so many marks, each by somebody who is not in the crew, and a count of how often all marks were listed. */
function jobOfLostMarks(count: number) {
  const job = everyRecordJob()
  const [seed] = Object.values(job.marks) as [Mark]
  let listings = 0
  const marks = new Proxy(
    Object.fromEntries(
      Array.from({ length: count }, (_, index) => {
        const id = `mark-${index}` as Mark['id']
        return [id, { ...seed, id, crewMemberIds: ['nobody' as Mark['crewMemberIds'][number]] }]
      }),
    ),
    {
      ownKeys: (target) => {
        listings++
        return Reflect.ownKeys(target)
      },
    },
  )
  return { job: { ...job, marks }, listings: () => listings }
}

test('marks are listed no more often where there are ten times as many that lead nowhere', () => {
  const work = [20, 200].map((count) => {
    const { job, listings } = jobOfLostMarks(count)
    const problems = jobProblems(job)
    expect(problems).toHaveLength(count)
    expect(problems.at(-1)?.path).toBe(`marks[${count - 1}].crewMemberIds[0]`)
    return listings()
  })
  expect(work[1]).toBe(work[0])
})

/** Reads of a container's contents while the cheapest mix for `needed` is looked for. */
function readsFor(needed: number, gallons: readonly number[]): number {
  let reads = 0
  const sizes = gallons.map((each, index) => ({
    name: `size ${index}`,
    // Prices so near each other per gallon that nothing can be cut.
    priceCents: Math.round(each * 1000 + 1) as never,
    get gallons() {
      reads++
      return each
    },
  }))
  const mix = cheapestContainers(needed, sizes)
  expect(mix.gallons).toBeGreaterThan(needed - 1e-6)
  return reads
}

test('the cheapest mix of cans takes a bounded number of tries, whatever the cans and however much is needed', () => {
  const odd = [0.013, 0.017, 0.019, 0.023, 0.029, 0.031, 0.037, 0.041, 0.043, 0.047, 0.053, 0.059]
  const most = 5_000_000
  expect(readsFor(1000, odd)).toBeLessThan(most)
  expect(readsFor(1_000_000, odd)).toBeLessThan(most)
  expect(readsFor(1_000_000, [0.005])).toBeLessThan(most)
})
