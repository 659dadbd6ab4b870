import type { CollectionName, HouseRules, JobHeader, RecordOf } from '../../../core/project/job.ts'
import { applyCommands } from '../../../core/sketch/apply-command.ts'
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
  return job === null ? false : jobStore.perform(deed, applyCommands(job, commands))
}
