// Starts the program: as a desktop program where Electron can be had, else in the browser.
import { spawn } from 'node:child_process'
import { pathToFileURL } from 'node:url'
import { browserCommand, openInBrowser } from './browser.mjs'
import { buildStale, outputOf, root } from './builder.mjs'
import { findElectron } from './electron-binary.mjs'

/** A desktop program that ends sooner than this with an error never showed its window. */
const showsWindowWithin = 5000

export async function startProgram(words, { environment = process.env, platform = process.platform } = {}) {
  const wanted = words.includes('--browser')
    ? Promise.resolve({ reason: 'as asked' })
    : findElectron(environment, platform, console.log)
  await buildStale(['renderer', 'job-files', 'loopback'], console.log)
  const electron = await wanted
  if (electron.binary === undefined) return startInBrowser(electron.reason, environment, platform)
  await buildStale(['main', 'preload'], console.log)
  const failed = await runDesktop(electron.binary, environment)
  if (failed) await startInBrowser('Electron is here but does not start', environment, platform)
}

/** Answers true when the desktop program failed before it could show anything. */
function runDesktop(binary, environment) {
  const started = Date.now()
  // Chromium's sandbox cannot be set up by the super-user; everybody else keeps it.
  const sandbox = process.getuid?.() === 0 ? ['--no-sandbox'] : []
  return new Promise((resolve) => {
    const child = spawn(binary, [root, ...sandbox], { stdio: 'inherit', env: environment })
    child.on('error', () => resolve(true))
    child.on('exit', (code, signal) => {
      const ended = code === 0 || ['SIGINT', 'SIGTERM', 'SIGHUP'].includes(signal)
      const failed = !ended && Date.now() - started < showsWindowWithin
      process.exitCode = failed ? 0 : (code ?? 1)
      resolve(failed)
    })
  })
}

async function startInBrowser(reason, environment, platform) {
  const { startLoopback } = await import(pathToFileURL(outputOf('loopback')).href)
  const started = await startLoopback({ root, environment, platform })
  if (!started.ok) {
    console.error(started.problem.sentence)
    process.exitCode = 1
    return
  }
  const { newAddress, writeOpeningPage, close } = started.value
  console.log(`Starting in the browser: ${reason}.`)
  console.log(`Coatwright is open at ${newAddress(() => showNext(newAddress))} (Ctrl+C ends it)`)
  const command = browserCommand(environment, platform)
  if (command !== null) openInBrowser(command, writeOpeningPage())
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => close().then(() => process.exit(0)))
  }
}

/** An address opens the program once. Whoever wants it in another tab finds a fresh one below. */
function showNext(newAddress) {
  console.log(`Opened. For another tab or browser: ${newAddress(() => showNext(newAddress))}`)
}
