import { execFile } from 'node:child_process'
import { cpSync, existsSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { builtinModules } from 'node:module'
import { type AddressInfo, createServer, type Socket } from 'node:net'
import { delimiter, dirname, join } from 'node:path'
import { promisify } from 'node:util'
import { expect, onTestFinished, test } from 'vitest'
import { addressIn, endProcess, enter, startLoopback } from '../journeys/loopback-process.ts'
import { testFolder } from '../storage/books.ts'

const run = promisify(execFile)
const launch = join(import.meta.dirname, '..', '..', 'electron', 'launch')
const entries = ['start.mjs', 'build.mjs', 'plan.mjs', 'package.mjs']

/** The launch scripts are plain JavaScript without types. */
async function launchModule(name: string): Promise<Record<string, (...words: unknown[]) => unknown>> {
  return import(join(launch, name))
}

/** This process's environment as a bare machine's: no display, no Electron from elsewhere. */
function bareEnvironment(): NodeJS.ProcessEnv {
  const { DISPLAY, WAYLAND_DISPLAY, ELECTRON_OVERRIDE_DIST_PATH, ...rest } = process.env
  return { ...rest, COATWRIGHT_NO_BROWSER: '1', COATWRIGHT_BOOK: join(testFolder(), 'book.sqlite') }
}

/** An electron package as npm installs it, with its binary fetched as `fetched` where that is given. */
function electronPackage(fetched?: string): string {
  const folder = testFolder()
  writeFileSync(join(folder, 'package.json'), '{ "version": "45.4.1" }')
  if (fetched !== undefined) {
    mkdirSync(join(folder, 'dist'))
    writeFileSync(join(folder, 'path.txt'), 'electron')
    writeFileSync(join(folder, 'dist', 'version'), fetched)
    writeFileSync(join(folder, 'dist', 'electron'), '')
  }
  return folder
}

async function lookForElectron(environment: object, folder: string): Promise<unknown> {
  const { findElectron } = await launchModule('electron-binary.mjs')
  return findElectron?.(environment, 'linux', () => undefined, folder)
}

test('a Node that is too old is told so in one sentence by every entry, before anything else happens', async () => {
  const pretend = join(testFolder(), 'pretend.cjs')
  writeFileSync(pretend, `Object.defineProperty(process.versions, 'node', { value: '18.19.0' })`)
  for (const entry of entries) {
    const failed = await run(process.execPath, ['--require', pretend, join(launch, entry)]).catch(
      (error) => error,
    )
    expect(failed).toMatchObject({ code: 1, stdout: '' })
    expect(failed.stderr).toMatch(
      /^Coatwright needs Node 22\.12\.0 or newer, and this is Node 18\.19\.0\. .*\n$/,
    )
  }
})

test('the guard counts in numbers, not in letters', async () => {
  const { oldNodeSentence } = await launchModule('node-guard.mjs')
  const refused = ['9.11.2', '20.20.2', '22.11.9', '22.12.0', '22.12.1', '24.0.0', '100.0.0'].filter(
    (version) => oldNodeSentence?.(version) !== null,
  )
  expect(refused).toEqual(['9.11.2', '20.20.2', '22.11.9'])
})

test('the entries load nothing before the guard that an old Node could not read', () => {
  for (const entry of entries) {
    const imports = readFileSync(join(launch, entry), 'utf8').match(/^import .*$/gm)
    expect(imports).toEqual(["import './node-guard.mjs'"])
  }
  expect(readFileSync(join(launch, 'node-guard.mjs'), 'utf8')).not.toMatch(/^import|\?\?|\?\.|\bawait\b/m)
})

test('where the packages that build the program are missing, every entry says so in a sentence', async () => {
  const checkout = testFolder()
  cpSync(launch, join(checkout, 'electron', 'launch'), { recursive: true })
  for (const folder of [
    'core/contract',
    'renderer',
    'electron/preload',
    'electron/handlers',
    'electron/storage',
  ]) {
    mkdirSync(join(checkout, folder), { recursive: true })
  }
  for (const file of ['package.json', 'package-lock.json']) writeFileSync(join(checkout, file), '{}')
  for (const entry of entries) {
    const script = join(checkout, 'electron', 'launch', entry)
    const failed = await run(process.execPath, [script], { env: bareEnvironment() }).catch((error) => error)
    expect([entry, failed.code]).toEqual([entry, 1])
    expect(failed.stderr.replace(/^Building .*\n/, '')).toMatch(
      /^The packages that build Coatwright are not installed\. Run "npm ci" without --omit=dev .*\n$/,
    )
  }
})

test('what belongs to a user’s machine is what the build leaves outside, and engines says which Node is needed', async () => {
  const about = JSON.parse(readFileSync(join(launch, '..', '..', 'package.json'), 'utf8'))
  const builder = (await launchModule('builder.mjs')) as unknown as { readonly outside: readonly unknown[] }
  const packages = builder.outside.filter(
    (name) => typeof name === 'string' && !builtinModules.includes(name),
  )
  expect(['electron', ...Object.keys(about.dependencies)].sort()).toEqual([...packages].sort())
  expect(about.devDependencies).toHaveProperty('electron')
  const { oldestNode } = (await launchModule('node-guard.mjs')) as unknown as { readonly oldestNode: string }
  expect(about.engines).toEqual({ node: `>=${oldestNode}` })
})

test('an Electron that is there is used, one of another version is not', async () => {
  const there = electronPackage('v45.4.1')
  expect(await lookForElectron({ DISPLAY: ':0' }, there)).toEqual({
    binary: join(there, 'dist', 'electron'),
    folder: join(there, 'dist'),
  })
  const { installedBinary } = await launchModule('electron-binary.mjs')
  expect(installedBinary?.(electronPackage('44.0.0'), {}, 'linux')).toBeNull()
  expect(installedBinary?.(electronPackage(), {}, 'linux')).toBeNull()
})

test('an Electron from elsewhere is used, and its absence is said', async () => {
  const elsewhere = testFolder()
  const environment = { WAYLAND_DISPLAY: 'w', ELECTRON_OVERRIDE_DIST_PATH: elsewhere }
  expect(await lookForElectron(environment, electronPackage())).toEqual({
    reason: `there is no Electron in ${elsewhere}`,
  })
  writeFileSync(join(elsewhere, 'electron'), '')
  expect(await lookForElectron(environment, electronPackage())).toEqual({
    binary: join(elsewhere, 'electron'),
    folder: elsewhere,
  })
})

test('without a display there is no desktop window', async () => {
  expect(await lookForElectron({}, electronPackage('45.4.1'))).toEqual({
    reason: 'there is no display for a desktop window',
  })
})

test('a download site that cannot be reached, and one that never answers, are given up', async () => {
  const callers: Socket[] = []
  const mute = createServer((caller) => callers.push(caller))
  await new Promise<void>((resolve) => mute.listen(0, '127.0.0.1', resolve))
  const { port } = mute.address() as AddressInfo
  const environment = { DISPLAY: ':0', ELECTRON_MIRROR: `http://127.0.0.1:${port}/` }
  const gaveUp = { reason: 'Electron is not here yet and its download site cannot be reached' }
  expect(await lookForElectron(environment, electronPackage())).toEqual(gaveUp)
  expect(callers).toHaveLength(1)
  for (const caller of callers) caller.destroy()
  await new Promise<void>((resolve) => mute.close(() => resolve()))
  expect(await lookForElectron(environment, electronPackage())).toEqual(gaveUp)
})

test('a browser is opened where somebody may look, by the means of each system', async () => {
  const { browserCommand } = await launchModule('browser.mjs')
  const folder = testFolder()
  writeFileSync(join(folder, 'xdg-open'), '')
  const linux = { PATH: `/nowhere:${folder}`, DISPLAY: ':0' }
  expect(browserCommand?.(linux, 'linux')).toEqual(['xdg-open'])
  expect(browserCommand?.({ PATH: '/nowhere', DISPLAY: ':0' }, 'linux')).toBeNull()
  expect(browserCommand?.({ PATH: folder }, 'linux')).toBeNull()
  expect(browserCommand?.({ ...linux, CI: 'true' }, 'linux')).toBeNull()
  expect(browserCommand?.({ ...linux, COATWRIGHT_NO_BROWSER: '1' }, 'linux')).toBeNull()
  expect(browserCommand?.({}, 'darwin')).toEqual(['open'])
  expect(browserCommand?.({}, 'win32')?.[0 as never]).toBe('cmd')
})

test('npm start without a display says so in one line, and the address it prints answers', async () => {
  const { host, address, said } = await startLoopback(bareEnvironment(), [])
  onTestFinished(() => endProcess(host))
  expect(said).toContain('Starting in the browser: there is no display for a desktop window.')
  const [pages] = address.split('#')
  const { token } = await enter(address)
  expect(await (await fetch(pages ?? '')).text()).toContain('<title>')
  const answer = await fetch(`${pages}ask/hostFacts`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Authorization: `Bearer ${token}` },
    body: '{}',
  })
  expect(await answer.json()).toMatchObject({ ok: true, value: { host: 'loopback' } })
})

/** Waits until `look` finds something, for at most ten seconds. */
async function wait<Found>(look: () => Found | null | undefined): Promise<Found> {
  for (let tries = 0; tries < 200; tries++) {
    const found = look()
    if (found !== null && found !== undefined) return found
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  throw new Error('waited in vain')
}

test.skipIf(process.platform === 'win32')(
  'the browser is started on a private page; neither token nor code stands in a process list',
  async () => {
    const { CI, COATWRIGHT_NO_BROWSER, ...rest } = bareEnvironment()
    const folder = testFolder()
    const started = join(folder, 'started')
    for (const name of ['xdg-open', 'open']) {
      const script = `#!/bin/sh\nprintf '%s\\n' "$0" "$@" > ${started}.half && mv ${started}.half ${started}\n`
      writeFileSync(join(folder, name), script, { mode: 0o755 })
    }
    const environment: NodeJS.ProcessEnv = {
      ...rest,
      DISPLAY: ':99',
      PATH: `${folder}${delimiter}${rest.PATH}`,
    }
    const { host, address, said } = await startLoopback(environment)
    onTestFinished(() => endProcess(host))
    const [, ...words] = await wait(() => (existsSync(started) ? readFileSync(started, 'utf8') : null)).then(
      (text) => text.trim().split('\n'),
    )
    const page = join(dirname(environment.COATWRIGHT_BOOK ?? ''), 'open-coatwright.html')
    expect(words).toEqual([page])
    expect((statSync(page).mode & 0o777).toString(8)).toBe('600')
    const inPage = addressIn(readFileSync(page, 'utf8')) ?? ''
    expect(inPage).not.toBe(address)
    const { token } = await enter(inPage)
    expect(token).toMatch(/^[\w-]{32}$/)
    expect(existsSync(page)).toBe(false)
    expect((await enter(inPage)).status).toBe(401)
    expect(said.join('\n')).not.toContain(token)
    // The address in the terminal still opens the program, once, and a fresh one is shown then.
    expect((await enter(address)).token).toBe(token)
    const next = await wait(() => said.map(addressIn).find((each) => each !== null && each !== address))
    expect([(await enter(address)).status, (await enter(next)).status]).toEqual([401, 200])
  },
)

test('the private page is not written through a link that somebody laid there', async () => {
  const { writeForwardingPage } = await import('../../electron/loopback/handover.ts')
  const folder = testFolder()
  const other = join(folder, 'other.txt')
  writeFileSync(other, 'of somebody else')
  symlinkSync(other, join(folder, 'page.html'))
  writeForwardingPage(join(folder, 'page.html'), 'http://127.0.0.1:1/#code=x')
  expect(readFileSync(other, 'utf8')).toBe('of somebody else')
  expect(addressIn(readFileSync(join(folder, 'page.html'), 'utf8'))).toBe('http://127.0.0.1:1/#code=x')
})

test('a second npm start on the same book is told that it is open', async () => {
  const environment = bareEnvironment()
  const { host } = await startLoopback(environment)
  onTestFinished(() => endProcess(host))
  const second = await run(process.execPath, [join(launch, 'start.mjs'), '--browser'], {
    env: environment,
  }).catch((error) => error)
  expect(second).toMatchObject({ code: 1 })
  expect(second.stderr).toContain('already open in another Coatwright')
})

test('a port that is taken is said in words', async () => {
  const other = createServer()
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve))
  onTestFinished(() => {
    other.close()
  })
  const { port } = other.address() as AddressInfo
  const environment = { ...bareEnvironment(), COATWRIGHT_PORT: String(port) }
  const failed = await run(process.execPath, [join(launch, 'start.mjs'), '--browser'], {
    env: environment,
  }).catch((error) => error)
  expect(failed).toMatchObject({ code: 1 })
  expect(failed.stderr).toContain(`Port ${port} of this machine is taken`)
})
