import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { Worker } from 'node:worker_threads'

/** The answer of one run of MiniZinc 2.10 (npm minizinc 4.5.1, WASM build). */
export interface OracleAnswer {
  /** `proved`: best possible; `open`: a plan without proof; `none`: proved that there is none; `silent`: nothing in time. */
  readonly status: 'proved' | 'open' | 'none' | 'silent'
  /** The JSON text that the model's own output item wrote. */
  readonly output: Readonly<Record<string, unknown>>
}

const require = createRequire(import.meta.url)

/**
 * The package's worker script is made for a browser; these lines give it what it asks of one. The solver's state is global and
 * an instance answers wrongly when it is used twice, so every solve gets a thread of its own.
 */
const glue = `
const { parentPort, workerData } = require('node:worker_threads')
globalThis.postMessage = (message) => parentPort.postMessage(message)
globalThis.addEventListener = (_, listener) => parentPort.on('message', (data) => listener({ data }))
globalThis.require = require
globalThis.__dirname = workerData.folder
globalThis.__filename = workerData.folder + '/minizinc-worker.js'
;(0, eval)(workerData.script)
parentPort.postMessage({ type: 'loaded' })
`

interface ThreadMessage {
  readonly type: string
  readonly status?: string
  readonly output?: { readonly default?: string }
  readonly message?: string
}

/** `seconds` is the solver's own limit. */
export function solveModel(
  model: string,
  solver: 'chuffed' | 'highs',
  seconds: number,
): Promise<OracleAnswer> {
  const folder = dirname(require.resolve('minizinc'))
  const script = readFileSync(join(folder, 'minizinc-worker.js'), 'utf8')
  const worker = new Worker(glue, { eval: true, workerData: { folder, script }, stdout: true, stderr: true })
  const free = solver === 'chuffed' ? ['-f'] : []
  const args = ['--solver', solver, ...free, '--time-limit', `${seconds * 1000}`, '-i', 'model.mzn']
  return new Promise((resolve, reject) => {
    let answer: OracleAnswer = { status: 'silent', output: {} }
    worker.on('error', reject)
    worker.on('message', (message: ThreadMessage) => {
      if (message.type === 'loaded') {
        worker.postMessage({ wasmURL: join(folder, 'minizinc.wasm'), dataURL: join(folder, 'minizinc.data') })
      } else if (message.type === 'ready')
        worker.postMessage({ jsonStream: true, files: { 'model.mzn': model }, args })
      else if (message.type === 'solution') {
        answer = { status: 'open', output: JSON.parse(message.output?.default ?? '{}') }
      } else if (message.type === 'status' && message.status === 'OPTIMAL_SOLUTION')
        answer = { ...answer, status: 'proved' }
      else if (message.type === 'status' && message.status === 'UNSATISFIABLE')
        answer = { ...answer, status: 'none' }
      else if (message.type === 'error') reject(new Error(message.message))
      else if (message.type === 'exit') {
        resolve(answer)
        void worker.terminate()
      }
    })
  })
}
