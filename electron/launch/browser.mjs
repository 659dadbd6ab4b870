// Opens an address in a browser of this machine, where one is likely to be found and wanted.
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const linuxOpeners = ['xdg-open', 'firefox', 'chromium', 'chromium-browser', 'google-chrome']

/** The command that opens an address, or null where none is found or nobody is there to look. */
export function browserCommand(environment, platform) {
  if (environment.CI || environment.COATWRIGHT_NO_BROWSER) return null
  if (platform === 'darwin') return ['open']
  if (platform === 'win32') return ['cmd', '/c', 'start', '""']
  if (!environment.DISPLAY && !environment.WAYLAND_DISPLAY) return null
  const opener = linuxOpeners.find((name) => isOnPath(name, environment))
  return opener === undefined ? null : [opener]
}

function isOnPath(name, environment) {
  return (environment.PATH ?? '')
    .split(delimiter)
    .some((folder) => folder !== '' && existsSync(join(folder, name)))
}

/** Answers whether a browser was asked to open the address; whether it does is its own affair. */
export function openBrowser(address, environment, platform) {
  const command = browserCommand(environment, platform)
  if (command === null) return false
  const [program, ...words] = command
  const child = spawn(program, [...words, address], { stdio: 'ignore', detached: true })
  child.on('error', () => {})
  child.unref()
  return true
}
