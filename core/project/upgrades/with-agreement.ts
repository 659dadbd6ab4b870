import type { FileUpgrade } from './file-data.ts'

/** Before version 7 nothing was written down of options, acceptance, invoices and payments. */
export const withAgreement: FileUpgrade = (data) => ({ options: [], dealings: [], ...data })
