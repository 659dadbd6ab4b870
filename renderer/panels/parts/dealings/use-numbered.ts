import { useState } from 'react'
import { jobStore } from '../../../state/app.ts'

/** Takes a number of the shop sheet for one paper at a time; another job opened meanwhile gets none. */
export function useNumbered(take: () => Promise<number | null>) {
  const [isTaking, setTaking] = useState(false)

  async function withNumber(keep: (number: number) => void): Promise<void> {
    const jobId = openJobId()
    setTaking(true)
    const number = await take()
    setTaking(false)
    if (number !== null && openJobId() === jobId) keep(number)
  }

  return { isTaking, withNumber }
}

function openJobId(): string | undefined {
  return jobStore.store.getState().job?.header.id
}
