import { expect, test } from 'vitest'
import { colorsNow, schemesOf, withScheme } from '../../core/agreement/color-schemes.ts'
import { pricedOptions } from '../../core/agreement/quote.ts'
import { priceJob } from '../../core/agreement/whole-price.ts'
import type { JobOption } from '../../core/project/agreement-records.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import type { Colour, Finish } from '../../core/project/survey-records.ts'
import { workOrderHtml } from '../../core/work-order/html.ts'
import { linen, plainJob, roomId } from '../fixtures/plain-room.ts'
import { sampleInput, sampleOrder } from '../work-order/sample-order.ts'

const slate: Colour = { ...linen, id: 'slate' as Colour['id'], name: 'Slate', shown: '#55606a' }

function finish(id: string, scope: Finish['scope'], colourId: Colour['id']): Finish {
  return {
    id: id as Finish['id'],
    scope,
    paint: true,
    colourId,
    sheen: 'eggshell',
    productClass: 'latexWall',
  }
}

const inHouse = { level: 'house', surfaceClass: 'walls' } as const
const inStudy = { level: 'room', roomId, surfaceClass: 'walls' } as const

const house: Job = plainJob({
  colours: { [linen.id]: linen, [slate.id]: slate },
  finishes: { all: finish('all', inHouse, linen.id) },
})

function schemeOf(job: Job, name = 'Kept'): JobOption {
  const id = 'kept' as JobOption['id']
  return { id, name, note: '', oneOf: '', isScheme: true, changes: colorsNow(job) }
}

/** Other colors and another sheen of the house, and a color of the study's own. */
const repainted: Job = {
  ...house,
  finishes: {
    all: { ...finish('all', inHouse, slate.id), sheen: 'matte' },
    study: finish('study', inStudy, slate.id),
  },
}

test('a scheme brings its colors back, takes back what was said since, and leaves the sheen', () => {
  const back = withScheme(repainted, schemeOf(house))
  expect(back.ok && back.value.finishes).toEqual({ all: { ...house.finishes.all, sheen: 'matte' } })
  const forth = withScheme(house, schemeOf(repainted))
  const colors = forth.ok
    ? Object.values(forth.value.finishes).map(({ scope, colourId }) => [scope.level, colourId])
    : []
  expect(colors).toEqual([
    ['house', slate.id],
    ['room', slate.id],
  ])
  expect(withScheme(house, schemeOf(house))).toEqual({ ok: true, value: house })
})

test('a scheme whose color is gone is refused with a sentence', () => {
  const without = { ...house, colours: { [linen.id]: linen } }
  const refused = withScheme(without, schemeOf(repainted))
  expect(refused.ok ? '' : refused.problem.sentence).toMatch(/color it names is gone/)
})

test('a scheme is kept in the job file and not offered as work', () => {
  const job = { ...house, options: { kept: schemeOf(repainted) } }
  const read = readJobFile(writeJobFile(job))
  expect(read.ok && schemesOf(read.value)).toEqual([schemeOf(repainted)])
  expect(pricedOptions(priceJob, job)).toEqual([])
})

test('the client gets the colors as they are and each scheme, and the walls square on', () => {
  const { job } = sampleInput()
  const order = sampleOrder({
    colours: house.colours,
    finishes: house.finishes,
    options: { kept: schemeOf(repainted, 'All in slate') },
  })
  const page = workOrderHtml(order, 'letter', ['colorSchemes'])
  const [, now = '', kept = ''] = page.split('class="color-scheme"')
  expect(now).toContain(`As chosen now`)
  expect(now).toContain(`fill="${linen.shown}"`)
  expect(now).not.toContain(`fill="${slate.shown}"`)
  expect(kept).toContain('All in slate')
  expect(kept).toContain(`fill="${slate.shown}"`)
  const walls = workOrderHtml(order, 'letter', ['houseColors']).split('Walls in their colors')[1] ?? ''
  expect(walls.match(/<figure>/g)).toHaveLength(
    Object.values(job.rooms).flatMap(({ corners }) => corners).length,
  )
  expect(walls).toContain('Wall A: a')
  expect(walls).toContain(`fill="${linen.shown}"`)
})
