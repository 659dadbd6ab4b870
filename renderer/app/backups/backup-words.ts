import type { BackupKind, BackupSummary, ShutReason, WayOut } from '../../../core/contract/book.ts'
import { momentWords } from '../../../core/time/date-words.ts'

export const kindWords: Readonly<Record<BackupKind, string>> = {
  work: 'made while working',
  beforeForm: 'before a newer version of the program updated the book',
  beforeRemoval: 'before a job was deleted',
  exchanged: 'what was stored when the file was replaced',
  setAside: 'a book that was set aside, with its log',
}

export const shutTitles: Readonly<Record<ShutReason, string>> = {
  damaged: 'The book of jobs is damaged',
  logDamaged: 'The log of the book is damaged',
  missing: 'The book of jobs is not there',
  empty: 'The book of jobs is empty',
  replaced: 'This is another book of jobs',
  exchanged: 'The book was replaced while it was open',
  newer: 'The book is from another version of Coatwright',
  foreign: 'This file is not a book of jobs',
  unreachable: 'The book of jobs cannot be opened',
}

export const wayWords: Readonly<Record<WayOut, { readonly button: string; readonly does: string }>> = {
  tryAgain: { button: 'Try again', does: 'Looks again; changes nothing.' },
  startNew: {
    button: 'Begin a new, empty book',
    does: 'What is there now is set aside among the backups, not deleted.',
  },
  openAsItIs: {
    button: 'Open the file that is there now',
    does: 'It is the book from now on; the backups stay.',
  },
  openReadablePart: {
    button: 'Open it as far as it can be read',
    does: 'The last edits may be missing. File and log are set aside as they are.',
  },
}

/** `Mon Mar 29, 2027, 8:05 am` of a local moment `2027-03-29T08:05`, in the way of writing of most books. */
export function takenWords(local: string): string {
  const [date, time] = momentWords(local, 'imperial').split(', ')
  return `${date}, ${local.slice(0, 4)}, ${time}`
}

/** How long ago in the largest unit that fits, `3 hours ago`; milliseconds. */
export function agoWords(elapsed: number): string {
  const minutes = Math.floor(elapsed / 60_000)
  if (minutes < 1) return 'just now'
  if (minutes < 60) return count(minutes, 'minute')
  if (minutes < 48 * 60) return count(Math.floor(minutes / 60), 'hour')
  return count(Math.floor(minutes / (24 * 60)), 'day')
}

function count(number: number, unit: string): string {
  return `${number} ${unit}${number === 1 ? '' : 's'} ago`
}

/** `3 jobs · 0.4 MB`; a file that cannot be counted without touching it says so. */
export function sizeWords({ jobCount, bytes }: Pick<BackupSummary, 'jobCount' | 'bytes'>): string {
  const jobs = jobCount === null ? 'jobs not counted' : `${jobCount} ${jobCount === 1 ? 'job' : 'jobs'}`
  return `${jobs} · ${(bytes / 1_000_000).toFixed(1)} MB`
}
