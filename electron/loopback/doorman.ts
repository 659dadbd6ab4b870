import { timingSafeEqual } from 'node:crypto'
import type { IncomingMessage } from 'node:http'

/** Why a request is turned away, as an HTTP status and a plain sentence; null lets it in. */
export interface Refusal {
  readonly status: 401 | 403 | 405 | 415 | 421
  readonly sentence: string
}

/**
 * Any page or program of this machine can reach a loopback port. A foreign Host header is a page that made its own name point here;
 * a foreign Origin is a page of another site; both are refused for everything, pages too.
 */
export function refuseForeigner(request: IncomingMessage, port: number): Refusal | null {
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

/** Requests that touch the book need the token this host printed when it started. */
export function refuseCaller(request: IncomingMessage, token: string): Refusal | null {
  if (request.method !== 'POST') return { status: 405, sentence: 'Requests are sent with POST.' }
  if (!bears(request.headers.authorization, token)) {
    return { status: 401, sentence: 'The token is missing or wrong. Use the address that npm start printed.' }
  }
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
