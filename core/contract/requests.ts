import type { Stage } from '../agreement/agreement.ts'
import type { NumberedPaper } from '../project/business-record.ts'
import type { JobDiff } from '../project/diff.ts'
import type { Job } from '../project/job.ts'
import type { Outcome } from '../project/problem.ts'
import type { WorkElsewhere } from '../schedule/job/elsewhere.ts'
import type { JobAtWork } from '../schedule/jobs/book-people.ts'
import type { BackupSummary, BookState, WayOut } from './book.ts'

/** The shop sheet is kept like a job, under this key; it is not in the list of jobs. */
export const shopKey = 'shop'

/** One job of the book, as the list of jobs shows it. */
export interface JobSummary {
  readonly jobKey: string
  readonly title: string
  readonly client: string
  readonly startsOn: string
  readonly roomCount: number
  readonly isDemonstration: boolean
  readonly isPutAway: boolean
  /** Where it stands between the shop and its client. */
  readonly stage: Stage
  /** Agreed with the client, with tax; 0 before anything is. */
  readonly agreedCents: number
  /** Agreed and not paid. */
  readonly balanceCents: number
  /** ISO instant of the last stored edit. */
  readonly editedAt: string
}

export interface OpenedJob {
  readonly jobKey: string
  readonly job: Job
  /** Rises by one with every stored edit; an edit sent against an older revision is refused. */
  readonly revision: number
}

export interface HostFacts {
  readonly host: 'desktop' | 'loopback' | 'headless'
  readonly version: string
  /** Where the book of jobs is kept, for the user to read. */
  readonly bookPath: string
  /** The host can write a PDF by itself; otherwise the browser's print dialog is used. */
  readonly writesPdf: boolean
  /** Local date and time on this machine, `2027-03-31T08:30`; the core never reads a clock. */
  readonly now: string
}

/**
 * The one request map: name, argument and answer. Served by Electron IPC, by the loopback host and headless.
 * Failures travel as data (`Outcome`), because thrown errors lose everything but their message between processes.
 */
interface Requests {
  hostFacts: { argument: Record<string, never>; answer: HostFacts }
  /** Whether the book is open, and what the user should know about it. */
  bookState: { argument: Record<string, never>; answer: BookState }
  /** The newest first, books set aside among them. */
  listBackups: { argument: Record<string, never>; answer: readonly BackupSummary[] }
  /** The jobs in one backup; it is read through a copy and stays as it is. */
  lookIntoBackup: { argument: { readonly name: string }; answer: readonly JobSummary[] }
  /** Puts one job of a backup into the book, as a job of its own. */
  bringJobBack: { argument: { readonly name: string; readonly jobKey: string }; answer: OpenedJob }
  /** Sets the book aside, deleting nothing, and opens a copy of a backup in its place. */
  goBackToBackup: { argument: { readonly name: string }; answer: BookState }
  /** What to do about a shut book. */
  leaveShutBook: { argument: { readonly way: WayOut }; answer: BookState }
  listJobs: { argument: Record<string, never>; answer: readonly JobSummary[] }
  /** The shop sheet; one is begun where the book has none yet. */
  openShop: { argument: Record<string, never>; answer: OpenedJob }
  /** The next number of a paper, counted on the shop sheet at once: it is never given twice. */
  takeNumber: { argument: { readonly of: NumberedPaper }; answer: { readonly number: number } }
  /** The same house as a job of its own, without what was given out and done. */
  duplicateJob: { argument: { readonly jobKey: string }; answer: OpenedJob }
  /** An empty job with a copy of the shop sheet. */
  createJob: {
    argument: { readonly title: string; readonly unitSystem: 'imperial' | 'metric' }
    answer: OpenedJob
  }
  openJob: { argument: { readonly jobKey: string }; answer: OpenedJob }
  /** What `openJob` would answer as revision, and nothing else: cheap enough to be asked every few seconds. */
  jobRevision: { argument: { readonly jobKey: string }; answer: { readonly revision: number } }
  /** When people are on the other jobs of the book, by the plans accepted last; stretches that end before this job begins are left out. */
  workElsewhere: { argument: { readonly jobKey: string }; answer: readonly WorkElsewhere[] }
  /** When people are on each job of the book that has an accepted plan and is neither lost nor finished. */
  workOfBook: { argument: Record<string, never>; answer: readonly JobAtWork[] }
  /** A fresh copy of the demonstration house. */
  openDemo: { argument: Record<string, never>; answer: OpenedJob }
  storeEdit: {
    argument: { readonly jobKey: string; readonly revision: number; readonly diff: JobDiff }
    answer: { readonly revision: number }
  }
  /** Takes a job out of the book; a backup is made first. */
  deleteJob: { argument: { readonly jobKey: string }; answer: Record<string, never> }
  /** Reads a job file's text into the book; refused whole with the path and a sentence when anything is wrong. */
  importJob: { argument: { readonly text: string }; answer: OpenedJob }
  /** `picturesLeftOut` counts those that had no room in the file. */
  exportJob: {
    argument: { readonly jobKey: string }
    answer: { readonly fileName: string; readonly text: string; readonly picturesLeftOut: number }
  }
  /** Keeps the bytes of a picture in the book, for whatever refers to it afterwards; the hash is what it is known by. */
  keepPicture: { argument: { readonly base64: string }; answer: { readonly hash: string } }
  readPicture: {
    argument: { readonly hash: string }
    answer: { readonly mediaType: string; readonly base64: string }
  }
  /** Asks the user where, and writes a document; `path` is null when the user thought better of it. */
  saveDocument: {
    argument: { readonly fileName: string; readonly mediaType: string; readonly text: string }
    answer: { readonly path: string | null }
  }
  /** Writes a print document as PDF where the host can. */
  savePdf: {
    argument: { readonly fileName: string; readonly html: string; readonly paper: 'letter' | 'a4' }
    answer: { readonly path: string | null }
  }
  /** Opens the print dialog on a print document. */
  printDocument: {
    argument: { readonly html: string; readonly paper: 'letter' | 'a4' }
    answer: { readonly printed: boolean }
  }
}

export type RequestName = keyof Requests
export type Argument<Name extends RequestName> = Requests[Name]['argument']
export type Answer<Name extends RequestName> = Requests[Name]['answer']

/** What a host offers the renderer: one function over the whole map. */
export type Ask = <Name extends RequestName>(
  name: Name,
  argument: Argument<Name>,
) => Promise<Outcome<Answer<Name>>>

/** A table of handlers over all names; a missing one does not compile. */
export type Handlers = {
  readonly [Name in RequestName]: (
    argument: Argument<Name>,
  ) => Promise<Outcome<Answer<Name>>> | Outcome<Answer<Name>>
}

export const requestNames = [
  'hostFacts',
  'bookState',
  'listBackups',
  'lookIntoBackup',
  'bringJobBack',
  'goBackToBackup',
  'leaveShutBook',
  'listJobs',
  'openShop',
  'takeNumber',
  'duplicateJob',
  'createJob',
  'openJob',
  'jobRevision',
  'workElsewhere',
  'workOfBook',
  'openDemo',
  'storeEdit',
  'deleteJob',
  'importJob',
  'exportJob',
  'keepPicture',
  'readPicture',
  'saveDocument',
  'savePdf',
  'printDocument',
] as const satisfies readonly RequestName[]
