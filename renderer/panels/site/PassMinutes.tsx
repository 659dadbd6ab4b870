import { wholeShares } from '../../../core/lists/whole-shares.ts'
import { stepMinutes } from '../../../core/price/labour.ts'
import type { StepProgress } from '../../../core/progress/step-states.ts'
import type { Job } from '../../../core/project/job.ts'
import { EntryField } from '../parts/EntryField.tsx'
import { wholeNumber } from '../parts/entries.ts'
import { addMarks } from './marks.ts'

/** How long a pass took that is done: its steps share the minutes as they were counted, and keep when and by whom they were done. */
export function PassMinutes({ job, steps }: { readonly job: Job; readonly steps: readonly StepProgress[] }) {
  const done = steps.flatMap(({ step, state, history }) =>
    state.kind === 'done' ? [{ step, at: state.at, last: history.at(-1) }] : [],
  )
  if (done.length === 0) return null
  const written = done.reduce((sum, { last }) => sum + (last?.actualMinutes ?? 0), 0)

  function keep(minutes: number): boolean {
    const shares = wholeShares(
      minutes,
      done.map(({ step }) => stepMinutes(job, step)),
    )
    return addMarks(
      'Write down how long a pass took',
      done.map(({ step, at, last }, index) => ({
        stepKey: step.key,
        mark: 'done',
        at,
        crewMemberIds: last?.crewMemberIds ?? [],
        actualMinutes: shares[index] ?? 0,
        note: last?.note ?? '',
      })),
    )
  }

  return (
    <EntryField
      label="Minutes it took, all together"
      shown={written === 0 ? '' : String(written)}
      read={wholeNumber(1, 100_000)}
      unit="min"
      width="short"
      onCommit={keep}
    />
  )
}
