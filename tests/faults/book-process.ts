import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout as pause } from 'node:timers/promises'

/** Starts a process that works on a book (book-worker.ts). */
export function startWorker(words: readonly string[], options: { readonly uid?: number } = {}): ChildProcess {
  const script = join(import.meta.dirname, 'book-worker.ts')
  return spawn(process.execPath, ['--experimental-strip-types', '--no-warnings', script, ...words], {
    stdio: ['ignore', 'pipe', 'inherit'],
    ...options,
  })
}

/** Lets a worker say so many lines, kills it so many milliseconds later, and answers all lines it said. */
export async function killAfter(
  worker: ChildProcess,
  lines: number,
  delay: number,
): Promise<readonly string[]> {
  const said: string[] = []
  const ended = once(worker, 'exit')
  const reader = createInterface({ input: worker.stdout as NodeJS.ReadableStream })
  const enough = new Promise<void>((resolve) => {
    reader.on('line', (line) => {
      said.push(line)
      if (said.length >= lines) resolve()
    })
    reader.on('close', resolve)
  })
  await enough
  await pause(delay)
  worker.kill('SIGKILL')
  await ended
  return said
}

/** Numbers between 0 and 1 that are the same at every run (a linear congruence, Park and Miller 1988, multiplier 48271). */
export function seededNumbers(seed: number): () => number {
  let state = seed
  return () => {
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

/** So many rounds, times what COATWRIGHT_FAULT_ROUNDS says for whoever wants more. */
export function rounds(count: number): number {
  return count * Number(process.env.COATWRIGHT_FAULT_ROUNDS ?? 1)
}
