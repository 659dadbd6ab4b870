import type { Job } from '../../project/job.ts'
import type { ProblemOfJob } from '../job/problem-of-job.ts'
import type { ClashWords } from './clash-words.ts'

/** Passes, rooms and people as a job calls them: `“Woodwork, second coat” in Dining room`; what the job does not know keeps its id. */
export function wordsOfJob(job: Job, { tasks }: ProblemOfJob): ClashWords {
  const room = (id: string): string => job.rooms[id]?.name ?? id
  return {
    task: (id) => {
      const pass = tasks.get(id)?.pass
      return pass === undefined ? id : `“${pass.name}” in ${room(pass.roomSetId)}`
    },
    room,
    person: (id) => job.crew[id]?.name ?? id,
  }
}
