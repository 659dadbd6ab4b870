import { app, type Session, type WebContents } from 'electron'
import { originOf, pageOrigin } from './guard.ts'

/** Holds for every page the program ever shows, whoever makes it. Call it before the first window. */
export function confinePages(): void {
  app.on('web-contents-created', (_event, page) => confinePage(page))
}

/** A page goes nowhere but round the program's own pages, opens no window and holds no foreign page. */
function confinePage(page: WebContents): void {
  const stay = (event: { readonly url: string; preventDefault(): void }) => {
    if (!mayGo(page.getURL(), event.url)) event.preventDefault()
  }
  page.on('will-navigate', stay)
  page.on('will-redirect', stay)
  page.on('will-frame-navigate', (event) => {
    if (event.isMainFrame || !mayFrame(page.getURL(), event.url)) stay(event)
  })
  page.on('will-attach-webview', (event) => event.preventDefault())
  page.setWindowOpenHandler(() => ({ action: 'deny' }))
}

/** From one of the program's pages to another; a document on its way to paper is none of them. */
export function mayGo(from: string, to: string): boolean {
  return originOf(from) === pageOrigin && originOf(to) === pageOrigin
}

/** The preview of a document stands in a frame whose content the page itself wrote. */
export function mayFrame(around: string, inside: string): boolean {
  return originOf(around) === pageOrigin && inside === 'about:srcdoc'
}

/**
 * What a page of this session may ask of the machine: nothing. No permission is given, asked for or looked up; nothing is
 * downloaded; no address is loaded but those `isOwn` knows, and what the page carries itself.
 */
export function confineSession(session: Session, isOwn: (address: string) => boolean): void {
  session.setPermissionRequestHandler((_page, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.on('will-download', (event) => event.preventDefault())
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !isOwn(url) && !isCarried(url) }))
}

/** Content that stands in the page or was made by it: no request leaves the page for it. */
function isCarried(address: string): boolean {
  return /^(data|blob):/.test(address)
}
