import type { Job, JobHeader, Table } from './job.ts'
import type { Storey } from './sketch-records.ts'

/** The shop's own lists, copied into a job when it starts so that an old job never changes by itself. */
export interface ShopLists {
  readonly houseRules: Job['houseRules']
  readonly business: Job['business']
  readonly colours: Job['colours']
  readonly products: Job['products']
  readonly crew: Job['crew']
  readonly rates: Job['rates']
  readonly rules: Job['rules']
}

/** A job in which nothing is drawn or found yet. */
export function emptyJob(header: JobHeader, shop: ShopLists, storeys: readonly Storey[]): Job {
  return {
    header,
    houseRules: shop.houseRules,
    business: shop.business,
    storeys: tableOf(storeys),
    rooms: {},
    openings: {},
    ceilingOpenings: {},
    trimRuns: {},
    builtItems: {},
    keptItems: {},
    existing: {},
    conditions: {},
    photos: {},
    holds: {},
    colours: shop.colours,
    finishes: {},
    products: shop.products,
    crew: shop.crew,
    rates: shop.rates,
    rules: shop.rules,
    pins: {},
    marks: {},
    issued: {},
    options: {},
    dealings: {},
    receipts: {},
    cansUsed: {},
    ownJobs: {},
  }
}

/** Records by their ids, in the order given. Two with the same id are the caller's mistake. */
export function tableOf<Item extends { readonly id: string }>(items: readonly Item[]): Table<Item> {
  const table = Object.fromEntries(items.map((item) => [item.id, item]))
  if (Object.keys(table).length !== items.length) {
    throw new Error(`two records have the same id among ${items.map((item) => item.id).join(', ')}`)
  }
  return table
}
