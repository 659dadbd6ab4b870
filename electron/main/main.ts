import { join } from 'node:path'
import { app, type BrowserWindow, dialog, session } from 'electron'
import { machineClock, newJobKey } from '../handlers/clock.ts'
import { createHandlers } from '../handlers/handlers.ts'
import { jobFilesBeside } from '../handlers/job-files-beside.ts'
import { bookPath, programFiles } from '../handlers/program-files.ts'
import { createKeeper, type Keeper, keeperTimes } from '../storage/keeper.ts'
import { readMigrations } from '../storage/migrations.ts'
import { serveChannels } from './channels.ts'
import { confinePages, confineSession } from './confinement.ts'
import { desktopHost } from './desktop-host.ts'
import { originOf, pageOrigin } from './guard.ts'
import { setMenu } from './menu.ts'
import { openPrintSession } from './print-session.ts'
import { registerScheme, servePages } from './scheme.ts'
import { openWindow } from './window.ts'

const book = bookPathOrQuit()
let window: BrowserWindow | null = null

registerScheme()
confinePages()
// Chromium's own files lie beside the book, so that each book has its own, and the lock on one window per book with them.
app.setPath('userData', join(book, '..', 'window'))

if (app.requestSingleInstanceLock()) {
  app.on('second-instance', showWindow)
  app.on('window-all-closed', () => app.quit())
  app.whenReady().then(start)
} else {
  // The instance that has the book shows its window.
  app.quit()
}

function showWindow(): void {
  if (window === null) return
  if (window.isMinimized()) window.restore()
  window.focus()
}

function bookPathOrQuit(): string {
  const path = bookPath(process.env, process.platform)
  return path.ok ? path.value : quitSaying(path.problem.sentence)
}

/** A book that cannot be opened is the page's affair; only one that another program has open is none. */
async function openBookOrQuit(migrations: string): Promise<Keeper> {
  const keeper = await createKeeper(book, {
    migrations: readMigrations(migrations),
    now: machineClock.instant,
    newJobKey,
    ...keeperTimes,
  })
  return keeper.ok ? keeper.value : quitSaying(keeper.problem.sentence)
}

function quitSaying(sentence: string): never {
  console.error(sentence)
  dialog.showErrorBox('Coatwright cannot open the book of jobs', sentence)
  process.exit(1)
}

async function start(): Promise<void> {
  const root = app.getAppPath()
  const files = programFiles(root)
  const keeper = await openBookOrQuit(files.migrations)
  confineSession(session.defaultSession, (address) => originOf(address) === pageOrigin)
  servePages(files.pages)
  setMenu(book)
  window = openWindow(root, join(app.getPath('userData'), 'window.json'))
  const handlers = createHandlers({
    keeper,
    host: desktopHost(window, openPrintSession(), files.version(), process.env.COATWRIGHT_SAVE_FOLDER),
    clock: machineClock,
    readDemo: files.readDemo,
    jobFiles: jobFilesBeside(files.jobFilesThread),
  })
  serveChannels(handlers, window)
  closeBeforeQuitting(keeper)
}

/** The last backup and the folding of the log take a moment, which quitting waits for. */
function closeBeforeQuitting(keeper: Keeper): void {
  app.once('will-quit', (event) => {
    event.preventDefault()
    keeper.close().finally(() => app.exit())
  })
}
