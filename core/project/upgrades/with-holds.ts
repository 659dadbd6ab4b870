import type { FileUpgrade } from './file-data.ts'

/** Version 1 knew of holds only as notices: nobody could say when one was cleared, so there is nothing to take over. */
export const withHolds: FileUpgrade = (data) => ({ holds: [], ...data })
