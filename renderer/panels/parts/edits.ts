import type { Business } from '../../../core/project/business-record.ts'
import type { CollectionName, HouseRules, Job, JobHeader, RecordOf } from '../../../core/project/job.ts'
import type { Outcome } from '../../../core/project/problem.ts'
import { applyCommands, applyTogether } from '../../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { jobStore } from '../../state/app.ts'

/** Adds a record or puts it in the place of the one with its id, as one action. */
export function putRecord<Name extends CollectionName>(
  action: string,
  collection: Name,
  record: RecordOf<Name>,
): boolean {
  return command(action, { kind: 'putRecord', collection, record })
}

export function removeRecord(action: string, collection: CollectionName, id: string): boolean {
  return command(action, { kind: 'removeRecord', collection, id })
}

export function changeHeader(action: string, change: Partial<JobHeader>): boolean {
  return command(action, { kind: 'setHeader', change })
}

export function changeHouseRules(action: string, change: Partial<HouseRules>): boolean {
  return command(action, { kind: 'setHouseRules', change })
}

export function changeBusiness(action: string, change: Partial<Business>): boolean {
  return command(action, { kind: 'setBusiness', change })
}

/** Many changes as one action, checked when all are made. */
export function together(action: string, commands: readonly SketchCommand[]): boolean {
  return edit(action, (job) => applyTogether(job, commands))
}

export function command(action: string, ...commands: readonly SketchCommand[]): boolean {
  return edit(action, (job) => applyCommands(job, commands))
}

/** Any change of the open job as one action; false where it is refused or no job is open. */
export function edit(action: string, change: (job: Job) => Outcome<Job>): boolean {
  const { job } = jobStore.store.getState()
  return job === null ? false : jobStore.perform(action, change(job))
}
