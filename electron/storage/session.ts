import type { Database } from 'better-sqlite3'
import type { BackupKind } from '../../core/contract/book.ts'
import { type Outcome, succeed } from '../../core/project/problem.ts'
import { hasChangedSinceBackup, newBackupName, newestBackup, tidyBackups, writeBackup } from './backups.ts'
import { backupWarning } from './book-opening.ts'
import { describeFailure } from './failures.ts'
import { watchFiles } from './file-watch.ts'
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

/** @param exchanged called when the file was exchanged by others; answers the problem that stops the present request */
export function beginSession(
  database: Database,
  options: SessionOptions,
  exchanged: () => Outcome<never>,
): Session {
  const path = database.name
  const watch = watchFiles(path)
  const mark = markOf(database)
  const begun = options.now()
  let failed: string | null = null
  let backingUp: Promise<unknown> = Promise.resolve()
  let backupsWaiting = 0
  let idle: NodeJS.Timeout | undefined

  const store = storeOver(database, options, {
    before: () => (watch.isSame() ? succeed(null) : exchanged()),
    after: (wrote) => {
      watch.remember()
      if (wrote) afterEdit()
    },
  })

  function afterEdit(): void {
    clearTimeout(idle)
    idle = setTimeout(foldWhenIdle, options.foldAfter).unref()
    const newest = newestBackup(path)
    const age = Date.parse(options.now()) - Date.parse(newest?.takenAt ?? begun)
    if (age >= options.backUpAfter && backupsWaiting === 0) void backUp('work')
  }

  function foldWhenIdle(): void {
    if (!watch.isSame()) {
      exchanged()
    } else if (backupsWaiting > 0) {
      idle = setTimeout(foldWhenIdle, options.foldAfter).unref()
    } else {
      fold()
    }
  }

  /** A log that cannot be folded just now, for want of room perhaps, is as good as folded: it is read with the book. */
  function fold(): void {
    try {
      foldLog(database)
    } catch {
      // Tried again after the next edit, on closing and on opening.
    }
    watch.remember()
  }

  /** One after the other: two at once would only take each other's time. */
  function backUp(kind: Exclude<BackupKind, 'beforeForm'>): Promise<string | null> {
    backupsWaiting += 1
    const made = backingUp.then(async () => {
      try {
        await writeBackup(database, path, newBackupName(path, kind, options.now()))
        tidyBackups(path, options.now())
        failed = null
      } catch (error) {
        failed = backupWarning(error, path)
      } finally {
        backupsWaiting -= 1
      }
      return failed
    })
    backingUp = made
    return made
  }

  async function end(): Promise<void> {
    clearTimeout(idle)
    await backingUp
    if (!watch.isSame()) {
      await abandon()
      return
    }
    if (hasChangedSinceBackup(database, path)) await backUp('work')
    fold()
    watch.end(store.close)
  }

  async function abandon(): Promise<string> {
    clearTimeout(idle)
    await backingUp
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

  function revisions(): ReadonlyMap<string, number> {
    const rows = database.prepare<[], [string, number]>('SELECT job_key, revision FROM jobs').raw().all()
    return new Map(rows)
  }

  function jumpRevisions(by: number): void {
    database.prepare('UPDATE jobs SET revision = revision + ?').run(by)
    fold()
  }

  return { store, revisions, jumpRevisions, warning: () => failed, backUp, end, abandon }
}
