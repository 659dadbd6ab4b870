import { isFields } from '../../lists/lists.ts'
import type { FileData, FileUpgrade } from './file-data.ts'

/** Version 1 knew products by class and colors by name only: nobody could say a brand or a color code. */
export const withBrandsAndCodes: FileUpgrade = (data) => ({
  ...data,
  ...withText(data, 'products', 'brand'),
  ...withText(data, 'colours', 'code'),
})

/** Every record of a list with an empty text of that name, unless it has one. */
function withText(data: FileData, list: string, name: string): FileData {
  const all = data[list]
  if (!Array.isArray(all)) return {}
  return {
    [list]: all.map((record: unknown) => (isFields(record) ? { [name]: '', ...record } : record)),
  }
}
