import type { Mark } from '../../../core/project/progress-records.ts'
import { newId } from '../../state/new-id.ts'
import { command, putRecord } from '../parts/edits.ts'

const actions: Readonly<Record<Mark['mark'], string>> = {
  started: 'Mark a step started',
  done: 'Check a step off',
  skipped: 'Leave a step out',
  redo: 'Ask for a step again',
  cleared: 'Take a mark back',
}

type Rest = Partial<Pick<Mark, 'crewMemberIds' | 'actualMinutes' | 'note'>>

/** Adds what happened to a step; marks are only ever added. */
export function addMark(stepKey: string, mark: Mark['mark'], at: string, rest: Rest = {}): boolean {
  return putRecord(actions[mark], 'marks', markOf(stepKey, mark, at, rest))
}

interface NewMark extends Pick<Mark, 'stepKey' | 'mark' | 'at' | 'crewMemberIds'> {
  readonly note?: string
  readonly actualMinutes?: number
}

/** Marks of several steps, each with its own time, people and note, as one action. */
export function addMarks(action: string, marks: readonly NewMark[]): boolean {
  return command(
    action,
    ...marks.map(({ stepKey, mark, at, ...rest }) => ({
      kind: 'putRecord' as const,
      collection: 'marks' as const,
      record: markOf(stepKey, mark, at, rest),
    })),
  )
}

/** The same mark for several steps, each with the people who did it. */
export function marksAt(
  stepKeys: readonly string[],
  mark: Mark['mark'],
  at: string,
  peopleOf: (stepKey: string) => Mark['crewMemberIds'] = () => [],
): readonly NewMark[] {
  return stepKeys.map((stepKey) => ({ stepKey, mark, at, crewMemberIds: peopleOf(stepKey) }))
}

function markOf(stepKey: string, mark: Mark['mark'], at: string, rest: Rest): Mark {
  return {
    id: newId('mark'),
    stepKey,
    mark,
    at,
    crewMemberIds: rest.crewMemberIds ?? [],
    actualMinutes: rest.actualMinutes ?? null,
    note: rest.note ?? '',
  }
}
