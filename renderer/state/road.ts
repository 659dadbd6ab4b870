import { fail, type Outcome, type Problem, type ProblemKind } from '../../core/project/problem.ts'
import type { Timer } from './timer.ts'

/** Pauses before a failed request is made again (ms); the last one stays. */
const pauses = [1000, 2000, 4000, 8000, 15_000, 30_000] as const
/** A request without an answer for so long (ms) counts as lost. */
const longestWait = 30_000

/** The book or the road to it failed; the edit itself may be right. Anything else is the book's judgement of the edit. */
const failures: readonly ProblemKind[] = [
  'storageFailed',
  'bookShut',
  'hostFailed',
  'alreadyOpen',
  'fileDamaged',
  'fileFromTheFuture',
  'notAllowed',
]

export function isFailure({ kind }: Problem): boolean {
  return failures.includes(kind)
}

/** The job itself is not in the book any more, as against one of its records. */
export function isJobGone({ kind, ids }: Problem, jobKey: string): boolean {
  return kind === 'notFound' && ids.includes(jobKey)
}

/** How long to wait (ms) after so many failures in a row before the one that is meant now. */
export function pauseAfter(failed: number): number {
  return pauses[Math.min(failed, pauses.length - 1)] ?? pauses[0]
}

const noAnswer = fail(
  'hostFailed',
  'The host does not answer. Check whether Coatwright is still running. If it was ended, save a copy of the job as a file here, start Coatwright again and bring the file in.',
)

/** The answer to a request, or that there was none: the road broke, or it took too long. */
export function answerOf<Value>(timer: Timer, asked: Promise<Outcome<Value>>): Promise<Outcome<Value>> {
  return new Promise((resolve) => {
    const stop = timer.after(longestWait, () => resolve(noAnswer))
    const answered = (answer: Outcome<Value>) => {
      stop()
      resolve(answer)
    }
    asked.then(answered, () => answered(noAnswer))
  })
}
