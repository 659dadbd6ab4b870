import { protocol } from 'electron'
import { readPage } from '../pages/pages.ts'
import { originOf, pageOrigin } from './guard.ts'

/** Must be called before the app is ready: a secure origin of our own, with the rights of a normal web page and no more. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'coatwright', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ])
}

/** Serves the built pages as coatwright://app/ to the window. */
export function servePages(pages: string): void {
  protocol.handle('coatwright', async (request) => {
    if (request.method !== 'GET') return new Response('', { status: 405 })
    const isPage = originOf(request.url) === pageOrigin
    const page = isPage ? await readPage(pages, new URL(request.url).pathname) : null
    return page === null
      ? new Response('', { status: 404 })
      : new Response(new Uint8Array(page.body), { headers: page.headers })
  })
}

export const startAddress = `${pageOrigin}/`
