import { timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

/** Why a request is turned away, as an HTTP status and a plain sentence; null lets it in. */
export interface RequestRefusal {
  readonly status: 401 | 403 | 405 | 415 | 421
  readonly sentence: string
}

/**
 * Any page or program of this machine can reach a loopback port. A foreign Host header is a page that made its own name point here;
 * a foreign Origin is a page of another site; both are refused for everything, pages too.
 */
export function refuseForeigner(request: IncomingMessage, port: number): RequestRefusal | null {
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`]
  const { host, origin } = request.headers
  if (host === undefined || !hosts.includes(host)) {
    return { status: 421, sentence: 'This host answers only to its own address.' }
  }
  if (origin !== undefined && origin !== `http://${host}`) {
    return { status: 403, sentence: 'This host answers only to its own pages.' }
  }
  return null
}

/** Requests that touch the book need the token that the program's page was let in with. */
export function refuseCaller(request: IncomingMessage, token: string): RequestRefusal | null {
  const other = refuseOther(request)
  if (other !== null && other.status === 405) return other
  if (!bears(request.headers.authorization, token)) {
    return {
      status: 401,
      sentence:
        'This tab is not the one Coatwright opened. Use the address that the window with npm start shows.',
    }
  }
  return other
}

/** What is not a request at all: every one is JSON sent with POST, which no link and no form of another site can send. */
export function refuseOther(request: IncomingMessage): RequestRefusal | null {
  if (request.method !== 'POST') return { status: 405, sentence: 'Requests are sent with POST.' }
  if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) {
    return { status: 415, sentence: 'Requests are sent as application/json.' }
  }
  return null
}

function bears(authorization: string | undefined, token: string): boolean {
  const given = Buffer.from(authorization ?? '')
  const wanted = Buffer.from(`Bearer ${token}`)
  return given.length === wanted.length && timingSafeEqual(given, wanted)
}
