import type { Ask, Handlers, RequestName } from '../../core/contract/requests.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'
import { answerRequest } from '../../electron/handlers/answer.ts'
import type { SimulatedTime } from './simulated-time.ts'

/** Where a request is lost: on its way to the host, on the way back after the host did it, or silently without any answer. */
export type LostAt = 'theWayThere' | 'theWayBack' | 'thereInSilence' | 'backInSilence'
export const placesToBeLost: readonly LostAt[] = ['theWayThere', 'theWayBack']

export interface Fault {
  /** The request, counted from 0, that fails first. */
  readonly first: number
  readonly lostAt: LostAt
  /** How many requests fail, or for how long from the first on (ms). */
  readonly lasts: { readonly requests: number } | { readonly time: number }
}

export interface FaultyHost {
  readonly ask: Ask
  /** Names of all requests made, in order. */
  readonly asked: readonly RequestName[]
  readonly failed: () => number
}

/** How long a request and its answer travel (ms). */
const wayThere = 4
const wayBack = 9

/** The real handlers behind a road on which requests and answers get lost. What travels is text, as with a browser. */
export function faultyHost(handlers: Handlers, time: SimulatedTime, fault: Fault | null): FaultyHost {
  const asked: RequestName[] = []
  let failed = 0
  let begin: number | null = null

  function isLost(): boolean {
    if (fault === null || asked.length - 1 < fault.first) return false
    begin ??= time.now()
    return 'requests' in fault.lasts ? failed < fault.lasts.requests : time.now() < begin + fault.lasts.time
  }

  async function answer(name: RequestName, text: string): Promise<unknown> {
    asked.push(name)
    const lostAt = fault !== null && isLost() ? fault.lostAt : null
    if (lostAt !== null) failed++
    await travelled(wayThere)
    if (lostAt === 'theWayThere') return noHost
    if (lostAt === 'thereInSilence') return never
    const outcome = await answerRequest(handlers, name, JSON.parse(text))
    await travelled(wayBack)
    if (lostAt === 'theWayBack') return noHost
    if (lostAt === 'backInSilence') return never
    return JSON.parse(JSON.stringify(outcome))
  }

  function travelled(milliseconds: number): Promise<void> {
    return new Promise((resolve) => {
      time.after(milliseconds, resolve)
    })
  }

  const ask = ((name: RequestName, argument: unknown) => answer(name, JSON.stringify(argument))) as Ask
  return { ask, asked, failed: () => failed }
}

const noHost: Outcome<never> = fail('hostFailed', 'The host does not answer.')
const never = new Promise<never>(() => undefined)
