// Builds what is stale. A target is stale when the content of anything it is made from differs from what it was built of.
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { builtinModules } from 'node:module'
import { dirname, join, relative } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { loadTools } from './missing-tools.mjs'

export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..')
const buildFolder = join(root, 'build')

/** Written into each target by the build: the licences of the packages that are in it. */
export const licenceFile = 'licenses.md'

/** Left to be found in node_modules when the program runs. */
export const outside = ['electron', 'better-sqlite3', ...builtinModules, /^node:/]

// Electron's main and preload must be CommonJS and are held to the oldest Electron the tests run on (Node 18); the renderer to its Chromium.
const targets = {
  renderer: { from: ['core', 'renderer'], file: 'index.html', config: rendererConfig },
  main: {
    from: ['core', 'electron'],
    file: 'main.cjs',
    config: codeConfig('electron/main/main.ts', 'cjs', 'node18'),
  },
  preload: {
    from: ['core/contract', 'electron/preload'],
    file: 'preload.cjs',
    config: codeConfig('electron/preload/preload.ts', 'cjs', 'node18'),
  },
  'job-files': {
    from: ['core', 'electron/handlers', 'electron/storage'],
    file: 'job-files.cjs',
    config: codeConfig('electron/handlers/job-files-thread.ts', 'cjs', 'node18'),
  },
  loopback: {
    from: ['core', 'electron'],
    file: 'loopback.mjs',
    config: codeConfig('electron/loopback/loopback.ts', 'es', 'node22'),
  },
  headless: {
    from: ['core', 'electron'],
    file: 'headless.mjs',
    config: codeConfig('electron/headless/headless.ts', 'es', 'node22'),
  },
}

export const targetNames = Object.keys(targets)

/** The file a target is started by. */
export function outputOf(name) {
  return join(buildFolder, name, targets[name].file)
}

/** Builds those of the named targets that are stale, and says so in one line when there are any. */
export async function buildStale(names, say) {
  if (names.every((name) => isCurrent(name, sourceHash(name)))) return
  const free = await takeTurn()
  try {
    const stale = names.filter((name) => !isCurrent(name, sourceHash(name)))
    if (stale.length === 0) return
    say(`Building ${stale.join(', ')} ...`)
    for (const name of stale) await buildTarget(name)
  } finally {
    free()
  }
}

function isCurrent(name, hash) {
  const stamp = join(buildFolder, name, '.built-of')
  return existsSync(outputOf(name)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash
}

/** Built beside its place and moved there when whole, so that a running program never sees half of it. */
async function buildTarget(name) {
  // Started by a test runner it would inherit "test" and build React's slow development form, for whoever starts the program next too.
  process.env.NODE_ENV = 'production'
  const load = () => Promise.all([import('vite'), import('@vitejs/plugin-react')])
  const [{ build }, { default: react }] = await loadTools(load)
  const hash = sourceHash(name)
  const place = join(buildFolder, name)
  const draft = join(buildFolder, `.${name}-draft`)
  await build({
    configFile: false,
    logLevel: 'warn',
    ...targets[name].config(draft, targets[name].file, react),
  })
  writeFileSync(join(draft, '.built-of'), hash)
  rmSync(place, { recursive: true, force: true })
  renameSync(draft, place)
}

function rendererConfig(outDir, _file, react) {
  return {
    root: join(root, 'renderer', 'app'),
    base: './',
    plugins: [react(), pdfDecoders],
    build: {
      outDir,
      emptyOutDir: true,
      target: 'chrome114',
      modulePreload: { polyfill: false },
      chunkSizeWarningLimit: 4000,
      license: { fileName: licenceFile },
    },
    worker: { format: 'es' },
  }
}

/**
 * Decoders of scanned PDF pages in plain script, because the security policy allows no WebAssembly; the reader of PDF pages asks for them by these names. Their
 * licences lie beside them.
 */
const pdfDecoders = {
  name: 'pdf-decoders',
  generateBundle() {
    const files = readdirSync(join(root, 'node_modules', 'pdfjs-dist', 'wasm'))
    for (const name of files.filter((file) => /(?:jbig2|openjpeg)(?:_nowasm_fallback\.js)?$/i.test(file))) {
      const source = readFileSync(join(root, 'node_modules', 'pdfjs-dist', 'wasm', name))
      this.emitFile({ type: 'asset', fileName: `pdf-decoders/${name}`, source })
    }
  },
}

function codeConfig(entry, format, target) {
  return (outDir, file) => ({
    root,
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      outDir,
      emptyOutDir: true,
      target,
      ssr: true,
      minify: false,
      license: { fileName: licenceFile },
      rollupOptions: {
        input: join(root, entry),
        external: outside,
        output: { format, entryFileNames: file, codeSplitting: false },
      },
    },
  })
}

/** Everything a target is made from: its folders, the packages it may use, and how it is built. */
function sourceHash(name) {
  const hash = createHash('sha256')
  const files = [...targets[name].from.flatMap((folder) => filesUnder(join(root, folder)))]
  for (const file of [...files, join(root, 'package-lock.json'), fileURLToPath(import.meta.url)]) {
    hash
      .update(`${relative(root, file)}\0`)
      .update(readFileSync(file))
      .update('\0')
  }
  return hash.digest('hex')
}

function filesUnder(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
}

/** One build at a time in one checkout; the turn of a builder that died is taken over. Answers what ends the turn. */
async function takeTurn() {
  const turn = join(buildFolder, '.building')
  mkdirSync(buildFolder, { recursive: true })
  for (;;) {
    try {
      writeFileSync(turn, String(process.pid), { flag: 'wx' })
      return () => rmSync(turn, { force: true })
    } catch (error) {
      if (error.code !== 'EEXIST') throw error
    }
    if (!isRunning(turn)) rmSync(turn, { force: true })
    await pause(100)
  }
}

function isRunning(turn) {
  try {
    const builder = Number(readFileSync(turn, 'utf8'))
    // Between making the file and writing its number a moment passes.
    if (builder === 0) return Date.now() - statSync(turn).mtimeMs < 2000
    process.kill(builder, 0)
    return true
  } catch (error) {
    return error.code === 'EPERM'
  }
}
