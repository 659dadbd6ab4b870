import type { Mark } from '../../core/project/progress-records.ts'

export type SiteMark = Partial<Mark> & Pick<Mark, 'stepKey' | 'mark' | 'at'>

/** Marks in the order given, one after the other, as a job's table. */
export function marksOf(...marks: readonly SiteMark[]): Readonly<Record<string, Mark>> {
  return Object.fromEntries(
    marks.map((mark, index) => {
      const id = `mark-${index}` as Mark['id']
      return [id, { id, crewMemberIds: [], actualMinutes: null, note: '', ...mark }]
    }),
  )
}
