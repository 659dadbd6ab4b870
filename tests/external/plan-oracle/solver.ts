import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { Worker } from 'node:worker_threads'

/** What a model is filled in with; sets as `{ set: [...] }`, as the solver's JSON has them. */
export type ModelData = Readonly<Record<string, unknown>>

export interface Solved {
  /** `open`: the time was up; the solution is the best by then. */
  readonly status: 'proved' | 'impossible' | 'open'
  readonly solution: Readonly<Record<string, unknown>> | null
  readonly seconds: number
}

interface Message {
  readonly type: string
  readonly output?: { readonly json: Readonly<Record<string, unknown>> }
  readonly status?: string
  readonly message?: string
  readonly code?: number
}

const folder = dirname(createRequire(import.meta.url).resolve('minizinc'))

/**
 * The best solution of a model that minimizes, by Chuffed. In a worker of its own: the solver keeps state from one run to the next.
 * Throws where the solver cannot be loaded or does not take the model.
 */
export function solve(model: string, data: ModelData, seconds: number): Promise<Solved> {
  const begin = performance.now()
  const worker = new Worker(new URL('./solver-worker.mjs', import.meta.url), { workerData: { folder } })
  let solution: Solved['solution'] = null
  let status: Solved['status'] = 'open'
  const problems: string[] = []
  return new Promise<Solved>((resolve, reject) => {
    const timer = setTimeout(finish, 1000 * seconds)
    function finish(): void {
      clearTimeout(timer)
      void worker.terminate()
      if (problems.length > 0) reject(new Error(problems.join('\n')))
      else resolve({ status, solution, seconds: (performance.now() - begin) / 1000 })
    }
    worker.on('error', (error) => {
      problems.push(String(error))
      finish()
    })
    worker.on('message', ({ type, output, status: said, message, code }: Message) => {
      if (type === 'solution') solution = output?.json ?? null
      else if (type === 'status') status = statusOf(said)
      else if (type === 'error') problems.push(message ?? 'the solver does not take the model')
      else if (type === 'exit') {
        if (code !== 0 && problems.length === 0) problems.push(`the solver left with ${code}`)
        finish()
      }
    })
    worker.once('message', () => worker.postMessage(requestOf(model, data)))
    worker.postMessage({ wasmURL: join(folder, 'minizinc.wasm'), dataURL: join(folder, 'minizinc.data') })
  })
}

function requestOf(model: string, data: ModelData): unknown {
  return {
    jsonStream: true,
    files: { 'model.mzn': model, 'data.json': JSON.stringify(data) },
    args: ['--solver', 'chuffed', '-f', '-i', '--output-mode', 'json', 'model.mzn', 'data.json'],
  }
}

function statusOf(status: string | undefined): Solved['status'] {
  if (status === 'OPTIMAL_SOLUTION') return 'proved'
  return status === 'UNSATISFIABLE' ? 'impossible' : 'open'
}
