import type { CollectionName, HouseRules, Job, JobHeader, RecordOf } from '../../../core/project/job.ts'
import { type Outcome, succeed } from '../../../core/project/problem.ts'
import { applyCommand } from '../../../core/sketch/apply-command.ts'
import type { SketchCommand } from '../../../core/sketch/commands.ts'
import { jobStore } from '../../state/app.ts'

/** Adds a record or puts it in the place of the one with its id, as one deed. */
export function putRecord<Name extends CollectionName>(
  deed: string,
  collection: Name,
  record: RecordOf<Name>,
): boolean {
  return command(deed, { kind: 'putRecord', collection, record })
}

export function removeRecord(deed: string, collection: CollectionName, id: string): boolean {
  return command(deed, { kind: 'removeRecord', collection, id })
}

export function changeHeader(deed: string, change: Partial<JobHeader>): boolean {
  return command(deed, { kind: 'setHeader', change })
}

export function changeHouseRules(deed: string, change: Partial<HouseRules>): boolean {
  return command(deed, { kind: 'setHouseRules', change })
}

export function command(deed: string, ...commands: readonly SketchCommand[]): boolean {
  const { job } = jobStore.store.getState()
  return job === null ? false : jobStore.perform(deed, commanded(job, commands))
}

/** The job after several commands, or the first problem on the way. */
export function commanded(job: Job, commands: readonly SketchCommand[]): Outcome<Job> {
  return commands.reduce<Outcome<Job>>(
    (outcome, each) => (outcome.ok ? applyCommand(outcome.value, each) : outcome),
    succeed(job),
  )
}
