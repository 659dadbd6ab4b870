import { useEffect } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Job } from '../../core/project/job.ts'
import { ask } from '../bridge/client.ts'
import { useJob, viewStore } from './app.ts'

interface SiteNowState {
  /** The host's clock, asked anew every half minute. */
  readonly clock: string | null
  /** Set by hand, to write down later what happened earlier; null follows the clock. */
  readonly byHand: string | null
}

const nowStore = createStore<SiteNowState>(() => ({ clock: null, byHand: null }))
const betweenAsks = 30_000

/** The moment on site that marks, readiness and re-plans count from. Core reads no clock; this is where one comes in. */
export function useSiteNow(): {
  readonly now: string
  /** By the host's clock: what is accepted or given out carries this date, however late the work begins. */
  readonly today: string
  readonly isByHand: boolean
  readonly setByHand: (moment: string | null) => void
} {
  const job = useJob()
  const state = useStore(nowStore)
  useEffect(() => {
    void readClock()
    const timer = window.setInterval(readClock, betweenAsks)
    return () => window.clearInterval(timer)
  }, [])
  return {
    now: siteNow(job, state),
    today: clockOf(state),
    isByHand: state.byHand !== null,
    setByHand: (byHand) => nowStore.setState({ byHand }),
  }
}

/** Before the job's first day by the clock it is taken to be that morning: nothing can have been done on site yet. */
export function siteNow(job: Job, state: SiteNowState = nowStore.getState()): string {
  if (state.byHand !== null) return state.byHand
  const clock = clockOf(state)
  const begin = `${job.header.startsOn}T${job.houseRules.siteHours.from}`
  return clock > begin ? clock : begin
}

function clockOf(state: SiteNowState): string {
  return state.clock ?? viewStore.getState().host?.now ?? ''
}

/** Today by the host's clock, asked anew; null where no host answers. For what is done outside of a component. */
export async function askToday(): Promise<string | null> {
  await readClock()
  return dayOf(clockOf(nowStore.getState()))
}

/** Today by the host's clock as it was read last. */
export function todayByClock(): string | null {
  return dayOf(clockOf(nowStore.getState()))
}

function dayOf(moment: string): string | null {
  return moment === '' ? null : moment.slice(0, 10)
}

async function readClock(): Promise<void> {
  const answer = await ask('hostFacts', {})
  if (answer.ok) nowStore.setState({ clock: answer.value.now })
}
