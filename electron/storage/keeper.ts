import { existsSync } from 'node:fs'
import type { BackupSummary, BookState, ShutBook, WayOut } from '../../core/contract/book.ts'
import type { JobSummary } from '../../core/contract/requests.ts'
import { fail, type Outcome, type Problem, succeed } from '../../core/project/problem.ts'
import { backupPath, listBackups } from './backups.ts'
import { copyBeside, moveIn, removeCopy, setAside } from './book-exchange.ts'
import { backupFolder } from './book-files.ts'
import { type BookLock, takeBookLock } from './book-lock.ts'
import { type Agreed, openCarefully } from './book-opening.ts'
import { findRealPlace, lookAtPlace } from './book-place.ts'
import { problemOfFailure, storageProblem } from './failures.ts'
import { checkCopy, type JobOfBackup, jobOfBackup, jobsOfBackup } from './look-inside.ts'
import { beginSession, type Session, type SessionOptions } from './session.ts'
import { exchangedBook, shutBook, shutBy } from './shut-book.ts'
import type { Store } from './store.ts'

/**
 * Keeps the book of jobs for a host: opens it, says why it is shut where it cannot be opened, and knows the ways out. There is a keeper
 * even where there is no book to be had, so that the program can start and ask.
 */
export interface Keeper {
  readonly path: () => string
  readonly state: () => BookState
  /** The open book, or the problem that it is shut. */
  readonly store: () => Outcome<Store>
  /** Takes a job out of the book once a backup has it. */
  readonly remove: (jobKey: string) => Promise<Outcome<Record<string, never>>>
  readonly listBackups: () => Promise<Outcome<readonly BackupSummary[]>>
  readonly lookInto: (name: string) => Promise<Outcome<readonly JobSummary[]>>
  /** One job of a backup, for whoever reads it and puts it into the open book. */
  readonly jobOfBackup: (name: string, jobKey: string) => Promise<Outcome<JobOfBackup>>
  /** Sets the book aside and opens a copy of a backup in its place. */
  readonly goBackTo: (name: string) => Promise<Outcome<BookState>>
  readonly leave: (way: WayOut) => Promise<Outcome<BookState>>
  readonly close: () => Promise<void>
}

export const keeperTimes = { foldAfter: 3000, backUpAfter: 3 * 3_600_000 } as const

/** Keeps a book in memory, which has neither backups nor a place. */
export function keeperInMemory(store: Store): Keeper {
  const none = async () => fail('notAllowed', 'A book in memory has no backups.')
  return {
    path: () => store.path,
    state: () => ({ bookPath: store.path, backupFolder: '', shut: null, warnings: [] }),
    store: () => succeed(store),
    remove: async (jobKey) => store.delete(jobKey),
    listBackups: async () => succeed([]),
    lookInto: none,
    jobOfBackup: none,
    goBackTo: none,
    leave: none,
    close: async () => store.close(),
  }
}

/** A problem only where another process has the book. */
export async function createKeeper(named: string, options: SessionOptions): Promise<Outcome<Keeper>> {
  const keeper = new BookKeeper(named, options)
  const opened = await keeper.open({})
  return opened.ok ? succeed(keeper) : opened
}

/** Revisions jump by so much when an older state comes back, so that no page that has seen a later one can send edits that seem to fit. */
const revisionJump = 1_000_000

type Current =
  | { readonly kind: 'open'; readonly session: Session; readonly warnings: readonly string[] }
  | { readonly kind: 'shut'; readonly shut: ShutBook }

const opening: Current = {
  kind: 'shut',
  shut: shutBook('unreachable', 'The book of jobs is just being opened. Try again in a moment.'),
}

class BookKeeper implements Keeper {
  readonly #options: SessionOptions
  readonly #named: string
  #path: string
  #lock: BookLock | undefined
  #current: Current = opening
  readonly #seen = new Map<string, number>()
  /** Exchanges, backups for a removal and the like, one after the other. */
  #working: Promise<unknown> = Promise.resolve()

  constructor(named: string, options: SessionOptions) {
    this.#named = named
    this.#path = named
    this.#options = options
  }

  path = () => this.#path

  state = (): BookState => {
    const current = this.#current
    const warnings =
      current.kind === 'open' ? [...current.warnings, current.session.warning()].filter(isThere) : []
    return {
      bookPath: this.#path,
      backupFolder: backupFolder(this.#path),
      shut: current.kind === 'shut' ? current.shut : null,
      warnings,
    }
  }

  store = (): Outcome<Store> =>
    this.#current.kind === 'open' ? succeed(this.#current.session.store) : isShut(this.#current.shut)

  /** A problem only where another process has the book; every other one shuts it. */
  async open(agreed: Agreed): Promise<Outcome<null>> {
    this.#current = opening
    const problem = this.#takePlace()
    if (problem?.kind === 'alreadyOpen') return { ok: false, problem }
    if (problem !== null) {
      this.#current = { kind: 'shut', shut: shutBy(problem) }
      return succeed(null)
    }
    const { migrations, now } = this.#options
    const opened = await openCarefully({ path: this.#path, migrations, now }, agreed)
    if (opened.kind === 'taken') return { ok: false, problem: opened.problem }
    this.#current =
      opened.kind === 'shut'
        ? opened
        : {
            kind: 'open',
            warnings: opened.warnings,
            session: beginSession(opened.database, this.#options, this.#exchanged),
          }
    return succeed(null)
  }

  /** Finds out where the book lies and takes it for this process; null when it has it. */
  #takePlace(): Problem | null {
    const place = findRealPlace(this.#named)
    if (!place.ok) return place.problem
    if (this.#lock !== undefined && place.value === this.#path) return null
    this.#path = place.value
    const there = lookAtPlace(this.#path)
    if (!there.ok) return there.problem
    try {
      const lock = takeBookLock(this.#path)
      this.#lock?.release()
      this.#lock = lock
      return null
    } catch (error) {
      return problemOfFailure(error, this.#path)
    }
  }

  /** The file is not the one that was opened: shuts the book at once, and keeps what was stored meanwhile. */
  #exchanged = (): Outcome<never> => {
    const current = this.#current
    if (current.kind === 'shut') return isShut(current.shut)
    this.#noteSeen(current.session)
    const shut = exchangedBook(this.#path, 'What was stored until then is being kept as a backup.')
    this.#current = { kind: 'shut', shut }
    this.#inTurn(async () => {
      const kept = await current.session.abandon()
      this.#current = { kind: 'shut', shut: this.#shutAfterExchange(kept) }
      return succeed(null)
    })
    return isShut(shut)
  }

  #shutAfterExchange(kept: string): ShutBook {
    const shut = exchangedBook(this.#path, kept)
    return existsSync(this.#path) ? shut : { ...shut, waysOut: ['tryAgain', 'startNew'] }
  }

  /** Failures of what takes long are problems, and the next in turn does not mind them. */
  #inTurn<Value>(work: () => Promise<Outcome<Value>>): Promise<Outcome<Value>> {
    const done = this.#working.then(() => work().catch((error: unknown) => storageProblem(error, this.#path)))
    this.#working = done
    return done
  }

  remove = (jobKey: string) =>
    this.#inTurn(async () => {
      const store = this.store()
      if (!store.ok) return store
      const row = store.value.open(jobKey)
      if (!row.ok && row.problem.kind === 'notFound') return row
      const failed =
        this.#current.kind === 'open' ? await this.#current.session.backUp('beforeRemoval') : null
      if (failed !== null) {
        return fail('storageFailed', `The job was not deleted, because there would be no way back. ${failed}`)
      }
      const again = this.store()
      return again.ok ? again.value.delete(jobKey) : again
    })

  listBackups = async () => succeed(await listBackups(this.#path))

  lookInto = (name: string) =>
    this.#inTurn(async () => this.#withBackup(name, (source) => jobsOfBackup(source, this.#insideParts())))

  jobOfBackup = (name: string, jobKey: string) =>
    this.#inTurn(() => this.#withBackup(name, (source) => jobOfBackup(source, jobKey, this.#insideParts())))

  goBackTo = (name: string) =>
    this.#inTurn(() =>
      this.#withBackup(name, async (source) => {
        const half = await copyBeside(source, this.#path)
        const checked = await checkCopy(half, source, this.#options.migrations)
        if (!checked.ok) {
          removeCopy(half)
          return fail(
            checked.problem.kind,
            `The book was not replaced, because that backup cannot be used. ${checked.problem.sentence}`,
          )
        }
        const before = this.#current
        if (before.kind === 'open') this.#noteSeen(before.session)
        this.#current = opening
        try {
          if (before.kind === 'open') await before.session.end()
          setAside(this.#path, this.#options.now())
          moveIn(half, this.#path)
        } finally {
          await this.open({ otherBook: true, newBook: true, othersWait: true })
        }
        this.#jumpRevisions()
        return succeed(this.state())
      }),
    )

  /** What a page may have on the table: the revisions of the jobs that were opened. */
  #noteSeen({ store }: Session): void {
    for (const { jobKey, revision } of store.known()) this.#seen.set(jobKey, revision)
  }

  #jumpRevisions(): void {
    if (this.#current.kind === 'shut') return
    const { session } = this.#current
    const now = session.revisions()
    const isOlder = [...this.#seen].some(([jobKey, revision]) => (now.get(jobKey) ?? revision) !== revision)
    if (isOlder) session.jumpRevisions(revisionJump)
  }

  leave = (way: WayOut) =>
    this.#inTurn(async () => {
      if (this.#current.kind === 'open') return succeed(this.state())
      if (way === 'startNew') setAside(this.#path, this.#options.now())
      if (way === 'openReadablePart') {
        const half = await copyBeside(this.#path, this.#path)
        setAside(this.#path, this.#options.now())
        moveIn(half, this.#path)
      }
      const opened = await this.open({ ...agreements[way], othersWait: true })
      if (!opened.ok) this.#current = { kind: 'shut', shut: shutBy(opened.problem) }
      return succeed(this.state())
    })

  async #withBackup<Value>(
    name: string,
    use: (source: string) => Promise<Outcome<Value>>,
  ): Promise<Outcome<Value>> {
    const source = backupPath(this.#path, name)
    return source === undefined ? fail('notFound', 'There is no such backup any more.', [name]) : use(source)
  }

  #insideParts() {
    const { migrations, now } = this.#options
    return { bookPath: this.#path, migrations, now: now() }
  }

  close = async (): Promise<void> => {
    await this.#working
    const current = this.#current
    this.#current = opening
    if (current.kind === 'open') await current.session.end()
    this.#lock?.release()
    this.#lock = undefined
  }
}

const agreements: Readonly<Record<WayOut, Agreed>> = {
  tryAgain: {},
  startNew: { newBook: true },
  openAsItIs: { otherBook: true },
  openReadablePart: { readablePart: true, otherBook: true },
}

/** The sentence with all there is to say stands once, on the page about the shut book. */
function isShut({ reason }: ShutBook): Outcome<never> {
  return fail('bookShut', 'The book of jobs is not open; the page says why and what to do.', [reason])
}

function isThere(warning: string | null): warning is string {
  return warning !== null
}
