import type { Database } from 'better-sqlite3'
import { type JobSummary, type OpenedJob, shopKey } from '../../core/contract/requests.ts'
import { type BookPicture, mostBytesInFile, picturesThatFit } from '../../core/pictures/picture-bounds.ts'
import { applyDiff, type JobDiff } from '../../core/project/diff.ts'
import { frozenProblems } from '../../core/project/frozen-records.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile, writeJobFile } from '../../core/project/job-file.ts'
import { jobProblems } from '../../core/project/job-problems.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import type { JobAtWork } from '../../core/schedule/jobs/book-people.ts'
import { fileNameWords } from '../../core/words/file-name.ts'
import { workReader } from './accepted-plans.ts'
import { checkEdit } from './checked-edit.ts'
import { storageProblem } from './failures.ts'
import { type PreparedJob, prepareJob } from './job-bodies.ts'
import {
  insertJobRows,
  type JobRow,
  jobRowOf,
  listJobRows,
  type RawJob,
  readJobRows,
  readRawJob,
  writeEdit,
} from './job-rows.ts'
import type { Migration } from './migrations.ts'
import { openBook } from './open-book.ts'
import { insertPictures, pictureSizes, readPicture } from './picture-rows.ts'

export interface StoreOptions {
  readonly migrations: readonly Migration[]
  /** The present instant, ISO, UTC. */
  readonly now: () => string
  /** A key no job of the book has yet. */
  readonly newJobKey: () => string
}

/** What whoever keeps the book's file wants to know of each transaction. */
interface StoreHooks {
  /** A problem stops the transaction before it begins. */
  readonly before: () => Outcome<null>
  readonly after: (wrote: boolean) => void
}

interface PicturesForFile {
  readonly pictures: readonly BookPicture[]
  readonly leftOut: number
}

const noHooks: StoreHooks = { before: () => succeed(null), after: () => undefined }

/** The book of jobs, open for this process alone. Every call is one transaction: done whole or not at all. */
export interface Store {
  readonly path: string
  readonly list: () => Outcome<readonly JobSummary[]>
  /** Under the given key, or a new one. */
  readonly create: (job: Job, jobKey?: string) => Outcome<OpenedJob>
  /** Stores a job that was read and prepared elsewhere, with the pictures that came with it. */
  readonly add: (prepared: PreparedJob, pictures?: readonly BookPicture[]) => Outcome<OpenedJob>
  /** What the book has of a job that was not read yet, for whoever wants to read it elsewhere. */
  readonly raw: (jobKey: string) => Outcome<RawJob | undefined>
  readonly learn: (jobKey: string, read: RawJob, job: Outcome<Job>) => void
  readonly open: (jobKey: string) => Outcome<OpenedJob>
  /** The revision a job stands at, without reading the job where it is known already. */
  readonly revision: (jobKey: string) => Outcome<{ readonly revision: number }>
  /** When people are on other jobs, by the plans accepted last, as far as those are not over when this one begins. */
  readonly workElsewhere: (jobKey: string) => Outcome<readonly JobAtWork[]>
  /** When people are on the jobs that are neither lost nor finished. */
  readonly workOfBook: () => Outcome<readonly JobAtWork[]>
  /** Stores one edit made to `revision` of a job and answers the revision it made. */
  readonly storeEdit: (
    jobKey: string,
    revision: number,
    diff: JobDiff,
  ) => Outcome<{ readonly revision: number }>
  /** Keeps a picture; what refers to it comes with an edit afterwards. */
  readonly keepPicture: (picture: BookPicture) => Outcome<null>
  readonly picture: (hash: string) => Outcome<BookPicture>
  /** Pictures of a job that a file of it takes along, and how many have no room in it. */
  readonly picturesForFile: (jobKey: string) => Outcome<PicturesForFile>
  readonly delete: (jobKey: string) => Outcome<Record<string, never>>
  readonly import: (text: string) => Outcome<OpenedJob>
  readonly export: (jobKey: string) => Outcome<{ readonly fileName: string; readonly text: string }>
  /** The jobs that were opened, as they stand in the book. */
  readonly known: () => readonly JobRow[]
  readonly close: () => void
}

/** Opens a whole book at `path`, or makes it, without looking for damage first and without backups: what a keeper adds. */
export function createStore(path: string, options: StoreOptions): Outcome<Store> {
  const opened = openBook(path, options.migrations, options.now())
  return opened.ok ? succeed(storeOver(opened.value, options)) : opened
}

/** What a store works on. */
interface OpenStore {
  readonly database: Database
  readonly options: StoreOptions
  readonly hooks: StoreHooks
  /** Jobs as they stand in the book; right for as long as the book is ours alone. */
  readonly known: Map<string, JobRow>
}

/** The store of a book that is open already; the hooks are asked and told around every transaction. */
export function storeOver(database: Database, options: StoreOptions, hooks: StoreHooks = noHooks): Store {
  const book: OpenStore = { database, options, hooks, known: new Map() }
  const work = workReader(database)
  return {
    path: database.name,
    list: () => inTransaction(book, () => succeed(listJobRows(database))),
    create: (job, jobKey = options.newJobKey()) => create(book, job, jobKey),
    add: (prepared, pictures) => insert(book, prepared, options.newJobKey(), pictures),
    raw: (jobKey) => raw(book, jobKey),
    learn: (jobKey, read, job) => learn(book, jobKey, read, job),
    open: (jobKey) => inTransaction(book, () => load(book, jobKey)),
    revision: (jobKey) => {
      const row = inTransaction(book, () => load(book, jobKey))
      return row.ok ? succeed({ revision: row.value.revision }) : row
    },
    workElsewhere: (jobKey) => inTransaction(book, () => succeed(work.elsewhere(jobKey))),
    workOfBook: () => inTransaction(book, () => succeed(work.ofBook())),
    storeEdit: (jobKey, revision, diff) => storeEdit(book, jobKey, revision, diff),
    keepPicture: (picture) => inTransaction(book, () => insertPictures(database, [picture], options.now())),
    picture: (hash) => inTransaction(book, () => readPicture(database, hash)),
    picturesForFile: (jobKey) => picturesForFile(book, jobKey),
    delete: (jobKey) => remove(book, jobKey),
    import: (text) => {
      const job = readJobFile(text)
      return job.ok ? create(book, job.value, options.newJobKey()) : job
    },
    export: (jobKey) => {
      const row = load(book, jobKey)
      if (!row.ok) return row
      const { job } = row.value
      return succeed({ fileName: jobFileName(job), text: writeJobFile(job) })
    },
    known: () => [...book.known.values()],
    close: () => database.close(),
  }
}

/** Runs `work` in one transaction; a problem or an exception takes everything back. */
function inTransaction<Value>({ database, hooks }: OpenStore, work: () => Outcome<Value>): Outcome<Value> {
  const free = hooks.before()
  if (!free.ok) return free
  try {
    const changes = totalChanges(database)
    database.exec('BEGIN IMMEDIATE')
    const outcome = work()
    database.exec(outcome.ok ? 'COMMIT' : 'ROLLBACK')
    hooks.after(outcome.ok && totalChanges(database) !== changes)
    return outcome
  } catch (error) {
    if (database.inTransaction) database.exec('ROLLBACK')
    hooks.after(false)
    return storageProblem(error, database.name)
  }
}

function load({ database, known }: OpenStore, jobKey: string): Outcome<JobRow> {
  const row = known.get(jobKey)
  if (row !== undefined) return succeed(row)
  const read = readJobRows(database, jobKey) ?? noSuchJob(jobKey)
  if (read.ok) known.set(jobKey, read.value)
  return read
}

function create(book: OpenStore, job: Job, jobKey: string): Outcome<OpenedJob> {
  const wrong = jobProblems(job)[0]
  if (wrong !== undefined) return { ok: false, problem: wrong }
  const prepared = prepareJob(job)
  return prepared.ok ? insert(book, prepared.value, jobKey) : prepared
}

function insert(
  book: OpenStore,
  prepared: PreparedJob,
  jobKey: string,
  pictures: readonly BookPicture[] = [],
): Outcome<OpenedJob> {
  const { database, options, known } = book
  const made = inTransaction(book, () => {
    const kept = insertPictures(database, pictures, options.now())
    return kept.ok ? succeed(insertJobRows(database, jobKey, prepared, options.now())) : kept
  })
  if (made.ok) known.set(jobKey, made.value)
  return made
}

/** Nothing where the job is known already, or is not there. */
function raw(book: OpenStore, jobKey: string): Outcome<RawJob | undefined> {
  const { database, known } = book
  return inTransaction(book, () => succeed(known.has(jobKey) ? undefined : readRawJob(database, jobKey)))
}

/** Takes a job read elsewhere, unless an edit came between. */
function learn({ database, known }: OpenStore, jobKey: string, read: RawJob, job: Outcome<Job>): void {
  if (known.has(jobKey) || !job.ok) return
  const row = jobRowOf(database, jobKey, read, job)
  if (row.ok && isAt(database, jobKey, read.revision)) known.set(jobKey, row.value)
}

function storeEdit(
  book: OpenStore,
  jobKey: string,
  revision: number,
  diff: JobDiff,
): Outcome<{ readonly revision: number }> {
  const { database, options, known } = book
  const row = load(book, jobKey)
  if (!row.ok) return row
  if (row.value.revision !== revision) return staleEdit(row.value, revision)
  const edit = checkEdit(row.value.job, diff)
  if (!edit.ok) return edit
  const job = applyDiff(row.value.job, edit.value.diff)
  const wrong = frozenProblems(row.value.job, job)[0] ?? jobProblems(job)[0]
  if (wrong !== undefined) return { ok: false, problem: wrong }
  const next = { jobKey, job, revision: revision + 1 }
  const written = inTransaction(book, () => {
    writeEdit(database, jobKey, edit.value, next.revision, options.now())
    return succeed({ revision: next.revision })
  })
  if (written.ok) known.set(jobKey, next)
  return written
}

function picturesForFile(book: OpenStore, jobKey: string): Outcome<PicturesForFile> {
  const { database } = book
  return inTransaction(book, () => {
    const { taken, leftOut } = picturesThatFit(pictureSizes(database, jobKey), mostBytesInFile)
    const read = taken.map((hash) => readPicture(database, hash))
    const pictures = read.flatMap((each) => (each.ok ? [each.value] : []))
    return succeed({ pictures, leftOut: leftOut + read.length - pictures.length })
  })
}

function remove(book: OpenStore, jobKey: string): Outcome<Record<string, never>> {
  if (jobKey === shopKey) return fail('notAllowed', 'The shop sheet stays in the book.')
  book.known.delete(jobKey)
  return inTransaction(book, () => {
    const { changes } = book.database.prepare('DELETE FROM jobs WHERE job_key = ?').run(jobKey)
    return changes === 0 ? noSuchJob(jobKey) : succeed({})
  })
}

function isAt(database: Database, jobKey: string, revision: number): boolean {
  return database.prepare('SELECT revision FROM jobs WHERE job_key = ?').pluck().get(jobKey) === revision
}

function totalChanges(database: Database): number {
  return database.prepare<[], number>('SELECT total_changes()').pluck().get() ?? 0
}

function noSuchJob(jobKey: string): Outcome<never> {
  return fail('notFound', 'The book has no such job; it may have been deleted.', [jobKey])
}

function staleEdit(row: JobRow, revision: number): Outcome<never> {
  return fail(
    'staleEdit',
    `This edit was made to an older state of the job (${revision}; the book has ${row.revision}), perhaps in another tab. It was not stored. Open the job again and repeat it.`,
    [row.jobKey],
  )
}

export function jobFileName({ header }: Job): string {
  return `${fileNameWords(header.title) || 'job'}.json`
}
