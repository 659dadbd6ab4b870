import type { Net } from '../../fitting/net.ts'
import { type RandomStream, randomBelow } from '../../random.ts'
import type { Genes } from '../genes.ts'

/** The plan that is being changed, as its genes gave it. */
export interface Changed {
  readonly net: Net
  readonly genes: Genes
  readonly start: Int32Array
  readonly end: Int32Array
  readonly team: Int32Array
  readonly random: RandomStream
  /** Rooms with open tasks, and for each its open tasks. */
  readonly rooms: readonly number[]
  readonly tasks: readonly (readonly number[])[]
  /** All open tasks. */
  readonly open: readonly number[]
}

/** Changes genes in place. */
export type Move = (changed: Changed) => void

/** One of them by chance; the list must not be empty. */
export function oneOf<Item>(random: RandomStream, list: readonly Item[]): Item {
  return list[randomBelow(random, list.length)] as Item
}

/** Ticks of a day. */
export function dayTicks({ net }: Changed): number {
  return 1440 / net.axis.grid
}

/** About so many days either way, mostly few. */
export function someDays(random: RandomStream, most: number): number {
  return (random() < 0.5 ? -1 : 1) * random() * random() * most
}
