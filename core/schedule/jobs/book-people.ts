import type { EpochMinutes } from '../../time/instant.ts'
import { compareText } from '../../words/text.ts'
import { commonTime, type NamedPresence, nameKey } from '../job/elsewhere.ts'

/** A job of the book with an accepted plan, and when people are at work for it. */
export interface JobAtWork {
  readonly jobKey: string
  /** Copies of a job have one id: they are one job, and never in each other's way. */
  readonly jobId: string
  readonly title: string
  /** Local dates of the first and the last work. */
  readonly startsOn: string
  readonly finishesOn: string
  readonly work: readonly NamedPresence[]
}

/** Somebody at a job of the book, from setting up to leaving. */
interface JobStay {
  readonly jobKey: string
  readonly jobId: string
  readonly from: EpochMinutes
  readonly to: EpochMinutes
}

export interface BookPerson {
  readonly name: string
  /** By time. */
  readonly stays: readonly JobStay[]
}

interface Row {
  readonly name: string
  readonly ids: Set<string>
  readonly names: Set<string>
  readonly stays: JobStay[]
}

/**
 * Everybody who works for jobs of the book, one row each: the people of the shop sheet first, whether they have work or not, then others by
 * name. The same id is the same person; where it is not known the name decides.
 */
export function peopleOfBook(
  shop: readonly { readonly id: string; readonly name: string }[],
  jobs: readonly JobAtWork[],
): readonly BookPerson[] {
  const rows: Row[] = shop.map(({ id, name }) => rowOf(id, name))
  const others: Row[] = []
  for (const { jobKey, jobId, work } of jobs) {
    for (const { crewMemberId, name, from, to } of work) {
      const known = [...rows, ...others]
      const row =
        known.find(({ ids }) => ids.has(crewMemberId)) ?? known.find(({ names }) => names.has(nameKey(name)))
      const own = row ?? rowOf(crewMemberId, name)
      if (row === undefined) others.push(own)
      own.ids.add(crewMemberId)
      own.names.add(nameKey(name))
      own.stays.push({ jobKey, jobId, from, to })
    }
  }
  return [...rows, ...others.toSorted((one, other) => compareText(one.name, other.name))].map(
    ({ name, stays }) => ({ name, stays: stays.toSorted((one, other) => one.from - other.from) }),
  )
}

function rowOf(id: string, name: string): Row {
  return { name, ids: new Set([id]), names: new Set([nameKey(name)]), stays: [] }
}

/** Two jobs that have one person at the same time. */
export interface DoubleBooking {
  readonly name: string
  readonly jobKeys: readonly [string, string]
  /** Every stretch in which it is so, by time. */
  readonly stretches: readonly { readonly from: EpochMinutes; readonly to: EpochMinutes }[]
}

/** Where somebody is at two jobs at once, one entry for each person and pair of jobs. */
export function doubleBookings(people: readonly BookPerson[]): readonly DoubleBooking[] {
  return people.flatMap(({ name, stays }) => {
    const pairs = new Map<string, DoubleBooking>()
    for (const [index, one] of stays.entries()) {
      for (const other of stays.slice(index + 1)) {
        // Sorted by begin: nothing further on can overlap.
        if (other.from >= one.to) break
        const span = one.jobId === other.jobId ? null : commonTime(one, other)
        if (span === null) continue
        const [first, second] = [one.jobKey, other.jobKey].toSorted(compareText)
        const jobKeys = [first ?? '', second ?? ''] as const
        const key = jobKeys.join('\n')
        pairs.set(key, { name, jobKeys, stretches: [...(pairs.get(key)?.stretches ?? []), span] })
      }
    }
    return [...pairs.values()]
  })
}
