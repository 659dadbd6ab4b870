import type { Job } from '../project/job.ts'
import { quantityTotals } from '../quantities/quantity-totals.ts'
import type { QuantityTotals, SurfaceQuantity, Takeoff } from '../quantities/takeoff-types.ts'
import { surfaceClassWords } from './trade-words.ts'
import type { Specification } from './types.ts'

export const groupings = ['room', 'storey', 'surfaceClass', 'colour', 'product'] as const
export type Grouping = (typeof groupings)[number]

export const groupingWords: Readonly<Record<Grouping, string>> = {
  room: 'Room',
  storey: 'Floor',
  surfaceClass: 'Kind of surface',
  colour: 'Color',
  product: 'Product',
}

export interface QuantityGroup {
  readonly key: string
  readonly name: string
  readonly surfaces: readonly SurfaceQuantity[]
  readonly totals: QuantityTotals
}

/** Surfaces put together by what is asked for. A surface that gets several products stands under each of them. */
export function quantityGroups(
  job: Job,
  takeoff: Takeoff,
  specification: Pick<Specification, 'steps'>,
  grouping: Grouping,
): readonly QuantityGroup[] {
  const namesOf = groupNames(job, specification, grouping)
  const groups = new Map<string, { name: string; surfaces: SurfaceQuantity[] }>()
  for (const surface of takeoff.surfaces) {
    for (const [key, name] of namesOf(surface)) {
      const group = groups.get(key) ?? { name, surfaces: [] }
      group.surfaces.push(surface)
      groups.set(key, group)
    }
  }
  return [...groups].map(([key, { name, surfaces }]) => ({
    key,
    name,
    surfaces,
    totals: quantityTotals(surfaces),
  }))
}

type NamesOf = (surface: SurfaceQuantity) => readonly (readonly [key: string, name: string])[]

function groupNames(job: Job, specification: Pick<Specification, 'steps'>, grouping: Grouping): NamesOf {
  switch (grouping) {
    case 'room':
      return (surface) => [[surface.roomId, job.rooms[surface.roomId]?.name ?? surface.roomId]]
    case 'storey':
      return (surface) => {
        const storey = job.storeys[job.rooms[surface.roomId]?.storeyId ?? '']
        return [[storey?.id ?? 'none', storey?.name ?? 'No floor']]
      }
    case 'surfaceClass':
      return (surface) => [[surface.surfaceClass, surfaceClassWords[surface.surfaceClass]]]
    case 'colour':
      return byStep(specification, 'No color: left as it is', (step) =>
        step.operation === 'coat' && step.colourId !== null
          ? [step.colourId, job.colours[step.colourId]?.name ?? step.colourId]
          : null,
      )
    case 'product':
      return byStep(specification, 'No product: left as it is', (step) =>
        step.productId === null
          ? null
          : [step.productId, job.products[step.productId]?.name ?? step.productId],
      )
  }
}

function byStep(
  specification: Pick<Specification, 'steps'>,
  nothing: string,
  nameOf: (step: Specification['steps'][number]) => readonly [string, string] | null,
): NamesOf {
  const found = new Map<string, Map<string, string>>()
  for (const step of specification.steps) {
    const name = nameOf(step)
    if (name === null) continue
    for (const key of step.surfaceKeys) {
      const names = found.get(key) ?? new Map<string, string>()
      names.set(...name)
      found.set(key, names)
    }
  }
  return (surface) => [...(found.get(surface.key) ?? new Map([['none', nothing]]))]
}
