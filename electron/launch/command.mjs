// The headless command: builds it where it is stale, then runs it in this process.
import { pathToFileURL } from 'node:url'
import { buildStale, outputOf, root } from './builder.mjs'

export async function runPlan(words) {
  await buildStale(['headless'], console.error)
  const { runHeadless } = await import(pathToFileURL(outputOf('headless')).href)
  process.exitCode = await runHeadless(words, { root, say: console.log, complain: console.error })
}
