import { problem } from '../../core/project/problem.ts'
import { jobStore } from '../state/app.ts'

/** A mistake of the program outside of what is drawn would pass without a word: it is said. Answers how to stop listening. */
export function listenForMishaps(): () => void {
  const onError = (event: ErrorEvent) => tell(event.error)
  const onRejection = (event: PromiseRejectionEvent) => tell(event.reason)
  window.addEventListener('error', onError)
  window.addEventListener('unhandledrejection', onRejection)
  return () => {
    window.removeEventListener('error', onError)
    window.removeEventListener('unhandledrejection', onRejection)
  }
}

/** Notices of the browser that carry no error, such as about a layout that took two rounds, are none of ours. */
function tell(error: unknown): void {
  if (!(error instanceof Error)) return
  jobStore.refuse(
    problem(
      'hostFailed',
      `The program made a mistake, and what you did just now may not have happened: ${error.message}. Check whether it did; if it goes wrong again, undo the last thing.`,
    ),
  )
}
