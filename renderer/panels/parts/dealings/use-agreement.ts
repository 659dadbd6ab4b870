import { useMemo } from 'react'
import { type Agreement, agreementOf } from '../../../../core/agreement/agreement.ts'
import { records } from '../../../../core/project/job.ts'
import { useJob } from '../../../state/app.ts'

export function useAgreement(): Agreement {
  const job = useJob()
  return useMemo(() => agreementOf(records(job.dealings), records(job.marks).length > 0), [job])
}
