import { execFile } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, renameSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)

/** A Chromium that tests may start: where it lies and the libraries that lie beside it. */
export interface TestChromium {
  readonly executablePath: string
  readonly environment: Record<string, string>
}

/** The Chromium that comes with the packages, or the one COATWRIGHT_CHROMIUM names; in words why there is none. */
export async function findChromium(): Promise<TestChromium | string> {
  const named = process.env.COATWRIGHT_CHROMIUM
  if (named !== undefined) return { executablePath: named, environment: {} }
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    return 'the Chromium that comes with the packages is for Linux x64; name another one in COATWRIGHT_CHROMIUM'
  }
  const folder = await unpackChromium()
  return { executablePath: join(folder, 'chromium'), environment: await neededLibraries(folder) }
}

/**
 * Unpacked once per version, into a folder of its own that gets its name when it is whole: the package itself takes whatever it finds
 * in the temporary folder, of any version and half unpacked too.
 */
async function unpackChromium(): Promise<string> {
  const entry = createRequire(import.meta.url).resolve('@sparticuz/chromium')
  const place = join(tmpdir(), `coatwright-chromium-${versionOf(entry)}`)
  if (existsSync(place)) return place
  const draft = mkdtempSync(`${place}-`)
  const unpack = `import(${JSON.stringify(entry)}).then((it) => it.default.executablePath())`
  // The package unpacks its libraries only where it believes to be on that service.
  const environment = { ...process.env, TMPDIR: draft, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' }
  await run(process.execPath, ['--input-type=module', '-e', unpack], { env: environment })
  try {
    renameSync(draft, place)
  } catch (error) {
    // Another test file was faster.
    rmSync(draft, { recursive: true, force: true })
    if (!existsSync(place)) throw error
  }
  return place
}

function versionOf(entry: string): string {
  for (let folder = dirname(entry); ; folder = dirname(folder)) {
    const about = join(folder, 'package.json')
    if (existsSync(about)) return String(JSON.parse(readFileSync(about, 'utf8')).version)
  }
}

/** The libraries that came along are used only where the system lacks its own. */
async function neededLibraries(folder: string): Promise<Record<string, string>> {
  const { stdout } = await run('ldd', [join(folder, 'chromium')])
  return stdout.includes('not found') ? { LD_LIBRARY_PATH: join(folder, 'al2023', 'lib') } : {}
}
