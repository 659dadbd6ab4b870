import { colorsNow, schemesOf, withScheme } from '../../../core/agreement/color-schemes.ts'
import type { JobOption } from '../../../core/project/agreement-records.ts'
import type { Job } from '../../../core/project/job.ts'
import { newId } from '../../state/new-id.ts'
import { edit, putRecord, removeRecord } from '../parts/edits.ts'

/** Keeps the colors of the job as they are under a name, in the place of a scheme of that name. */
export function keepScheme(job: Job, name: string): boolean {
  const known = schemesOf(job).find((scheme) => scheme.name === name)
  return putRecord(`Keep the colors as “${name}”`, 'options', {
    id: known?.id ?? newId('option'),
    name,
    note: '',
    oneOf: '',
    isScheme: true,
    changes: colorsNow(job),
  })
}

export function takeScheme(scheme: JobOption): boolean {
  return edit(`Take over the colors of “${scheme.name}”`, (job) => withScheme(job, scheme))
}

export function dropScheme({ id, name }: JobOption): boolean {
  return removeRecord(`Drop the color scheme “${name}”`, 'options', id)
}
