// Looks for Electron's binary without loading the electron package: loading it starts a download.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { root } from './builder.mjs'

/** Longest wait for the download site to say whether it has the binary. */
const askingLimit = 4000

/**
 * The desktop program's binary, fetched where it can be.
 *
 * @param folder of the electron package
 * @returns `{ binary, folder }` with the folder of the whole runtime, or `{ reason }` in words that finish the sentence "Starting in
 *   the browser: ..."
 */
export async function findElectron(environment, platform, say, folder = electronFolder()) {
  if (platform === 'linux' && !environment.DISPLAY && !environment.WAYLAND_DISPLAY) {
    return { reason: 'there is no display for a desktop window' }
  }
  return fetchElectron(environment, platform, say, folder)
}

/** As `findElectron`, also where no window could be shown. */
export async function fetchElectron(environment, platform, say, folder = electronFolder()) {
  if (folder === null) return { reason: 'the electron package is not installed' }
  const there = installedBinary(folder, environment, platform)
  if (there !== null) return there
  if (environment.ELECTRON_OVERRIDE_DIST_PATH) {
    return { reason: `there is no Electron in ${environment.ELECTRON_OVERRIDE_DIST_PATH}` }
  }
  if (!(await siteHasIt(downloadAddress(folder, environment, platform)))) {
    return { reason: 'Electron is not here yet and its download site cannot be reached' }
  }
  say('Fetching Electron once (about 120 MB) ...')
  spawnSync(process.execPath, [join(folder, 'install.js')], { stdio: 'inherit' })
  return installedBinary(folder, environment, platform) ?? { reason: 'Electron could not be fetched' }
}

function electronFolder() {
  try {
    return dirname(createRequire(join(root, 'package.json')).resolve('electron/package.json'))
  } catch {
    return null
  }
}

/** As the electron package itself looks: path.txt names the file inside dist, dist/version must be the package's own version. */
export function installedBinary(folder, environment, platform) {
  const file = readIfThere(join(folder, 'path.txt')) ?? usualFile(platform)
  if (environment.ELECTRON_OVERRIDE_DIST_PATH) {
    const runtime = environment.ELECTRON_OVERRIDE_DIST_PATH
    const binary = join(runtime, file)
    return existsSync(binary) ? { binary, folder: runtime } : null
  }
  const runtime = join(folder, 'dist')
  const version = readIfThere(join(runtime, 'version'))?.replace(/^v/, '').trim()
  const binary = join(runtime, file)
  return version === packageVersion(folder) && existsSync(binary) ? { binary, folder: runtime } : null
}

function readIfThere(path) {
  return existsSync(path) ? readFileSync(path, 'utf8') : undefined
}

function packageVersion(folder) {
  return JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')).version
}

function usualFile(platform) {
  if (platform === 'darwin') return 'Electron.app/Contents/MacOS/Electron'
  return platform === 'win32' ? 'electron.exe' : 'electron'
}

/** Where the package's installer would fetch from; ELECTRON_MIRROR moves it, as it moves the installer. */
function downloadAddress(folder, environment, platform) {
  const site =
    environment.ELECTRON_MIRROR ??
    environment.npm_config_electron_mirror ??
    'https://github.com/electron/electron/releases/download/'
  const version = packageVersion(folder)
  return `${site}v${version}/electron-v${version}-${platform}-${process.arch}.zip`
}

async function siteHasIt(address) {
  try {
    const answer = await fetch(address, { method: 'HEAD', signal: AbortSignal.timeout(askingLimit) })
    return answer.ok
  } catch {
    return false
  }
}
