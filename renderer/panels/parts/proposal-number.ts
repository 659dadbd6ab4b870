import type { JobHeader } from '../../../core/project/job.ts'
import { takePaperNumber } from '../../state/paper-numbers.ts'
import { changeHeader } from './edits.ts'

/** The number of this job's proposals, counted on the shop sheet when the first one goes out; null where none could be had. */
export async function proposalNumberOf({ proposalNumber }: JobHeader): Promise<number | null> {
  if (proposalNumber !== null) return proposalNumber
  const number = await takePaperNumber('proposal')
  if (number !== null) changeHeader('Number the proposal', { proposalNumber: number })
  return number
}
