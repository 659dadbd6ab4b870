import { execFileSync } from 'node:child_process'
import { type AddressInfo, createServer } from 'node:net'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, onTestFinished } from 'vitest'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { desktopJourney } from './hosts.ts'

/** A server of this machine that answers every caller with a page, and counts the callers. */
async function startLure(): Promise<{ readonly address: string; readonly callers: () => number }> {
  let callers = 0
  const server = createServer((caller) => {
    callers += 1
    caller.on('error', () => undefined)
    caller.end('HTTP/1.1 200 OK\r\nContent-Type: text/html\r\nConnection: close\r\n\r\n<h1>Lured away</h1>')
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    server.close()
  })
  return { address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`, callers: () => callers }
}

desktopJourney('the window goes nowhere, by whatever means it is sent', async ({ page }) => {
  const lure = await startLure()
  await page.waitForSelector('.sheet')
  await page.evaluate(() => {
    Object.assign(window, { mark: 'the page that was there before' })
  })
  const ways = [
    'about:blank',
    'about:blank#here',
    'about:srcdoc',
    lure.address,
    'coatwright://print/x',
    'coatwright://other/',
    'file:///etc/hostname',
    'data:text/html,<h1>Lured away</h1>',
    'chrome://gpu',
    'javascript:void(document.title = "ran")',
  ]
  for (const way of ways) {
    for (const go of ['assign', 'link', 'frame', 'form', 'refresh'] as const) {
      await page.evaluate(sendTo, [go, way] as const)
      await page.waitForTimeout(60)
      expect([go, way, await isStillThere(page)]).toEqual([go, way, true])
    }
  }
  expect(lure.callers()).toBe(0)
  expect(page.url()).toBe('coatwright://app/')
})

/** Runs in the page: sends it, or something in it, to another address. */
function sendTo([go, address]: readonly ['assign' | 'link' | 'frame' | 'form' | 'refresh', string]): void {
  if (go === 'assign') {
    window.location.href = address
    return
  }
  const tag = { link: 'a', frame: 'iframe', form: 'form', refresh: 'meta' }[go]
  const element = document.createElement(tag)
  if (element instanceof HTMLAnchorElement) element.href = address
  if (element instanceof HTMLIFrameElement) element.src = address
  if (element instanceof HTMLFormElement) element.action = address
  if (element instanceof HTMLMetaElement) {
    element.httpEquiv = 'refresh'
    element.content = `0; url=${address}`
  }
  document.body.append(element)
  if (element instanceof HTMLAnchorElement) element.click()
  if (element instanceof HTMLFormElement) element.submit()
}

async function isStillThere(page: Page): Promise<boolean> {
  return page.evaluate(
    () => 'mark' in window && document.title !== 'ran' && document.querySelector('.sheet') !== null,
  )
}

desktopJourney(
  'the window opens no other, holds no other program, and is given no permission',
  async ({ page, application }) => {
    const lure = await startLure()
    const tried = await page.evaluate(async (address) => {
      const view = document.createElement('webview')
      view.setAttribute('src', address)
      document.body.append(view)
      const opened = ['about:blank', '', address, 'coatwright://app/', 'https://example.com/'].filter(
        (one) => window.open(one) !== null,
      )
      const link = Object.assign(document.createElement('a'), {
        href: 'data:text/plain,x',
        download: 'x.txt',
      })
      link.click()
      const wanted = ['geolocation', 'notifications', 'camera', 'microphone', 'clipboard-read', 'midi']
      const states = await Promise.all(
        wanted.map(
          async (name) => (await navigator.permissions.query({ name: name as PermissionName })).state,
        ),
      )
      return { opened, granted: states.filter((state) => state === 'granted') }
    }, lure.address)
    expect(tried).toEqual({ opened: [], granted: [] })
    expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied')
    const media = page.evaluate(() =>
      navigator.mediaDevices.getUserMedia({ audio: true }).then(() => 'given'),
    )
    expect(await media.catch(() => 'refused')).toBe('refused')
    await page.waitForTimeout(300)
    const contents = await application.evaluate(({ webContents }) => webContents.getAllWebContents().length)
    expect([contents, lure.callers()]).toEqual([1, 0])
  },
)

/** Everything by which a document on its way to paper might go elsewhere or fetch something. */
function hostileDocument(address: string): string {
  return `<!doctype html><title>A room</title>
    <meta http-equiv="refresh" content="0; url=${address}refresh">
    <link rel="preconnect" href="${address}"><link rel="dns-prefetch" href="${address}">
    <link rel="prefetch" href="${address}prefetch"><link rel="preload" as="image" href="${address}preload">
    <link rel="stylesheet" href="${address}style.css"><link rel="icon" href="${address}icon.png">
    <style>@import url(${address}import.css); @font-face { font-family: F; src: url(${address}font.woff2) }
      h1 { background: url(${address}background.png); font-family: F }</style>
    <h1>Dining room</h1><img src="${address}image.png"><video src="${address}film.mp4" autoplay></video>
    <iframe src="${address}frame"></iframe><iframe srcdoc="<script>top.location='${address}srcdoc'</script>"></iframe>
    <object data="${address}object"></object><embed src="${address}embed">
    <form action="${address}form"><button autofocus>Send</button></form>
    <script>location.href = '${address}script'; document.querySelector('h1').textContent = 'Script ran'</script>
    <img src="x" onerror="location.href = '${address}handler'">`
}

desktopJourney(
  'a document on its way to paper goes nowhere and loads nothing',
  async ({ page, saveFolder }) => {
    const lure = await startLure()
    const html = hostileDocument(lure.address)
    const saved = granted(await askFrom(page, 'savePdf', { fileName: 'room.pdf', html, paper: 'letter' }))
    expect(saved.path).toBe(join(saveFolder, 'room.pdf'))
    const text = execFileSync('pdftotext', [saved.path ?? '', '-'], { encoding: 'utf8' })
    expect(text).toContain('Dining room')
    expect(text).not.toMatch(/Lured away|Script ran/)
    await page.waitForTimeout(300)
    expect(lure.callers()).toBe(0)
  },
)

desktopJourney(
  'even a page with scripts reaches nothing from the session for paper',
  async ({ application }) => {
    const lure = await startLure()
    const tried = await application.evaluate(tryFromPrintSession, lure.address)
    expect(tried).toEqual({
      visited: 'ERR_BLOCKED_BY_CLIENT',
      fetched: false,
      painted: false,
      opened: false,
      socket: false,
      camera: false,
      notices: 'denied',
      address: 'data:text/html,<title>paper</title>',
    })
    expect(lure.callers()).toBe(0)
  },
)

/** Runs in the desktop program's main process: a window of the print session, but with scripts, tries to get out. */
async function tryFromPrintSession(
  { BrowserWindow, session }: typeof import('electron'),
  address: string,
): Promise<object> {
  const window = new BrowserWindow({
    show: false,
    webPreferences: { session: session.fromPartition('print'), sandbox: true },
  })
  const visited = await window.loadURL(address).then(
    () => 'there',
    (error: { readonly code: string }) => error.code,
  )
  await window.loadURL('data:text/html,<title>paper</title>')
  const inPage = await window.webContents.executeJavaScript(`(async () => {
    const url = ${JSON.stringify(address)}
    const did = (promise) => promise.then(() => true, () => false)
    const loads = (image) => new Promise((resolve) => {
      image.onload = () => resolve(true)
      image.onerror = () => resolve(false)
      image.src = url
    })
    const joins = (socket) => new Promise((resolve) => {
      socket.onopen = () => resolve(true)
      socket.onerror = () => resolve(false)
    })
    const answers = {
      fetched: await did(fetch(url, { mode: 'no-cors' })),
      painted: await loads(new Image()),
      opened: window.open(url) !== null,
      socket: await joins(new WebSocket(url.replace('http', 'ws'))),
      camera: navigator.mediaDevices ? await did(navigator.mediaDevices.getUserMedia({ video: true })) : false,
      notices: await Notification.requestPermission(),
    }
    location.href = url
    await new Promise((resolve) => setTimeout(resolve, 300))
    return { ...answers, address: location.href }
  })()`)
  window.destroy()
  return { visited, ...inPage }
}
