import { execFile, spawn, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import {
  _electron,
  type Browser,
  chromium,
  type ElectronApplication,
  errors,
  type Page,
} from 'playwright-core'
import { test } from 'vitest'
import { findChromium } from './chromium.ts'
import { addressIn, endProcess, startLoopback } from './loopback-process.ts'

const root = join(import.meta.dirname, '..', '..')
const viewport = { width: 1440, height: 900 }

/** The program running on a book of its own, as a journey uses it. */
export interface Program {
  readonly host: 'browser' | 'desktop'
  readonly page: Page
  /** The desktop program's main process; null in a browser. */
  readonly application: ElectronApplication | null
  /** An address that opens the program once more in another tab; the browser's host only. */
  readonly nextAddress: () => Promise<string>
  /** Where saved documents go. */
  readonly saveFolder: string
  /** Does something that saves a document, and answers the path of the file once it is there. */
  readonly save: (fileName: string, action: () => Promise<unknown>) => Promise<string>
  /** Ends the program, does something to its book, and starts it again on it; `page` is the new one afterwards. */
  readonly restart: (between?: (bookPath: string) => void) => Promise<void>
}

interface Running {
  readonly page: Page
  readonly application: ElectronApplication | null
  readonly nextAddress: () => Promise<string>
  readonly end: () => Promise<void>
}

interface Host {
  readonly name: Program['host']
  /** In words why this host cannot be had on this machine, or null. */
  readonly missing: string | null
  readonly start: (folder: string) => Promise<Running>
}

const chromiumHere = await findChromium()

const browserHost: Host = {
  name: 'browser',
  missing: typeof chromiumHere === 'string' ? chromiumHere : null,
  start: startBrowser,
}

/** In words why the desktop program cannot be started on this machine, or null. */
export const desktopMissingHere = desktopMissing()
const desktopHost: Host = { name: 'desktop', missing: desktopMissingHere, start: startDesktop }

for (const { name, missing } of [browserHost, desktopHost]) {
  if (missing !== null) console.warn(`Journeys in the ${name} are skipped: ${missing}.`)
}

/**
 * A journey on a book with the demonstration house, once in a browser and once in the desktop window: for what a host has a part in (the book, files, paper,
 * windows, starting again), and for one whole journey through each station.
 */
export function journey(name: string, walk: (program: Program) => Promise<void>): void {
  for (const host of [browserHost, desktopHost]) walkIn(host, name, walk)
}

/** What only the desktop program has. */
export function desktopJourney(
  name: string,
  walk: (program: Program & { readonly application: ElectronApplication }) => Promise<void>,
): void {
  walkIn(desktopHost, name, (program) => {
    const { application } = program
    if (application === null) throw new Error('The desktop program has no main process')
    return walk({ ...program, application })
  })
}

/** A journey in the browser alone: what no host has a part in, or what only the host for a browser has. */
export function browserJourney(name: string, walk: (program: Program) => Promise<void>): void {
  walkIn(browserHost, name, walk)
}

/** As the program is when it was never used: an empty book; in a browser. */
export function firstJourney(name: string, walk: (program: Program) => Promise<void>): void {
  walkIn(browserHost, name, walk, false)
}

function walkIn(host: Host, name: string, walk: (program: Program) => Promise<void>, hasDemo = true): void {
  test(`${name} (${host.name})`, { timeout: 240_000 }, async (context) => {
    if (host.missing !== null) return context.skip(host.missing)
    built ??= promisify(execFile)(process.execPath, [builder, ...targets])
    await built
    await walkOn(host, walk, hasDemo)
  })
}

const builder = join(root, 'electron', 'launch', 'build.mjs')
const targets = ['renderer', 'job-files', 'loopback', 'main', 'preload']
/** Once for each file of journeys. */
let built: Promise<unknown> | undefined

async function walkOn(
  host: Host,
  walk: (program: Program) => Promise<void>,
  hasDemo: boolean,
): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'coatwright-journey-'))
  const saveFolder = join(folder, 'saved')
  mkdirSync(saveFolder)
  let running = await host.start(folder)
  const program: Program = {
    host: host.name,
    get page() {
      return running.page
    },
    get application() {
      return running.application
    },
    nextAddress: () => running.nextAddress(),
    saveFolder,
    save: (fileName, action) => saveInto(host.name, running.page, join(saveFolder, fileName), action),
    restart: async (between) => {
      await running.end()
      between?.(join(folder, 'book.sqlite'))
      running = await host.start(folder)
    },
  }
  try {
    if (hasDemo) await lookAtDemo(running.page)
    await walk(program)
  } catch (error) {
    await keepPicture(host.name, running.page)
    throw error
  } finally {
    await running.end()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function lookAtDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Look at the demo house' }).click()
  await page.getByTestId('house-figures').waitFor()
}

/** What the user saw when a journey failed: test-results/<host>-<moment>.png. */
async function keepPicture(host: string, page: Page): Promise<void> {
  const path = join(root, 'test-results', `${host}-${Date.now()}.png`)
  await page.screenshot({ path, timeout: 5000 }).catch(() => undefined)
}

async function saveInto(
  host: Program['host'],
  page: Page,
  path: string,
  action: () => Promise<unknown>,
): Promise<string> {
  if (host === 'browser') {
    const [download] = await Promise.all([page.waitForEvent('download'), action()])
    await download.saveAs(path)
    return path
  }
  await action()
  // The desktop program puts a file in its place only when it is whole.
  for (let tries = 0; !existsSync(path) && tries < 200; tries++) await page.waitForTimeout(100)
  if (!existsSync(path)) throw new Error(`${path} was not saved`)
  return path
}

export function programEnvironment(folder: string): Record<string, string> {
  const environment = Object.entries(process.env).filter((entry): entry is [string, string] => !!entry[1])
  return {
    ...Object.fromEntries(environment),
    COATWRIGHT_BOOK: join(folder, 'book.sqlite'),
    COATWRIGHT_SAVE_FOLDER: join(folder, 'saved'),
    COATWRIGHT_NO_BROWSER: '1',
  }
}

async function startBrowser(folder: string): Promise<Running> {
  if (typeof chromiumHere === 'string') throw new Error(chromiumHere)
  const { host, address, said } = await startLoopback(programEnvironment(folder))
  const browser: Browser = await chromium.launch({
    executablePath: chromiumHere.executablePath,
    env: { ...programEnvironment(folder), ...chromiumHere.environment },
    args: ['--no-sandbox', '--headless', '--disable-gpu', '--font-render-hinting=none'],
  })
  const page = await browser.newPage({ viewport, acceptDownloads: true })
  await page.goto(address)
  return {
    page,
    application: null,
    nextAddress: async () => {
      for (;;) {
        const next = addressIn(said.at(-1) ?? '')
        if (next !== null && next !== address) return next
        await page.waitForTimeout(20)
      }
    },
    end: async () => {
      await browser.close()
      await endProcess(host)
    },
  }
}

function electronBinary(): string | null {
  const other = process.env.ELECTRON_OVERRIDE_DIST_PATH
  if (other !== undefined) return join(other, 'electron')
  const folder = join(root, 'node_modules', 'electron')
  const file = join(folder, 'path.txt')
  return existsSync(file) ? join(folder, 'dist', readFileSync(file, 'utf8')) : null
}

function desktopMissing(): string | null {
  const binary = electronBinary()
  if (binary === null) return 'Electron is not installed, and ELECTRON_OVERRIDE_DIST_PATH names no other'
  if (!existsSync(binary)) return `there is no ${binary}`
  if (process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY) return null
  return spawnSync('Xvfb', ['-help']).error ? 'there is no display and no Xvfb to make one' : null
}

const longestLaunch = 40_000
const launches = 3

/** A desktop runtime that is up but never answers the driver was seen once, without a cause found in the program: it is started anew. */
async function launchDesktop(env: Record<string, string>): Promise<ElectronApplication> {
  for (let launch = 1; ; launch++) {
    try {
      return await _electron.launch({
        executablePath: electronBinary() ?? '',
        args: process.getuid?.() === 0 ? [root, '--no-sandbox'] : [root],
        cwd: root,
        env,
        timeout: longestLaunch,
      })
    } catch (error) {
      if (launch === launches || !(error instanceof errors.TimeoutError)) throw error
      console.warn(`The desktop window was not up after ${longestLaunch / 1000} s; it is started anew.`)
    }
  }
}

async function startDesktop(folder: string): Promise<Running> {
  const display = await ownDisplay()
  const application = await launchDesktop({ ...programEnvironment(folder), ...display.environment })
  const page = await application.firstWindow()
  await page.setViewportSize(viewport)
  return {
    page,
    application,
    nextAddress: () => Promise.reject(new Error('The desktop window has no address')),
    end: async () => {
      await application.close()
      await display.end()
    },
  }
}

/** A display nobody looks at, where the machine has none. */
export async function ownDisplay(): Promise<{
  environment: Record<string, string>
  end: () => Promise<void>
}> {
  if (process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY) {
    return { environment: {}, end: async () => {} }
  }
  const server = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1920x1080x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  })
  const [number] = await once(server.stdio[3] as NodeJS.ReadableStream, 'data')
  return { environment: { DISPLAY: `:${String(number).trim()}` }, end: () => endProcess(server) }
}
