import { isFields } from '../../lists/lists.ts'
import type { FileData, FileUpgrade } from './file-data.ts'

/** Version 4 knew neither how to reach the client and get in, nor the paper of the job, nor whether it is a demonstration or put away. */
export const withJobSheet: FileUpgrade = (data) => {
  const { header } = data
  if (!isFields(header)) return data
  const added = {
    phones: '',
    mail: '',
    access: '',
    paper: header.unitSystem === 'metric' ? 'a4' : 'letter',
    isDemonstration: typeof header.id === 'string' && header.id.startsWith('demo-'),
    isPutAway: false,
    proposalNumber: null,
  }
  return { ...data, header: { ...added, ...header } }
}

/** Version 4 held nothing of who the shop is; nothing is invented for it. */
export const withBusiness: FileUpgrade = (data) => ({ business: unsaidBusiness, ...data })

/** As migration 0012 writes it into books of before. */
const unsaidBusiness: FileData = {
  name: '',
  address: '',
  phone: '',
  mail: '',
  license: '',
  insurance: '',
  leadCertificate: { number: '', expiresOn: null },
  proposal: { validDays: 30, colorsDaysBefore: 7, prices: 'byRoom', hiddenHourCents: 0 },
  texts: { notIncluded: '', whoMoves: '', hiddenConditions: '', warranty: '', terms: '' },
  paymentSteps: [],
  nextNumbers: { proposal: 1, changeOrder: 1, invoice: 1 },
  assumed: [],
}
