import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

const root = join(import.meta.dirname, '..', '..')

/** Starts the loopback host as `npm start` does and answers the address it prints, which opens the program once. */
export async function startLoopback(
  environment: NodeJS.ProcessEnv,
  words: readonly string[] = ['--browser'],
): Promise<{ readonly host: ChildProcess; readonly address: string; readonly said: readonly string[] }> {
  const script = join(root, 'electron', 'launch', 'start.mjs')
  const host = spawn(process.execPath, [script, ...words], {
    cwd: root,
    env: environment,
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const said: string[] = []
  const lines = createInterface({ input: host.stdout })
  return new Promise((resolve, reject) => {
    // It goes on listening: whenever an address was used, the host shows a fresh one.
    lines.on('line', (line) => {
      said.push(line)
      const address = addressIn(line)
      if (address !== null) resolve({ host, address, said })
    })
    lines.on('close', () =>
      reject(new Error(`the loopback host ended without an address: ${said.join(' ')}`)),
    )
  })
}

/** The address in a line or page, with the code that opens the program once. */
export function addressIn(text: string): string | null {
  return /http:[^\s"]+#code=[\w-]+/.exec(text)?.[0] ?? null
}

/** Exchanges the code of an address, as the page does, and answers what the host says. */
export async function enter(
  address: string,
): Promise<{ readonly status: number; readonly token: string | null }> {
  const [pages, code] = address.split('#code=')
  const answer = await fetch(`${pages}enter`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ code }),
  })
  const heard = (await answer.json()) as { readonly value?: { readonly token: string } }
  return { status: answer.status, token: heard.value?.token ?? null }
}

export async function endProcess(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const ended = once(child, 'exit')
  child.kill('SIGTERM')
  await ended
}
