import type { FileUpgrade } from './file-data.ts'

/** Until version 6 a finding named the file of a photo at most; that name stays where it is, for there is no picture to take over. */
export const withPhotos: FileUpgrade = (data) => ({ photos: [], ...data })
