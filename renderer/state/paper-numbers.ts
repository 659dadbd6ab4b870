import type { NumberedPaper } from '../../core/project/business-record.ts'
import { ask } from '../bridge/client.ts'
import { jobStore } from './app.ts'

/** The next number of the shop sheet for a paper of this kind; null, with the reason said, where none could be had. */
export async function takePaperNumber(of: NumberedPaper): Promise<number | null> {
  const taken = await ask('takeNumber', { of })
  if (taken.ok) return taken.value.number
  jobStore.refuse(taken.problem)
  return null
}
