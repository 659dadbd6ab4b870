import type { Estimate } from '../price/estimate-types.ts'
import type { Job } from '../project/job.ts'
import type { RoomId } from '../project/sketch-records.ts'
import { type SurfaceClass, surfaceClasses } from '../project/vocabulary.ts'
import { productClassWords, sheenWords, surfaceClassWords } from '../specification/trade-words.ts'
import type { Specification, Step } from '../specification/types.ts'
import { inRoom } from './by-room.ts'
import type { ClientEstimate } from './document-types.ts'
import { viewingRule } from './viewing-rule.ts'

/** What the client gets: rooms with their scope and share of the price, tax, options and the terms. No wages, rates or margins. */
export function clientEstimate(job: Job, specification: Specification, priced: Estimate): ClientEstimate {
  return {
    rooms: priced.rooms.map((room) => ({
      name: room.name,
      cents: room.cents,
      scope: scopeOf(job, specification, room.roomId),
    })),
    beforeTax: priced.totals.beforeTax,
    tax: priced.totals.tax,
    total: priced.totals.total,
    optional: priced.optional.map(({ label, cents }) => ({ label, cents })),
    doubts: priced.doubts,
    terms: termsOf(job),
  }
}

/** `Walls: preparation, 2 coats latex wall paint, Linen, eggshell. Ceiling: 1 coat latex ceiling paint, flat.` */
function scopeOf(job: Job, specification: Specification, roomId: RoomId): string {
  const steps = inRoom(specification.steps, roomId)
  return surfaceClasses
    .map((surfaceClass) => scopeOfClass(job, surfaceClass, steps))
    .filter((sentence) => sentence !== '')
    .join(' ')
}

const preparing: ReadonlySet<Step['operation']> = new Set<Step['operation']>([
  'scrape',
  'stripWallpaper',
  'washOffSize',
  'washOffCalcimine',
  'openCrack',
  'driveFastener',
  'reattachPlaster',
  'fill',
  'tapeCrack',
  'skim',
  'sandPatch',
  'sand',
  'degloss',
  'puttySash',
  'caulk',
  'treatRust',
])
const priming: ReadonlySet<Step['operation']> = new Set<Step['operation']>([
  'prime',
  'spotPrime',
  'sealChalk',
  'sealBare',
  'blockStain',
])

function scopeOfClass(job: Job, surfaceClass: SurfaceClass, all: readonly Step[]): string {
  const steps = all.filter((step) => step.surfaceClass === surfaceClass)
  const coats = new Map<string, number>()
  for (const step of steps.filter((each) => each.operation === 'coat')) {
    const paint = paintWords(job, step)
    coats.set(paint, Math.max(coats.get(paint) ?? 0, step.coat))
  }
  const parts = [
    ...(steps.some((step) => preparing.has(step.operation)) ? ['preparation'] : []),
    ...(steps.some((step) => priming.has(step.operation)) ? ['priming or sealing'] : []),
    ...[...coats].map(([paint, count]) => `${count} ${count === 1 ? 'coat' : 'coats'} ${paint}`),
  ]
  return parts.length === 0 ? '' : `${surfaceClassWords[surfaceClass]}: ${parts.join(', ')}.`
}

function paintWords(job: Job, step: Step): string {
  const colour = step.colourId === null ? undefined : job.colours[step.colourId]
  return [
    step.productClass === null ? 'paint' : productClassWords[step.productClass],
    ...(colour === undefined ? [] : [colour.name]),
    ...(step.sheen === null ? [] : [sheenWords[step.sheen]]),
  ].join(', ')
}

function termsOf(job: Job): readonly string[] {
  const { contingencyPercent } = job.houseRules.price
  return [
    contingencyPercent > 0
      ? 'The price holds an allowance for hidden conditions. What is found beyond it is shown with hours and price, and agreed before it is done.'
      : 'Hidden conditions are not in the price. What is found is shown with hours and price, and agreed before it is done.',
    viewingRule.text,
    'This estimate says nothing about whether lead or asbestos is present; where the law asks for testing or for certified work, that comes first.',
  ]
}
