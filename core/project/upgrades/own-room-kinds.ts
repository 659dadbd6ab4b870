import { isFields } from '../../lists/lists.ts'
import type { FileUpgrade } from './file-data.ts'

/** A shop had no kinds of rooms of its own before. */
export const withRoomKinds: FileUpgrade = (data) => {
  const { houseRules } = data
  return isFields(houseRules) ? { ...data, houseRules: { roomKinds: [], ...houseRules } } : data
}
