import { join } from 'node:path'
import { app, type BrowserWindow, dialog, session } from 'electron'
import { machineClock, newJobKey } from '../handlers/clock.ts'
import { createHandlers, fillEmptyBook } from '../handlers/handlers.ts'
import { bookPath, programFiles } from '../handlers/program-files.ts'
import { readMigrations } from '../storage/migrations.ts'
import { createStore, type Store } from '../storage/store.ts'
import { serveChannels } from './channels.ts'
import { confinePages, confineSession } from './confinement.ts'
import { desktopHost } from './desktop-host.ts'
import { originOf, pageOrigin } from './guard.ts'
import { setMenu } from './menu.ts'
import { openPrintSession } from './print-session.ts'
import { registerScheme, servePages } from './scheme.ts'
import { openWindow } from './window.ts'

const book = bookPath(process.env, process.platform)
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

function openBookOrQuit(migrations: string): Store | null {
  const store = createStore(book, {
    migrations: readMigrations(migrations),
    now: machineClock.instant,
    newJobKey,
  })
  if (store.ok) return store.value
  console.error(store.problem.sentence)
  dialog.showErrorBox('Coatwright cannot open the book of jobs', store.problem.sentence)
  app.exit(1)
  return null
}

async function start(): Promise<void> {
  const root = app.getAppPath()
  const files = programFiles(root)
  const store = openBookOrQuit(files.migrations)
  if (store === null) return
  confineSession(session.defaultSession, (address) => originOf(address) === pageOrigin)
  servePages(files.pages)
  setMenu(book)
  window = openWindow(root, join(app.getPath('userData'), 'window.json'))
  const handlers = createHandlers({
    store,
    host: desktopHost(window, openPrintSession(), files.version(), process.env.COATWRIGHT_SAVE_FOLDER),
    clock: machineClock,
    readDemo: files.readDemo,
  })
  serveChannels(handlers, window)
  await fillEmptyBook(handlers)
  app.on('will-quit', () => store.close())
}
