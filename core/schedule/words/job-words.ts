import type { Job } from '../../project/job.ts'
import { stepTitle, surfaceClassWords } from '../../specification/trade-words.ts'
import type { TasksOfJob } from '../job/tasks-from-specification.ts'
import type { ClashWords } from './clash-words.ts'

/** Tasks, rooms and people as a job calls them: `“Coat 2 (trim)” in Dining room`; what the job does not know keeps its id. */
export function wordsOfJob(job: Job, { groups }: TasksOfJob): ClashWords {
  const room = (id: string): string => job.rooms[id]?.name ?? id
  return {
    task: (id) => {
      const step = groups.get(id)?.steps[0]
      if (step === undefined) return id
      const surfaces =
        step.surfaceClass === null ? '' : ` (${surfaceClassWords[step.surfaceClass].toLowerCase()})`
      return `“${stepTitle(step)}${surfaces}” in ${room(step.roomId)}`
    },
    room,
    person: (id) => job.crew[id]?.name ?? id,
  }
}
