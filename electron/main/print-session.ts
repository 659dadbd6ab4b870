import { randomUUID } from 'node:crypto'
import { type Session, session } from 'electron'
import { paperSecurityPolicy } from '../pages/pages.ts'
import { confineSession } from './confinement.ts'
import { originOf } from './guard.ts'

const printOrigin = 'coatwright://print'

/** Documents waiting to be printed, by their address. */
const documents = new Map<string, string>()

/** The session of everything on its way to paper: in memory, with no page of the program in it and no network. */
export function openPrintSession(): Session {
  const print = session.fromPartition('print')
  confineSession(print, (address) => originOf(address) === printOrigin)
  print.enableNetworkEmulation({ offline: true })
  print.protocol.handle('coatwright', (request) => {
    const html = request.method === 'GET' ? documents.get(request.url) : undefined
    if (html === undefined) return new Response('', { status: 404 })
    return new Response(html, {
      headers: { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': paperSecurityPolicy },
    })
  })
  return print
}

/** Serves `html` under an address of its own for as long as `use` takes. */
export async function withPrintAddress<Value>(
  html: string,
  use: (address: string) => Promise<Value>,
): Promise<Value> {
  const address = `${printOrigin}/${randomUUID()}`
  documents.set(address, html)
  try {
    return await use(address)
  } finally {
    documents.delete(address)
  }
}
