import { Button } from 'react-aria-components'
import type { Problem } from '../../core/project/problem.ts'
import { jobStore, useJobState } from '../state/app.ts'

/** A path means something to whoever looks into the job file, and to nobody else. */
function isOfFile({ kind }: Problem): boolean {
  return ['notValid', 'danglingReference', 'duplicateId', 'duplicateScope'].includes(kind)
}

/** What could not be done and what to do about it, until it is dismissed or the next action. */
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
            {problem.path === '' || !isOfFile(problem) ? null : (
              <span className="quiet"> ({problem.path})</span>
            )}
          </span>
          <Button className="plain-button" onPress={jobStore.dismissProblem}>
            OK
          </Button>
        </div>
      )}
    </div>
  )
}
