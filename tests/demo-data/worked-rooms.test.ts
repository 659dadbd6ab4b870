import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { labour } from '../../core/price/labour.ts'
import { materials } from '../../core/price/materials.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import type { SurfaceQuantity } from '../../core/quantities/takeoff-types.ts'
import { specify } from '../../core/specification/specify.ts'
import { toSquareFeet } from '../../core/units/area.ts'
import { toFeet } from '../../core/units/length.ts'

const folder = join(import.meta.dirname, '..', '..', 'demo-data')

interface WorkedRow {
  readonly name: string
  readonly arithmetic: string
  readonly result: number
}

/** Every table of a worked page: rows of name, arithmetic and figure. */
function workedTables(page: string): readonly (readonly WorkedRow[])[] {
  return readFileSync(join(folder, page), 'utf8')
    .split(/\n\s*\n/)
    .filter((block) => block.startsWith('| '))
    .map((block) =>
      block
        .split('\n')
        .slice(2)
        .filter((line) => line.startsWith('| '))
        .map((line) => {
          const [, name = '', arithmetic = '', result = ''] = line.split('|').map((cell) => cell.trim())
          return { name, arithmetic, result: Number(result) }
        }),
    )
}

/** Does sums as written: numbers, + - * / and brackets. */
function calculate(text: string): number {
  const tokens = text.match(/\d+(?:\.\d+)?|[-+*/()]/g) ?? []
  let at = 0
  function sum(): number {
    let value = product()
    while (tokens[at] === '+' || tokens[at] === '-') value += tokens[at++] === '+' ? product() : -product()
    return value
  }
  function product(): number {
    let value = factor()
    while (tokens[at] === '*' || tokens[at] === '/') {
      if (tokens[at++] === '*') value *= factor()
      else value /= factor()
    }
    return value
  }
  function factor(): number {
    const token = tokens[at++]
    if (token !== '(') return Number(token)
    const value = sum()
    at++
    return value
  }
  const value = sum()
  if (at !== tokens.length) throw new Error(`cannot work out ${text}`)
  return value
}

function openJob(name: string): Job {
  const read = readJobFile(readFileSync(join(folder, name), 'utf8'))
  if (!read.ok) throw new Error(read.problem.sentence)
  return read.value
}

/** Quantities by the names the worked pages use. */
function figures(job: Job): (name: string) => number {
  const takeoff = takeOff(job)
  const wall = (id: string) => [`wall:room:${id}:whole`]
  const part = (opening: string, name: string) => [`opening:${opening}:near:${name}`]
  const walls = takeoff.surfaces.filter((surface) => surface.surfaceClass === 'walls').map(({ key }) => key)
  const trim = takeoff.surfaces.filter((surface) => surface.surfaceClass === 'trim').map(({ key }) => key)
  const keys: Record<string, readonly string[]> = {
    ceiling: ['ceiling:room'],
    'north wall': wall('north'),
    'east wall': wall('east'),
    'south wall': wall('south'),
    'west wall': wall('west'),
    'inner south wall': wall('inner-south'),
    'all walls': walls,
    'all trim': trim,
    baseboard: ['trim:room:room-baseboard'],
    'window casing': part('window', 'casing'),
    sash: part('window', 'sash'),
    'door casing': part('door', 'casing'),
    'door jamb': part('door', 'jamb'),
    'door slab': part('door', 'slab'),
  }
  const measures: Record<string, (surface: SurfaceQuantity) => number> = {
    'gross area': (surface) => toSquareFeet(surface.grossArea),
    'deducted area': (surface) => toSquareFeet(surface.deductedArea),
    'net area': (surface) => toSquareFeet(surface.netArea),
    wood: (surface) => toSquareFeet(surface.netArea),
    'face and edges': (surface) => toSquareFeet(surface.netArea),
    'equivalent area': (surface) => toSquareFeet(surface.equivalentArea),
    length: (surface) => toFeet(surface.length),
    'cutting in': (surface) => toFeet(surface.cuttingIn),
    masking: (surface) => toFeet(surface.masking),
    'glass edge': (surface) => toFeet(surface.glassPerimeter),
  }
  return (name) => {
    const [what = '', measure = ''] = name.split(': ')
    return (keys[what] ?? []).reduce((total, key) => {
      const surface = takeoff.byKey.get(key)
      if (!surface) throw new Error(`there is no surface ${key}`)
      return total + (measures[measure]?.(surface) ?? Number.NaN)
    }, 0)
  }
}

const [plainQuantities = [], plainHours = [], plainMaterials = []] = workedTables('plain-room.md')
const [lShapedQuantities = []] = workedTables('l-shaped-room.md')

test.each([...plainQuantities, ...plainHours, ...plainMaterials, ...lShapedQuantities])(
  'by hand: $name is $arithmetic',
  ({ arithmetic, result }) => {
    expect(Math.abs(calculate(arithmetic) - result)).toBeLessThan(0.00501)
  },
)

test('the plain room is measured as it was worked by hand', () => {
  const figure = figures(openJob('plain-room.json'))
  expect(plainQuantities.length).toBeGreaterThan(30)
  for (const { name, arithmetic } of plainQuantities) {
    expect([name, figure(name)]).toEqual([name, expect.closeTo(calculate(arithmetic), 3)])
  }
})

test('the L-shaped room is measured as it was worked by hand', () => {
  const figure = figures(openJob('l-shaped-room.json'))
  for (const { name, arithmetic } of lShapedQuantities) {
    expect([name, figure(name)]).toEqual([name, expect.closeTo(calculate(arithmetic), 3)])
  }
})

test('the minutes of every step of the plain room are those worked by hand', () => {
  const job = openJob('plain-room.json')
  const { steps } = labour(job, specify(job, takeOff(job)))
  expect(plainHours.map(({ name }) => name).sort()).toEqual(steps.map((step) => step.stepKey).sort())
  for (const { name, arithmetic } of plainHours) {
    const minutes = steps.find((step) => step.stepKey === name)?.minutes
    expect([name, minutes]).toEqual([name, expect.closeTo(calculate(arithmetic), 2)])
  }
})

test('the paint for the plain room is what was worked by hand, and the tins hold it', () => {
  const job = openJob('plain-room.json')
  const bought = materials(job, specify(job, takeOff(job)))
  expect(bought.map((line) => line.productId)).toEqual(plainMaterials.map(({ name }) => name))
  for (const { name, arithmetic } of plainMaterials) {
    const line = bought.find((one) => one.productId === name)
    expect(line?.gallons).toBeCloseTo(calculate(arithmetic), 4)
  }
  const tins = bought.map((line) => line.containers.map(({ count, name }) => `${count} ${name}`).join(', '))
  expect(tins).toEqual(['1 half pint', '1 quart', '1 cartridge', '1 gallon', '1 gallon', '2 gallon'])
})
