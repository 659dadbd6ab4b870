import type { Answer, Argument, Ask, RequestName } from '../../core/contract/requests.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

declare global {
  interface Window {
    /** Put there by the desktop shell's preload; missing in a browser. */
    readonly coatwright?: { readonly ask: Ask }
  }
}

const tokenKey = 'coatwright-token'

/** The one door to the host: the desktop shell when it is there, else the loopback host this page came from. */
export const ask: Ask = (name, argument) =>
  window.coatwright ? window.coatwright.ask(name, argument) : askLoopback(name, argument)

/**
 * Where the address carries a code, exchanges it for the token, which stays in this tab's storage. The code is in the fragment, which
 * is never sent; it leaves the address bar at once and is worth nothing afterwards.
 */
export async function enterByCode(): Promise<Outcome<unknown>> {
  const code = new URLSearchParams(window.location.hash.slice(1)).get('code')
  if (code === null) return succeed(null)
  window.history.replaceState(null, '', window.location.pathname)
  const entered = await send<{ readonly token: string }>('/enter', {}, { code })
  if (entered.ok) window.sessionStorage.setItem(tokenKey, entered.value.token)
  return entered
}

async function askLoopback<Name extends RequestName>(
  name: Name,
  argument: Argument<Name>,
): Promise<Outcome<Answer<Name>>> {
  const token = window.sessionStorage.getItem(tokenKey)
  if (token === null) return fail('notAllowed', notOpened)
  return send(`/ask/${name}`, { Authorization: `Bearer ${token}` }, argument)
}

const notOpened =
  'This tab is not the one Coatwright opened. Use the address that the window with npm start shows.'

async function send<Value>(
  path: string,
  headers: Readonly<Record<string, string>>,
  body: unknown,
): Promise<Outcome<Value>> {
  try {
    const response = await fetch(path, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', ...headers },
      body: JSON.stringify(body),
    })
    return (await response.json()) as Outcome<Value>
  } catch {
    return fail(
      'hostFailed',
      'Coatwright’s host does not answer. Check whether the npm start window is still open, then try again.',
    )
  }
}
