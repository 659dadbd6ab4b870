import { useMemo } from 'react'
import { type Agreement, agreementOf } from '../../../../core/agreement/agreement.ts'
import { createPriceJob, type PriceJob } from '../../../../core/agreement/whole-price.ts'
import { records } from '../../../../core/project/job.ts'
import { useJob } from '../../../state/app.ts'

/** One for the page, so that what was worked out of a room is kept from option to option. */
export const priceJob: PriceJob = createPriceJob()

export function useAgreement(): Agreement {
  const job = useJob()
  return useMemo(() => agreementOf(records(job.dealings), records(job.marks).length > 0), [job])
}
