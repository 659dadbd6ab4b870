import type { Answer, Argument, Ask, RequestName } from '../../core/contract/requests.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'

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

/** The token comes in the address's fragment, which is never sent; it moves to this tab's storage and leaves the address bar. */
export function takeTokenFromAddress(): void {
  const token = new URLSearchParams(window.location.hash.slice(1)).get('token')
  if (token === null) return
  window.sessionStorage.setItem(tokenKey, token)
  window.history.replaceState(null, '', window.location.pathname)
}

async function askLoopback<Name extends RequestName>(
  name: Name,
  argument: Argument<Name>,
): Promise<Outcome<Answer<Name>>> {
  try {
    const response = await fetch(`/ask/${name}`, {
      method: 'POST',
      headers: {
        'Content-Type': 'application/json',
        Authorization: `Bearer ${window.sessionStorage.getItem(tokenKey) ?? ''}`,
      },
      body: JSON.stringify(argument),
    })
    if (response.status === 401) {
      return fail(
        'notAllowed',
        'This tab is not the one Coatwright opened. Use the address that npm start printed.',
      )
    }
    return (await response.json()) as Outcome<Answer<Name>>
  } catch {
    return fail(
      'hostFailed',
      'Coatwright’s host does not answer. Look whether the npm start window is still open, then try again.',
    )
  }
}
