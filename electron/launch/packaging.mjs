// Makes a self-contained folder of the desktop program, and an archive of it, for the system this runs on.
import { spawnSync } from 'node:child_process'
import {
  appendFileSync,
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, dirname, join, relative, sep } from 'node:path'
import { buildStale, licenceFile, outputOf, root } from './builder.mjs'
import { fetchElectron } from './electron-binary.mjs'
import { loadTools } from './missing-tools.mjs'

const targets = ['renderer', 'main', 'preload', 'job-files']

/**
 * @param words `--out <folder>` (otherwise `out`), `--no-archive`
 * @returns the folder that was made, or null where it was said why there is none
 */
export async function packageProgram(words, { environment = process.env, platform = process.platform } = {}) {
  const load = () => Promise.all([import('@electron/packager'), import('@electron/fuses')])
  const [{ packager }, fuses] = await loadTools(load)
  const electron = await fetchElectron(environment, platform, console.log)
  if (electron.binary === undefined) return complain(`Nothing was packaged: ${electron.reason}.`)
  await buildStale(targets, console.log)
  const place = words.includes('--out') ? words[words.indexOf('--out') + 1] : join(root, 'out')
  if (place === undefined) return complain('Name a folder after --out.')
  const work = mkdtempSync(join(tmpdir(), 'coatwright-package-'))
  try {
    const folder = await makeFolder({ packager, work, place, platform, runtime: electron.folder })
    await setFuses(fuses, folder, platform)
    console.log(`The program lies in ${folder}`)
    if (!words.includes('--no-archive')) console.log(`and as an archive in ${makeArchive(folder, platform)}`)
    return folder
  } finally {
    rmSync(work, { recursive: true, force: true })
  }
}

function complain(sentence) {
  console.error(sentence)
  process.exitCode = 1
  return null
}

async function makeFolder({ packager, work, place, platform, runtime }) {
  const version = readFileSync(join(runtime, 'version'), 'utf8').trim().replace(/^v/, '')
  const [folder] = await packager({
    dir: gather(join(work, 'program'), platform),
    out: place,
    tmpdir: join(work, 'packager'),
    overwrite: true,
    quiet: true,
    name: 'Coatwright',
    executableName: 'coatwright',
    appBundleId: 'invalid.coatwright.desktop',
    platform,
    arch: process.arch,
    electronVersion: version,
    electronZipDir: emptyZips(join(work, 'zips'), version, platform),
    afterExtract: [({ buildPath }) => copyRuntime(runtime, buildPath)],
    asar: { unpack: '**/*.node' },
    prune: false,
  })
  // Made as a temporary folder, it would be closed to everybody else on the machine it is unpacked on.
  chmodSync(folder, 0o755)
  nameElectronLicence(folder)
  writePackageLicences(join(folder, 'LICENSES.packages.md'))
  return folder
}

/** What the program needs on a user's machine, in a folder as it lies in the checkout. */
function gather(place, platform) {
  const sqlite = 'node_modules/better-sqlite3'
  const needed = [
    ...targets.map((name) => relative(root, dirname(outputOf(name)))),
    'migrations',
    'demo-data/old-house.json',
    ...['package.json', 'LICENSE', 'lib', `prebuilds/${platform}-${process.arch}.node`].map(
      (file) => `${sqlite}/${file}`,
    ),
  ]
  for (const path of needed) cpSync(join(root, path), join(place, path), { recursive: true })
  const { name, version, description, license, main } = readPackage()
  const about = { name, productName: 'Coatwright', version, description, license, private: true, main }
  writeFileSync(join(place, 'package.json'), JSON.stringify(about, null, 2))
  return place
}

function readPackage() {
  return JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'))
}

/**
 * The packager unpacks a zip of Electron, which it would fetch a second time. It is given one with nothing in it, and the folder that
 * `npm start` uses is copied instead.
 */
function emptyZips(folder, version, platform) {
  mkdirSync(folder, { recursive: true })
  const endOfDirectory = Buffer.alloc(22)
  endOfDirectory.writeUInt32LE(0x06054b50)
  writeFileSync(join(folder, `electron-v${version}-${platform}-${process.arch}.zip`), endOfDirectory)
  return folder
}

/** Without the program that stands in a runtime to start others. */
function copyRuntime(runtime, place) {
  const starter = join('resources', 'app')
  cpSync(runtime, place, {
    recursive: true,
    verbatimSymlinks: true,
    filter: (path) => !`${relative(runtime, path)}${sep}`.startsWith(`${starter}${sep}`),
  })
}

/** The runtime's own licence gets a name that says what it is for. */
function nameElectronLicence(folder) {
  const plain = join(folder, 'LICENSE')
  if (existsSync(plain)) renameSync(plain, join(folder, 'LICENSE.electron.txt'))
}

/** The licences of all packages that were built into the program, and of the one that lies beside it. */
function writePackageLicences(path) {
  writeFileSync(path, '')
  for (const name of targets) {
    const file = join(dirname(outputOf(name)), licenceFile)
    if (existsSync(file)) appendFileSync(path, readFileSync(file))
  }
  const sqlite = readFileSync(join(root, 'node_modules', 'better-sqlite3', 'LICENSE'))
  appendFileSync(path, Buffer.concat([Buffer.from('\n## better-sqlite3\n\n'), sqlite]))
}

/**
 * What the binary does beyond starting this program is switched off in the binary itself. Chromium checks the archive's checksum on
 * macOS and Windows only.
 */
export function wantedFuses(platform) {
  return {
    RunAsNode: false,
    EnableCookieEncryption: true,
    EnableNodeOptionsEnvironmentVariable: false,
    EnableNodeCliInspectArguments: false,
    EnableEmbeddedAsarIntegrityValidation: platform !== 'linux',
    OnlyLoadAppFromAsar: true,
    LoadBrowserProcessSpecificV8Snapshot: false,
    GrantFileProtocolExtraPrivileges: false,
  }
}

/** A runtime older than a fuse does not have it; that is said. */
async function setFuses({ flipFuses, getCurrentFuseWire, FuseVersion, FuseV1Options }, folder, platform) {
  const file = join(folder, { darwin: 'Coatwright.app', win32: 'coatwright.exe' }[platform] ?? 'coatwright')
  const there = await getCurrentFuseWire(file)
  const wanted = Object.entries(wantedFuses(platform))
  const missing = wanted.filter(([name]) => !(FuseV1Options[name] in there)).map(([name]) => name)
  if (missing.length > 0) console.log(`This Electron has no fuse named ${missing.join(', ')}.`)
  const known = wanted.filter(([name]) => !missing.includes(name))
  await flipFuses(file, {
    version: FuseVersion.V1,
    // Writing into the binary breaks the signature without which macOS starts nothing on Apple silicon.
    resetAdHocDarwinSignature: platform === 'darwin',
    ...Object.fromEntries(known.map(([name, value]) => [FuseV1Options[name], value])),
  })
}

/** Which fuses of a binary are on, by name, as they stand in it. */
export async function readFuses(file) {
  const { getCurrentFuseWire, FuseV1Options, FuseState } = await import('@electron/fuses')
  const there = await getCurrentFuseWire(file)
  const names = Object.keys(FuseV1Options).filter((name) => FuseV1Options[name] in there)
  return Object.fromEntries(names.map((name) => [name, there[FuseV1Options[name]] === FuseState.ENABLE]))
}

/** By the archiver that every one of these systems has; answers where the archive lies. */
function makeArchive(folder, platform) {
  const { version } = readPackage()
  const base = join(dirname(folder), `coatwright-${version}-${platform}-${process.arch}`)
  const archive = platform === 'linux' ? `${base}.tar.gz` : `${base}.zip`
  const commands = {
    linux: ['tar', '-czf', archive, '-C', dirname(folder), basename(folder)],
    darwin: ['ditto', '-c', '-k', '--keepParent', folder, archive],
    win32: ['tar', '-a', '-c', '-f', archive, '-C', dirname(folder), basename(folder)],
  }
  const [program, ...words] = commands[platform] ?? commands.linux
  rmSync(archive, { force: true })
  const made = spawnSync(program, words, { stdio: ['ignore', 'inherit', 'inherit'] })
  if (made.status !== 0) throw new Error(`${program} could not make ${archive}`)
  return archive
}
