import { useState } from 'react'
import type { NumberedPaper } from '../../../../core/project/business-record.ts'
import { jobStore } from '../../../state/app.ts'
import { takePaperNumber } from '../../../state/paper-numbers.ts'

/** Takes a number of the shop sheet for one paper at a time; another job opened meanwhile gets none. */
export function useNumbered(of: NumberedPaper) {
  const [isTaking, setTaking] = useState(false)

  async function withNumber(keep: (number: number) => void): Promise<void> {
    const jobId = openJobId()
    setTaking(true)
    const number = await takePaperNumber(of)
    setTaking(false)
    if (number !== null && openJobId() === jobId) keep(number)
  }

  return { isTaking, withNumber }
}

function openJobId(): string | undefined {
  return jobStore.store.getState().job?.header.id
}
