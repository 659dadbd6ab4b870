import { app, type BaseWindow, BrowserWindow, Menu, type MenuItemConstructorOptions, shell } from 'electron'

/**
 * The menu of the window. Undo and redo are not in it: the system's own would undo typing in one field, while the page undoes
 * actions on the job, with the same keys.
 */
export function setMenu(bookPath: string): void {
  const separator: MenuItemConstructorOptions = { type: 'separator' }
  const menu: MenuItemConstructorOptions[] = [
    {
      label: '&Job',
      submenu: [
        { label: 'Show the book of jobs in its folder', click: () => shell.showItemInFolder(bookPath) },
        separator,
        process.platform === 'darwin' ? { role: 'close', label: 'Close' } : { role: 'quit', label: 'Quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        { role: 'cut', label: 'Cut' },
        { role: 'copy', label: 'Copy' },
        { role: 'paste', label: 'Paste' },
      ],
    },
    {
      label: '&View',
      submenu: [
        { role: 'zoomIn', label: 'Larger type' },
        { role: 'zoomOut', label: 'Smaller type' },
        { role: 'resetZoom', label: 'Usual type' },
        separator,
        { role: 'togglefullscreen', label: 'Full screen' },
      ],
    },
    {
      label: '&Help',
      submenu: [
        { label: 'Help', click: (_item, window) => pressF1(window) },
        { label: 'About Coatwright', click: () => app.showAboutPanel() },
      ],
    },
  ]
  if (process.platform === 'darwin') menu.unshift({ role: 'appMenu' })
  Menu.setApplicationMenu(Menu.buildFromTemplate(menu))
}

/** The page listens to the key already; a message of its own would be a second way to say the same. */
function pressF1(window: BaseWindow | undefined): void {
  if (window instanceof BrowserWindow) window.webContents.sendInputEvent({ type: 'keyDown', keyCode: 'F1' })
}
