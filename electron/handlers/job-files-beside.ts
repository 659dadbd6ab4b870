import { existsSync } from 'node:fs'
import { Worker } from 'node:worker_threads'
import { type JobFiles, jobFilesHere, type ThreadAnswer, type ThreadRequest } from './job-files.ts'

interface Waiting {
  readonly resolve: (value: never) => void
  readonly reject: (error: Error) => void
}

/**
 * Job files read and written in a thread beside the host, begun with the first one, so that other requests are answered meanwhile. Without
 * the thread's script, or when the thread dies, the work is done here: slower for others, but done.
 */
export function jobFilesBeside(script: string): JobFiles {
  const waiting = new Map<number, Waiting>()
  let thread: Worker | null = null
  let lastId = 0
  let isUsable = existsSync(script)

  function begin(): Worker {
    const begun = new Worker(script)
    begun.unref()
    begun.on('message', ({ id, value, failure }: ThreadAnswer) => {
      const asked = waiting.get(id)
      waiting.delete(id)
      if (failure === undefined) asked?.resolve(value as never)
      else asked?.reject(new Error(failure))
    })
    begun.on('error', () => {
      isUsable = false
      for (const { reject } of waiting.values()) reject(new ThreadDied())
      waiting.clear()
    })
    return begun
  }

  async function askThread(name: keyof JobFiles, argument: unknown): Promise<unknown> {
    thread ??= begin()
    const id = ++lastId
    thread.ref()
    const answered = new Promise((resolve, reject) => waiting.set(id, { resolve, reject }))
    thread.postMessage({ id, name, argument: argument as never } satisfies ThreadRequest)
    try {
      return await answered
    } finally {
      if (waiting.size === 0) thread.unref()
    }
  }

  async function work(name: keyof JobFiles, argument: unknown): Promise<never> {
    const here = jobFilesHere[name] as (argument: unknown) => Promise<unknown>
    if (!isUsable) return (await here(argument)) as never
    try {
      return (await askThread(name, argument)) as never
    } catch (error) {
      if (error instanceof ThreadDied) return (await here(argument)) as never
      throw error
    }
  }

  return {
    read: (text) => work('read', text),
    write: (file) => work('write', file),
    readBodies: (bodies) => work('readBodies', bodies),
  }
}

class ThreadDied extends Error {}
