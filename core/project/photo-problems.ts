import { type Job, records } from './job.ts'
import type { Photo } from './photo-records.ts'
import { type Problem, problem } from './problem.ts'

/** Photos of one job; 600 take about 200 MB of the book. */
const mostPhotos = 600
/** Photos of one room or one finding. */
const mostOfOne = 60

/** A job with more photos than a book keeps. */
export function photoProblems(job: Job): readonly Problem[] {
  const photos = records(job.photos)
  if (photos.length > mostPhotos) return [tooMany(`This job has ${photos.length} photos`, mostPhotos, photos)]
  const counts = new Map<string, number>()
  for (const { of } of photos) {
    const subject = of.kind === 'room' ? of.roomId : of.conditionId
    counts.set(subject, (counts.get(subject) ?? 0) + 1)
  }
  const [subject, count] = [...counts].find(([, each]) => each > mostOfOne) ?? []
  if (subject === undefined) return []
  const name = job.rooms[subject]?.name
  const words = `${name === undefined ? 'One finding' : `The room ${name}`} has ${count} photos`
  return [tooMany(words, mostOfOne, photos)]
}

function tooMany(has: string, most: number, photos: readonly Photo[]): Problem {
  const last = photos.at(-1)
  const ids = last === undefined ? [] : [last.id]
  return problem('notValid', `${has}; at most ${most} are kept. Remove some first.`, ids, 'photos')
}
