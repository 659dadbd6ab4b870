import { randomBytes, timingSafeEqual } from 'node:crypto'
import { rmSync, writeFileSync } from 'node:fs'

/**
 * How a browser comes to the token without the token ever standing in an address, and so in a process list or a history: an
 * address carries a code that is exchanged for the token once and is dead from then on.
 */
export interface Handover {
  /** A code that has never been given out; `onUsed` hears that it was exchanged. */
  readonly newCode: (onUsed: () => void) => string
  /** The token for a code that still lives, which dies by it; null for every other text. */
  readonly exchange: (code: string) => string | null
}

export function createHandover(token: string): Handover {
  const living = new Map<string, () => void>()
  return {
    newCode: (onUsed) => {
      const code = randomBytes(24).toString('base64url')
      living.set(code, onUsed)
      return code
    },
    exchange: (given) => {
      const code = [...living.keys()].find((each) => isSame(each, given))
      if (code === undefined) return null
      const onUsed = living.get(code)
      living.delete(code)
      onUsed?.()
      return token
    },
  }
}

function isSame(code: string, given: string): boolean {
  const [wanted, offered] = [Buffer.from(code), Buffer.from(given)]
  return wanted.length === offered.length && timingSafeEqual(wanted, offered)
}

/**
 * Writes a page that forwards to `address`, readable by its owner only. A browser is started on this file, because what a program
 * is started on can be read by everybody on the machine.
 */
export function writeForwardingPage(path: string, address: string): void {
  // What lies there, a link of somebody else's perhaps, is taken away and not written through.
  rmSync(path, { force: true })
  const page = `<!doctype html>
<meta charset="utf-8">
<meta name="referrer" content="no-referrer">
<meta http-equiv="refresh" content="0; url=${address}">
<title>Coatwright</title>
<p>Coatwright opens in a moment. If it does not: <a href="${address}">open it</a>.</p>
`
  writeFileSync(path, page, { mode: 0o600, flag: 'wx' })
}
