import { join } from 'node:path'
import { BrowserWindow, nativeTheme } from 'electron'
import { startAddress } from './scheme.ts'
import { keepWindowState, leastSize, readWindowState } from './window-state.ts'

/** The one window: a page without Node, in its own sandbox, that can reach the host only through the preload's list. */
export function openWindow(root: string, statePath: string): BrowserWindow {
  const { bounds, maximized } = readWindowState(statePath)
  const window = new BrowserWindow({
    ...bounds,
    ...leastSize,
    show: false,
    title: 'Coatwright',
    // The paper of renderer/app/tokens.css, so that nothing flashes before the page is there.
    backgroundColor: nativeTheme.shouldUseDarkColors ? '#202225' : '#f6f1e6',
    webPreferences: {
      preload: join(root, 'build', 'preload', 'preload.cjs'),
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      spellcheck: false,
    },
  })
  if (maximized) window.maximize()
  keepWindowState(window, statePath)
  window.once('ready-to-show', () => window.show())
  window.loadURL(startAddress)
  return window
}
