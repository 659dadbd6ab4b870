import type { Mark, MarkId } from '../../../core/project/progress-records.ts'
import { newId } from '../../state/app.ts'
import { putRecord } from '../parts/edits.ts'

const deeds: Readonly<Record<Mark['mark'], string>> = {
  started: 'Mark a step started',
  done: 'Tick a step done',
  skipped: 'Leave a step out',
  redo: 'Ask for a step again',
  cleared: 'Take a mark back',
}

/** Adds what happened to a step; marks are only ever added. */
export function addMark(
  stepKey: string,
  mark: Mark['mark'],
  at: string,
  rest: Partial<Pick<Mark, 'crewMemberIds' | 'actualMinutes' | 'note'>> = {},
): boolean {
  return putRecord(deeds[mark], 'marks', {
    id: newId('mark') as MarkId,
    stepKey,
    mark,
    at,
    crewMemberIds: rest.crewMemberIds ?? [],
    actualMinutes: rest.actualMinutes ?? null,
    note: rest.note ?? '',
  })
}
