import type { Database } from 'better-sqlite3'
import type { BackupKind } from '../../core/contract/book.ts'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import { hasChangedSinceBackup, newBackupName, newestBackup, tidyBackups, writeBackup } from './backups.ts'
import { backupWarning } from './book-opening.ts'
import { describeFailure } from './failures.ts'
import { type FileWatch, watchFiles } from './file-watch.ts'
import { foldLog, markOf } from './open-book.ts'
import { rescueFromMemory } from './rescue.ts'
import { type Store, type StoreOptions, storeOver } from './store.ts'

export interface SessionOptions extends StoreOptions {
  /** So long after the last edit the log is folded into the book, in milliseconds. */
  readonly foldAfter: number
  /** After so much time since the last backup the next edit brings one, in milliseconds. */
  readonly backUpAfter: number
}

/** A book while it is open: its jobs, and what is done beside the work so that nothing of it is lost. */
export interface Session {
  readonly store: Store
  /** Revisions of the jobs by key, as the book has them. */
  readonly revisions: () => ReadonlyMap<string, number>
  /** Raises the revision of every job, so that what was made to a later state than the book has now is told so. */
  readonly jumpRevisions: (by: number) => void
  /** The last backup failed: a sentence; null when it did not. */
  readonly warning: () => string | null
  /** Answers a sentence where it failed. */
  readonly backUp: (kind: Exclude<BackupKind, 'beforeForm'>) => Promise<string | null>
  /** Makes a backup where something changed, folds the log and closes. */
  readonly end: () => Promise<void>
  /** Keeps what the program had as a backup, and closes without touching what others put in the book's place; answers what was kept. */
  readonly abandon: () => Promise<string>
}

/** What an open book's session knows from one moment to the next. */
interface OpenSession {
  readonly database: Database
  readonly options: SessionOptions
  readonly watch: FileWatch
  readonly mark: number
  /** Instant at which the book was opened. */
  readonly begun: string
  /** Answers the problem that stops the present request when others exchanged the file. */
  readonly exchanged: () => Outcome<never>
  /** Why the last backup failed, as a sentence. */
  failed: string | null
  /** Ends with the last backup that was asked for. */
  backingUp: Promise<unknown>
  backupsWaiting: number
  /** Runs out when nothing was stored for a while. */
  idle: NodeJS.Timeout | undefined
}

/** @param exchanged called when the file was exchanged by others; answers the problem that stops the present request */
export function beginSession(
  database: Database,
  options: SessionOptions,
  exchanged: () => Outcome<never>,
): Session {
  const session: OpenSession = {
    database,
    options,
    watch: watchFiles(database.name),
    mark: markOf(database),
    begun: options.now(),
    exchanged,
    failed: null,
    backingUp: Promise.resolve(),
    backupsWaiting: 0,
    idle: undefined,
  }
  const store = storeOver(database, options, {
    before: () => (session.watch.isSame() ? succeed(null) : exchanged()),
    after: (wrote) => {
      session.watch.remember()
      if (wrote) afterEdit(session)
    },
  })
  return {
    store,
    revisions: () => {
      const rows = database.prepare<[], [string, number]>('SELECT job_key, revision FROM jobs').raw().all()
      return new Map(rows)
    },
    jumpRevisions: (by) => {
      database.prepare('UPDATE jobs SET revision = revision + ?').run(by)
      fold(session)
    },
    warning: () => session.failed,
    backUp: (kind) => backUp(session, kind),
    end: () => end(session, store),
    abandon: () => abandon(session, store),
  }
}

function afterEdit(session: OpenSession): void {
  const { options, database, begun } = session
  clearTimeout(session.idle)
  session.idle = setTimeout(foldWhenIdle, options.foldAfter, session).unref()
  const newest = newestBackup(database.name)
  const age = Date.parse(options.now()) - Date.parse(newest?.takenAt ?? begun)
  if (age >= options.backUpAfter && session.backupsWaiting === 0) void backUp(session, 'work')
}

function foldWhenIdle(session: OpenSession): void {
  if (!session.watch.isSame()) {
    session.exchanged()
  } else if (session.backupsWaiting > 0) {
    session.idle = setTimeout(foldWhenIdle, session.options.foldAfter, session).unref()
  } else {
    fold(session)
  }
}

/** A log that cannot be folded just now, for want of room perhaps, is as good as folded: it is read with the book. */
function fold({ database, watch }: OpenSession): void {
  try {
    foldLog(database)
  } catch {
    // Tried again after the next edit, on closing and on opening.
  }
  watch.remember()
}

/** One after the other: two at once would only take each other's time. */
function backUp(session: OpenSession, kind: Exclude<BackupKind, 'beforeForm'>): Promise<string | null> {
  const { database, options } = session
  const path = database.name
  session.backupsWaiting += 1
  const made = session.backingUp.then(async () => {
    try {
      await writeBackup(database, path, newBackupName(path, kind, options.now()))
      tidyBackups(path, options.now())
      session.failed = null
    } catch (error) {
      session.failed = backupWarning(error, path)
    } finally {
      session.backupsWaiting -= 1
    }
    return session.failed
  })
  session.backingUp = made
  return made
}

async function end(session: OpenSession, store: Store): Promise<void> {
  const { database, watch } = session
  clearTimeout(session.idle)
  await session.backingUp
  if (!watch.isSame()) {
    await abandon(session, store)
    return
  }
  if (hasChangedSinceBackup(database, database.name)) await backUp(session, 'work')
  fold(session)
  watch.end(store.close)
}

async function abandon(session: OpenSession, store: Store): Promise<string> {
  const { database, options, watch, mark } = session
  const path = database.name
  clearTimeout(session.idle)
  await session.backingUp
  const name = newBackupName(path, 'exchanged', options.now())
  try {
    if (watch.hasOurBytes()) await writeBackup(database, path, name)
    else {
      const jobs = store.known()
      await rescueFromMemory({ path, migrations: options.migrations, now: options.now(), name, jobs, mark })
    }
    return 'What was stored until then is kept as the newest backup. Go back to it, or open the file that is there now.'
  } catch (error) {
    return `What was stored until then could not be kept as a backup (${describeFailure(error)}); the backups before it are there.`
  } finally {
    watch.endBeside(store.close, options.now())
  }
}
