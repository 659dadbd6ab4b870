import { readFile } from 'node:fs/promises'
import { extname, join, normalize, sep } from 'node:path'

/** One file of the built program, ready to be sent to a page. */
interface Page {
  readonly body: Buffer
  readonly headers: Readonly<Record<string, string>>
}

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.map': 'application/json; charset=utf-8',
}

/**
 * The program's own pages may load the program's own files and nothing else; no code is made from text. Styles may be written into
 * elements, because the canvas and the print pages are laid out in numbers.
 */
export const contentSecurityPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self' data:",
  "connect-src 'self'",
  "worker-src 'self' blob:",
  "frame-src 'self' blob:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** A document on its way to paper is markup and styles: it runs nothing, loads nothing, and has no origin of its own. */
export const paperSecurityPolicy = [
  'sandbox',
  "default-src 'none'",
  "style-src 'unsafe-inline'",
  'img-src data:',
  'font-src data:',
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ')

const safeHeaders = {
  'Content-Security-Policy': contentSecurityPolicy,
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
} as const

/** Reads the file an address names, from `folder` and nowhere else; null where there is none. `/` is the start page. */
export async function readPage(folder: string, pathname: string): Promise<Page | null> {
  const path = pathInside(folder, pathname === '/' ? '/index.html' : pathname)
  const mediaType = path === null ? undefined : mediaTypes[extname(path)]
  if (path === null || mediaType === undefined) return null
  try {
    const body = await readFile(path)
    return {
      body,
      headers: { ...safeHeaders, 'Content-Type': mediaType, 'Cache-Control': cacheRule(pathname) },
    }
  } catch {
    return null
  }
}

/** Built assets carry their hash in their name and may be kept; the start page must be asked for anew. */
function cacheRule(pathname: string): string {
  return pathname.startsWith('/assets/') ? 'private, max-age=31536000, immutable' : 'no-store'
}

function pathInside(folder: string, pathname: string): string | null {
  let name: string
  try {
    name = decodeURIComponent(pathname)
  } catch {
    return null
  }
  if (name.includes('\0')) return null
  const path = normalize(join(folder, name))
  return path.startsWith(folder + sep) ? path : null
}
