import { isFields } from '../../lists/lists.ts'
import type { FileUpgrade } from './file-data.ts'

/** Nothing was written down before of receipts, cans used and finished jobs. */
export const withOutcomes: FileUpgrade = (data) => ({ receipts: [], cansUsed: [], ownJobs: [], ...data })

/** Nobody said before how far a job may come out from what was counted: it gets the shop assumptions, as the migration of books writes them. */
export const withSpreads: FileUpgrade = (data) => {
  const { houseRules } = data
  if (!isFields(houseRules)) return data
  const spreads = {
    pacePercent: 8,
    ratePercent: 20,
    materialPercent: 8,
    findingChancePercent: 25,
    findingSizePercent: 40,
    coatAgainPercent: 3,
    restsOn: 0,
  }
  return { ...data, houseRules: { spreads, ...houseRules } }
}
