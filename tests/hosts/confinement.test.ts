import type { Session } from 'electron'
import { expect, test, vi } from 'vitest'
import { confineSession, mayFrame, mayGo } from '../../electron/main/confinement.ts'
import { originOf, pageOrigin } from '../../electron/main/guard.ts'

// Loading the package itself would start a download.
vi.mock('electron', () => ({ app: {} }))

/** A session that keeps what was set on it. */
function confined() {
  const kept: Record<string, (...words: unknown[]) => unknown> = {}
  const keep = (name: string) => (handler: (...words: unknown[]) => unknown) => {
    kept[name] = handler
  }
  const session = {
    setPermissionRequestHandler: keep('request'),
    setPermissionCheckHandler: keep('check'),
    setDevicePermissionHandler: keep('device'),
    on: (name: string, handler: (...words: unknown[]) => unknown) => keep(name)(handler),
    webRequest: { onBeforeRequest: keep('load') },
  }
  confineSession(session as unknown as Session, (address) => originOf(address) === pageOrigin)
  return kept
}

test('a confined session answers no to every permission, looked up or asked for', () => {
  const { request, check, device } = confined()
  for (const permission of ['clipboard-sanitized-write', 'fullscreen', 'geolocation', 'media', 'unknown']) {
    const answer = vi.fn()
    request?.(null, permission, answer)
    expect(answer.mock.calls).toEqual([[false]])
    expect(check?.(null, permission, pageOrigin)).toBe(false)
  }
  expect(device?.({ deviceType: 'usb' })).toBe(false)
})

test('a confined session downloads nothing', () => {
  const event = { preventDefault: vi.fn() }
  confined()['will-download']?.(event)
  expect(event.preventDefault).toHaveBeenCalledOnce()
})

test('a confined session loads its own pages and what they carry, nothing else', () => {
  const { load } = confined()
  const loaded = (url: string) => {
    const answer = vi.fn()
    load?.({ url }, answer)
    return answer.mock.calls[0]?.[0].cancel === false
  }
  const own = [
    'coatwright://app/',
    'coatwright://app/assets/a.js',
    'data:image/png,x',
    'blob:coatwright://app/1',
  ]
  expect(own.filter((address) => !loaded(address))).toEqual([])
  const foreign = ['http://127.0.0.1/', 'https://example.com/', 'ws://127.0.0.1/', 'file:///etc/passwd']
  const near = [
    'coatwright://print/1',
    'coatwright://app.example/',
    'about:blank',
    'ftp://app/',
    'chrome://gpu',
  ]
  expect([...foreign, ...near].filter(loaded)).toEqual([])
})

test('a page goes from one of the program’s pages to another, and a document for paper nowhere', () => {
  expect(mayGo('coatwright://app/', 'coatwright://app/index.html')).toBe(true)
  const refused = [
    ['coatwright://app/', 'about:blank'],
    ['coatwright://app/', 'coatwright://print/1'],
    ['coatwright://app/', 'https://app/'],
    ['coatwright://print/1', 'coatwright://app/'],
    ['coatwright://print/1', 'coatwright://print/1'],
    ['data:text/html,x', 'coatwright://app/'],
    ['', 'https://example.com/'],
  ] as const
  expect(refused.filter(([from, to]) => mayGo(from, to))).toEqual([])
})

test('a frame holds what the page itself wrote, and nothing else; a document for paper holds none', () => {
  expect(mayFrame('coatwright://app/', 'about:srcdoc')).toBe(true)
  const refused = [
    ['coatwright://print/1', 'about:srcdoc'],
    ['coatwright://app/', 'about:blank'],
    ['coatwright://app/', 'data:text/html,x'],
    ['coatwright://app/', 'https://example.com/'],
  ] as const
  expect(refused.filter(([around, inside]) => mayFrame(around, inside))).toEqual([])
})
