import { type ChildProcess, execFile, execFileSync, spawn } from 'node:child_process'
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { promisify } from 'node:util'
import { type Browser, chromium, type Page } from 'playwright-core'
import { expect, onTestFinished, test } from 'vitest'
import { granted, testFolder } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { desktopMissingHere, ownDisplay, programEnvironment } from './hosts.ts'
import { endProcess } from './loopback-process.ts'

const root = join(import.meta.dirname, '..', '..')
const missing =
  desktopMissingHere ?? (process.platform === 'linux' ? null : 'this check knows its way on Linux only')

test('the packaged program starts from its archive alone, stores an edit and prints', {
  timeout: 400_000,
}, async (context) => {
  if (missing !== null) return context.skip(missing)
  const folder = await unpackedProgram()
  await checkContents(folder)
  const preloads = adaptToOldRuntime(folder)
  const data = testFolder()
  mkdirSync(join(data, 'saved'))
  const display = await ownDisplay()
  onTestFinished(() => display.end())
  const environment = { ...programEnvironment(data), ...display.environment, ...preloads }

  const first = await startPackaged(folder, { ...environment, ...temptations(data) })
  await first.page.getByRole('button', { name: 'Look at the demo house' }).click()
  await first.page.waitForSelector('.sheet canvas')
  const before = granted(await askFrom(first.page, 'listJobs', {}))
  expect(before).toHaveLength(1)
  const jobKey = before[0]?.jobKey ?? ''
  const { revision } = granted(await askFrom(first.page, 'openJob', { jobKey }))
  await nudgeTheHouse(first.page)
  const moved = granted(await askFrom(first.page, 'openJob', { jobKey }))
  expect(moved.revision).toBe(revision + 1)
  await printARoom(first.page, join(data, 'saved'))
  expect(first.said.join('\n')).not.toContain('Debugger listening')
  expect(existsSync(join(data, 'tempted'))).toBe(false)
  await first.end()

  const second = await startPackaged(folder, environment)
  expect(granted(await askFrom(second.page, 'openJob', { jobKey }))).toEqual(moved)
  await second.end()
})

/** Packages the program, and unpacks the archive where nothing of the checkout lies above it. */
async function unpackedProgram(): Promise<string> {
  const out = testFolder()
  const script = join(root, 'electron', 'launch', 'package.mjs')
  await promisify(execFile)(process.execPath, [script, '--out', out], { cwd: root })
  const [archive] = readdirSync(out).filter((name) => name.endsWith('.tar.gz'))
  const place = testFolder()
  execFileSync('tar', ['-xzf', join(out, archive ?? ''), '-C', place])
  return join(place, 'Coatwright-linux-x64')
}

async function checkContents(folder: string): Promise<void> {
  expect(readdirSync(join(folder, 'resources')).sort()).toEqual(['app.asar', 'app.asar.unpacked'])
  const licences = readFileSync(join(folder, 'LICENSES.packages.md'), 'utf8')
  for (const name of ['react', 'konva', 'zod', 'better-sqlite3']) expect(licences).toContain(`## ${name}`)
  // The launch scripts are plain JavaScript without types.
  const { readFuses } = await import(join(root, 'electron', 'launch', 'packaging.mjs'))
  expect(await readFuses(join(folder, 'coatwright'))).toMatchObject({
    RunAsNode: false,
    EnableCookieEncryption: true,
    EnableNodeOptionsEnvironmentVariable: false,
    EnableNodeCliInspectArguments: false,
    OnlyLoadAppFromAsar: true,
  })
}

/**
 * Tests may run on an Electron too old for the SQLite package; such a runtime brings `shim.node`, which defines three functions under
 * names of its own. The packaged program is left as it is, but for these names in the native file beside the archive.
 */
function adaptToOldRuntime(folder: string): Record<string, string> {
  const shim = join(folder, 'shim.node')
  if (!existsSync(shim)) return {}
  const sqlite = join(folder, 'resources', 'app.asar.unpacked', 'node_modules', 'better-sqlite3')
  const native = join(sqlite, 'prebuilds', `linux-${process.arch}.node`)
  const bytes = readFileSync(native)
  for (const name of ['napi_create_reference', 'napi_get_reference_value', 'napi_delete_reference']) {
    const place = bytes.indexOf(`\0${name}\0`, 0, 'latin1')
    if (place < 0) throw new Error(`${native} does not import ${name}`)
    bytes.write('nbpi_', place + 1, 'latin1')
  }
  writeFileSync(native, bytes)
  return { LD_PRELOAD: shim }
}

/** What would turn an ordinary Electron into something else. */
function temptations(data: string): Record<string, string> {
  const script = join(data, 'tempt.cjs')
  writeFileSync(script, `require('node:fs').writeFileSync(${JSON.stringify(join(data, 'tempted'))}, '')`)
  return { ELECTRON_RUN_AS_NODE: '1', NODE_OPTIONS: `--require ${script}` }
}

interface Packaged {
  readonly page: Page
  readonly said: readonly string[]
  readonly end: () => Promise<void>
}

/** By Chromium's own debugging port: the fuses have closed the one of Node. */
async function startPackaged(folder: string, env: Record<string, string>): Promise<Packaged> {
  const words = ['--remote-debugging-port=0', '--inspect=0']
  const program = spawn(
    join(folder, 'coatwright'),
    process.getuid?.() === 0 ? [...words, '--no-sandbox'] : words,
    {
      cwd: folder,
      env,
      stdio: ['ignore', 'ignore', 'pipe'],
    },
  )
  onTestFinished(() => endProcess(program))
  const { browser, said } = await connect(program)
  const [context] = browser.contexts()
  // The port may answer before there is a window.
  const page = context?.pages()[0] ?? (await context?.waitForEvent('page'))
  if (page === undefined) throw new Error('The packaged program shows no window')
  await page.getByRole('button', { name: 'Book of jobs' }).waitFor()
  const end = async () => {
    const ended = new Promise((resolve) => program.once('exit', resolve))
    await page.close()
    await ended
  }
  return { page, said, end }
}

function connect(
  program: ChildProcess,
): Promise<{ readonly browser: Browser; readonly said: readonly string[] }> {
  const said: string[] = []
  return new Promise((resolve, reject) => {
    if (program.stderr === null) return reject(new Error('nothing can be heard'))
    const lines = createInterface({ input: program.stderr })
    lines.on('line', (line) => {
      said.push(line)
      const address = /^DevTools listening on (ws:\S+)/.exec(line)?.[1]
      if (address !== undefined) {
        chromium
          .connectOverCDP(address, { noDefaults: true })
          .then((browser) => resolve({ browser, said }), reject)
      }
    })
    lines.on('close', () => reject(new Error(`the packaged program ended: ${said.join('\n')}`)))
  })
}

/** All of the storey one step to the right, and waits until it is in the book. */
async function nudgeTheHouse(page: Page): Promise<void> {
  await page.getByRole('button', { name: /House/ }).first().click()
  await page.locator('body').press('Control+a')
  await page.locator('body').press('ArrowRight')
  await page.getByRole('button', { name: /^Undo: / }).waitFor()
  await page.locator('[data-stored=stored]').waitFor()
}

async function printARoom(page: Page, folder: string): Promise<void> {
  const html = '<!doctype html><title>A room</title><h1>Dining room</h1>'
  granted(await askFrom(page, 'savePdf', { fileName: 'room.pdf', html, paper: 'letter' }))
  granted(await askFrom(page, 'printDocument', { html, paper: 'letter' }))
  for (const name of ['room.pdf', 'printed.pdf']) {
    const text = execFileSync('pdftotext', [join(folder, name), '-'], { encoding: 'utf8' })
    expect(text).toContain('Dining room')
  }
}
