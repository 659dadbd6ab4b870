import { isFields } from '../../lists/lists.ts'
import type { FileUpgrade } from './file-data.ts'

/** How a shop gathers steps into passes until it says otherwise (shop assumption). */
const usualPasses = { primed: 'together', repairs: 'together', largestHours: 6.5 }

/** Version 1 knew no passes, and no room that is worked with another. */
export const withPasses: FileUpgrade = (data) => ({
  ...data,
  ...(isFields(data.houseRules) ? { houseRules: { passes: usualPasses, ...data.houseRules } } : {}),
  ...(Array.isArray(data.rooms)
    ? { rooms: data.rooms.map((room: unknown) => (isFields(room) ? { workedWith: null, ...room } : room)) }
    : {}),
})
