import type { IpcMainInvokeEvent, WebContents } from 'electron'
import { expect, test } from 'vitest'
import { isOwnPage, originOf } from '../../electron/main/guard.ts'

/** A message as Electron hands it over, from a frame of a window. */
function message(frame: object | null, sender: object): IpcMainInvokeEvent {
  return { senderFrame: frame, sender } as unknown as IpcMainInvokeEvent
}

function windowShowing(url: string) {
  const mainFrame = { url }
  return { mainFrame, webContents: { mainFrame } as unknown as WebContents }
}

test('our own window on our own page may ask', () => {
  const { mainFrame, webContents } = windowShowing('coatwright://app/index.html')
  expect(isOwnPage(message(mainFrame, webContents), webContents)).toBe(true)
})

test('another window, a frame inside the page, a foreign page and a frame that is gone may not', () => {
  const { webContents } = windowShowing('coatwright://app/')
  const other = windowShowing('coatwright://app/')
  expect(isOwnPage(message(other.mainFrame, other.webContents), webContents)).toBe(false)
  expect(isOwnPage(message({ url: 'coatwright://app/' }, webContents), webContents)).toBe(false)
  expect(isOwnPage(message(null, webContents), webContents)).toBe(false)
  for (const url of [
    'https://app/',
    'coatwright://print/1',
    'coatwright://app.example/',
    'file:///app',
    'nonsense',
  ]) {
    const foreign = windowShowing(url)
    expect(isOwnPage(message(foreign.mainFrame, foreign.webContents), foreign.webContents)).toBe(false)
  }
})

test('the origin of an address of our own scheme is its scheme and host', () => {
  expect(originOf('coatwright://app/assets/main.js?x#y')).toBe('coatwright://app')
  expect(originOf('coatwright://app@evil.example/')).toBe('coatwright://evil.example')
  expect(originOf('')).toBeNull()
})
