import { fingerprint } from '../../words/fingerprint.ts'
import type { FileData } from './file-data.ts'

/** Jobs had no id of their own. One is derived from what the file says, so that the same file always gives the same job. */
export function nameJob(data: FileData): FileData {
  const { header } = data
  if (typeof header !== 'object' || header === null || 'id' in header) return data
  const text = JSON.stringify({ ...data, version: undefined })
  return { ...data, header: { id: `job-${fingerprint(text)}`, ...header } }
}
