import type { IpcMainInvokeEvent, WebContents } from 'electron'

/** The program's own pages have this origin and no other. */
export const pageOrigin = 'coatwright://app'

/** Only the top frame of our own window, showing our own page, may ask anything. */
export function isOwnPage(event: IpcMainInvokeEvent, window: WebContents): boolean {
  const frame = event.senderFrame
  return (
    event.sender === window &&
    frame !== null &&
    frame === window.mainFrame &&
    originOf(frame.url) === pageOrigin
  )
}

/** Scheme and host: `URL.origin` is the text `null` for schemes that the URL standard does not list. */
export function originOf(address: string): string | null {
  try {
    const { protocol, host } = new URL(address)
    return `${protocol}//${host}`
  } catch {
    return null
  }
}
