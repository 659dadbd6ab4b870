import { randomUUID } from 'node:crypto'
import { protocol } from 'electron'
import { readPage } from '../pages/pages.ts'
import { pageOrigin } from './guard.ts'

/** Must be called before the app is ready: a secure origin of our own, with the rights of a normal web page and no more. */
export function registerScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme: 'coatwright', privileges: { standard: true, secure: true, supportFetchAPI: true } },
  ])
}

/** Documents waiting to be printed, by the path they are served under. */
const printDocuments = new Map<string, string>()

/** A print document is markup and styles; it runs nothing and loads nothing. */
const printPolicy =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'"

/** Serves the built pages as coatwright://app/ and documents to be printed as coatwright://print/<key>. */
export function servePages(pages: string): void {
  protocol.handle('coatwright', async (request) => {
    const { host, pathname } = new URL(request.url)
    if (request.method !== 'GET') return new Response('', { status: 405 })
    if (host === 'print') return printResponse(pathname)
    const page = host === 'app' ? await readPage(pages, pathname) : null
    return page === null
      ? new Response('', { status: 404 })
      : new Response(new Uint8Array(page.body), { headers: page.headers })
  })
}

function printResponse(pathname: string): Response {
  const html = printDocuments.get(pathname)
  if (html === undefined) return new Response('', { status: 404 })
  return new Response(html, {
    headers: { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': printPolicy },
  })
}

/** Serves `html` under an address of its own for as long as `use` takes. */
export async function withPrintAddress<Value>(
  html: string,
  use: (address: string) => Promise<Value>,
): Promise<Value> {
  const pathname = `/${randomUUID()}`
  printDocuments.set(pathname, html)
  try {
    return await use(`coatwright://print${pathname}`)
  } finally {
    printDocuments.delete(pathname)
  }
}

export const startAddress = `${pageOrigin}/`
