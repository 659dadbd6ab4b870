import { withBrandsAndCodes } from './brands-and-codes.ts'
import type { FileData, FileUpgrade } from './file-data.ts'
import { nameJob } from './job-ids.ts'
import { withBusiness, withJobSheet } from './job-sheet-and-business.ts'
import { withLookedAtPieces } from './looked-at-pieces.ts'
import { withRoomKinds } from './own-room-kinds.ts'
import { withPasses } from './passes.ts'
import { withPinsOnPasses, withPlanAim } from './pins-on-passes.ts'
import { withRoomAllowances } from './room-allowances.ts'
import { raiseSafetySettings } from './safety-settings.ts'
import { withAgreement } from './with-agreement.ts'
import { withHolds } from './with-holds.ts'
import { withCredits, withLogo } from './with-logo-and-credits.ts'
import { withOutcomes, withSpreads } from './with-outcomes.ts'
import { withPhotos } from './with-photos.ts'

/** What version 2 says that version 1 did not, one named part for each kind of record. */
const toVersion2: readonly FileUpgrade[] = [
  nameJob,
  raiseSafetySettings,
  withHolds,
  withPasses,
  withBrandsAndCodes,
  withRoomAllowances,
]

/** Version 3 pins passes and says what the plan is looked for. */
const toVersion3: readonly FileUpgrade[] = [withPinsOnPasses, withPlanAim]

/** Version 4 says which pieces of a room were looked at and are sound. */
const toVersion4: readonly FileUpgrade[] = [withLookedAtPieces]

/** Version 5 says how to reach the client and get in, and holds the job's copy of who the shop is. */
const toVersion5: readonly FileUpgrade[] = [withJobSheet, withBusiness]

/** Version 6 holds photos, and their pictures where they travel along. */
const toVersion6: readonly FileUpgrade[] = [withPhotos]

/** Version 7 keeps options and what happened between the shop and its client. */
const toVersion7: readonly FileUpgrade[] = [withAgreement]

/** Version 8 keeps receipts, cans used and what finished jobs say, and how far a job may come out from what was counted. */
const toVersion8: readonly FileUpgrade[] = [withOutcomes, withSpreads]

/** Version 9 knows the shop's logo, what options cost together, and invoices that are taken back. */
const toVersion9: readonly FileUpgrade[] = [withLogo, withCredits]

/** Version 10 keeps kinds of rooms as the shop finds them. */
const toVersion10: readonly FileUpgrade[] = [withRoomKinds]

/** The first entry reads version 1. A version that was released is never taken out again. */
const fileUpgrades: readonly (readonly FileUpgrade[])[] = [
  toVersion2,
  toVersion3,
  toVersion4,
  toVersion5,
  toVersion6,
  toVersion7,
  toVersion8,
  toVersion9,
  toVersion10,
]

/** The version that upgrades lead to: the one this program writes. */
export const newestVersion = fileUpgrades.length + 1

/** The data of a file of `version` in the form of the newest version. */
export function upgradeFile(data: FileData, version: number): FileData {
  const upgraded = fileUpgrades
    .slice(version - 1)
    .flat()
    .reduce((file, upgrade) => upgrade(file), data)
  return { ...upgraded, version: newestVersion }
}
