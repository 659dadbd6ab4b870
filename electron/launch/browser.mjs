// Opens a page in a browser of this machine, where one is likely to be found and wanted.
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const linuxOpeners = ['xdg-open', 'firefox', 'chromium', 'chromium-browser', 'google-chrome']

/** The command that opens a page, or null where none is found or nobody is there to look. */
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

/** Starts `command` on a file. The file and not the address, because everybody on the machine can read what is started on what. */
export function openInBrowser([program, ...words], file) {
  const child = spawn(program, [...words, file], { stdio: 'ignore', detached: true })
  // Whether it opens is its own affair: the address stands in the terminal.
  child.on('error', () => {})
  child.unref()
}
