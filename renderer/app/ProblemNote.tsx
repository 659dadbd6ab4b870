import { jobStore, useJobState } from '../state/app.ts'

/** What could not be done and what to do about it, until it is dismissed or the next deed. */
export function ProblemNote() {
  const problem = useJobState((state) => state.problem)
  return (
    <div className="problem-place" aria-live="assertive">
      {problem === null ? null : (
        <div className="problem-note" role="alert">
          <span className="problem-mark" aria-hidden="true">
            !
          </span>
          <span>
            {problem.sentence}
            {problem.path === '' ? null : <span className="quiet"> ({problem.path})</span>}
          </span>
          <button type="button" className="plain-button" onClick={jobStore.dismissProblem}>
            Understood
          </button>
        </div>
      )}
    </div>
  )
}
