import { isFields } from '../../lists/lists.ts'
import type { FileUpgrade } from './file-data.ts'

/** Before version 9 no shop had a logo. */
export const withLogo: FileUpgrade = (data) =>
  isFields(data.business) ? { ...data, business: { logo: null, ...data.business } } : data

const nothing = { beforeTaxCents: 0, taxCents: 0 }

/** Before version 9 options were agreed at the sum of their printed prices, and no invoice was taken back. */
export const withCredits: FileUpgrade = (data) => {
  const { dealings } = data
  return Array.isArray(dealings) ? { ...data, dealings: dealings.map(upgraded) } : data
}

function upgraded(dealing: unknown): unknown {
  if (!isFields(dealing)) return dealing
  if (dealing.kind === 'accepted') return { together: nothing, ...dealing }
  return dealing.kind === 'invoiced' ? { credits: null, ...dealing } : dealing
}
