import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { runInThisContext } from 'node:vm'
import { parentPort, workerData } from 'node:worker_threads'

/**
 * The package's browser worker under Node: it finds the messages of a browser worker and the loader of a CommonJS module in the global
 * scope. `workerData.folder` holds its script, its binary and its library.
 */
const script = join(workerData.folder, 'minizinc-worker.js')
globalThis.require = createRequire(script)
globalThis.__dirname = dirname(script)
globalThis.postMessage = (message) => parentPort.postMessage(message)
globalThis.addEventListener = (name, listener) => {
  if (name === 'message') parentPort.on('message', (data) => listener({ data }))
}
runInThisContext(readFileSync(script, 'utf8'))
