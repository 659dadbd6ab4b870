import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'

const root = join(import.meta.dirname, '..', '..')

/** Starts the loopback host as `npm start` does and answers the address it prints. */
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
  for await (const line of createInterface({ input: host.stdout })) {
    said.push(line)
    const address = /http:\S+#token=\S+/.exec(line)?.[0]
    if (address !== undefined) return { host, address, said }
  }
  throw new Error(`the loopback host ended without an address: ${said.join(' ')}`)
}

export async function endProcess(child: ChildProcess): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const ended = once(child, 'exit')
  child.kill('SIGTERM')
  await ended
}
