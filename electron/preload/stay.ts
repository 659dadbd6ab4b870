/** What is used of the page's own interfaces; this code is compiled without those of a browser. */
interface NavigateEvent {
  readonly destination: { readonly url: string }
  preventDefault(): void
}
declare const navigation: {
  addEventListener(kind: 'navigate', listen: (event: NavigateEvent) => void): void
}
declare const location: { readonly protocol: string; readonly host: string }

/**
 * Stops the page before it leaves the program's own pages. The main process does the same for every address that is fetched, but
 * Chromium fetches nothing for about:blank and goes there without asking it.
 */
export function stayOnOwnPages(): void {
  const home = `${location.protocol}//${location.host}/`
  navigation.addEventListener('navigate', (event) => {
    if (!event.destination.url.startsWith(home)) event.preventDefault()
  })
}
