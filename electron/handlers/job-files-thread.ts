/** Runs in a thread of its own beside the host, and does what takes long with whole jobs. */
import { parentPort } from 'node:worker_threads'
import { jobFilesHere, type ThreadAnswer, type ThreadRequest } from './job-files.ts'

parentPort?.on('message', async ({ id, name, argument }: ThreadRequest) => {
  parentPort?.postMessage(await answer(id, name, argument))
})

async function answer(id: number, name: ThreadRequest['name'], argument: never): Promise<ThreadAnswer> {
  try {
    return { id, value: await jobFilesHere[name](argument) }
  } catch (error) {
    return { id, failure: error instanceof Error ? error.message : String(error) }
  }
}
