import { useMemo } from 'react'
import { useStore } from 'zustand'
import { createStore } from 'zustand/vanilla'
import type { Job } from '../../../core/project/job.ts'
import type { Problem } from '../../../core/project/problem.ts'
import { applyCommands } from '../../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { jobStore, useJob } from '../../state/app.ts'
import { putDraft, removeDraft } from '../../state/drafts.ts'
import { adoptPlan } from '../../state/planner.ts'

/** One change being thought about. A later one with the same key takes the place of the earlier. */
interface TrialChange {
  readonly key: string
  /** As it would be named in "Undo ...". */
  readonly name: string
  readonly commands: readonly SketchCommand[]
}

interface TrialState {
  readonly jobKey: string | null
  readonly changes: readonly TrialChange[]
}

const trialPlace = 'calendar-trial'
const trialStore = createStore<TrialState>(() => ({ jobKey: null, changes: [] }))

// What is tried and not taken would be lost with the page, so it counts as not stored.
trialStore.subscribe(({ jobKey, changes }) => {
  const isOpen = jobKey === jobStore.store.getState().jobKey && changes.length > 0
  if (!isOpen) return removeDraft(trialPlace)
  const text = changes.map((change) => change.name).join('; ')
  putDraft(trialPlace, { label: 'Calendar, being tried', text, take: () => false })
})

/** Adds a change to what is being tried; nothing is stored until it is taken. */
export function tryChange(change: TrialChange): void {
  const { jobKey } = jobStore.store.getState()
  const others = changesFor(trialStore.getState(), jobKey).filter((each) => each.key !== change.key)
  trialStore.setState({ jobKey, changes: [...others, change] })
}

export function dropChange(key: string): void {
  const { jobKey, changes } = trialStore.getState()
  trialStore.setState({ jobKey, changes: changes.filter((change) => change.key !== key) })
}

export function dropTrial(): void {
  trialStore.setState({ changes: [] })
}

/** Makes all that is being tried one action of the job. */
export function takeTrial(): void {
  const { job, jobKey } = jobStore.store.getState()
  const changes = changesFor(trialStore.getState(), jobKey)
  if (job === null || changes.length === 0) return
  const name = changes.map((change) => change.name).join('; ')
  const outcome = applyCommands(
    job,
    changes.flatMap((change) => change.commands),
  )
  if (!jobStore.perform(name, outcome)) return
  const taken = jobStore.store.getState().job
  if (taken !== null) adoptPlan('trial', taken)
  dropTrial()
}

/** One and the same, so that nothing is taken for a change. */
const noChanges: readonly TrialChange[] = []

function changesFor(state: TrialState, jobKey: string | null): readonly TrialChange[] {
  return state.jobKey === jobKey ? state.changes : noChanges
}

export interface Trial {
  readonly changes: readonly TrialChange[]
  /** The job with the changes, the very job where there are none. */
  readonly job: Job
  readonly problem: Problem | null
}

export function useJobOnTrial(): Trial {
  const job = useJob()
  const state = useStore(trialStore)
  const changes = changesFor(state, jobStore.store.getState().jobKey)
  return useMemo(() => {
    const outcome = applyCommands(
      job,
      changes.flatMap((change) => change.commands),
    )
    return outcome.ok
      ? { changes, job: outcome.value, problem: null }
      : { changes, job, problem: outcome.problem }
  }, [job, changes])
}
