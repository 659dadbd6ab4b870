import type { RequestName } from '../../core/contract/requests.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'
import type { Program } from './hosts.ts'

/** Stands between the page and its host for one request, until it is taken away again. */
export interface Between {
  readonly takeAway: () => Promise<void>
}

/** The host gives this answer to the request, whatever it would have said, and does nothing. */
export function answerInstead(
  program: Program,
  name: RequestName,
  outcome: Outcome<unknown>,
): Promise<Between> {
  return program.application === null
    ? inBrowser(program, name, outcome, false)
    : inDesktop(program.application, name, outcome, false)
}

/** The host does what it is asked, and its answer is lost on the way. */
export function loseAnswers(program: Program, name: RequestName): Promise<Between> {
  const lost = fail('hostFailed', 'The host did not answer.')
  return program.application === null
    ? inBrowser(program, name, lost, true)
    : inDesktop(program.application, name, lost, true)
}

async function inBrowser(
  { page }: Program,
  name: RequestName,
  outcome: Outcome<unknown>,
  isDone: boolean,
): Promise<Between> {
  const address = `**/ask/${name}`
  await page.route(address, async (route) => {
    if (isDone) await route.fetch()
    await route.fulfill({ json: outcome })
  })
  return { takeAway: () => page.unroute(address) }
}

type Application = NonNullable<Program['application']>

async function inDesktop(
  application: Application,
  name: RequestName,
  outcome: Outcome<unknown>,
  isDone: boolean,
): Promise<Between> {
  const channel = `coatwright:${name}`
  await application.evaluate(
    ({ ipcMain }, between) => {
      type Listener = Parameters<typeof ipcMain.handle>[1]
      // The only place where Electron keeps who listens on a channel.
      const listeners = (ipcMain as unknown as { _invokeHandlers: Map<string, Listener> })._invokeHandlers
      const own = listeners.get(between.channel)
      if (own === undefined) throw new Error(`nobody listens on ${between.channel}`)
      Object.assign(globalThis, { [between.channel]: own })
      ipcMain.removeHandler(between.channel)
      ipcMain.handle(between.channel, async (event, argument) => {
        if (between.isDone) await own(event, argument)
        return between.outcome
      })
    },
    { channel, outcome, isDone },
  )
  return {
    takeAway: () =>
      application.evaluate(({ ipcMain }, channelAgain) => {
        ipcMain.removeHandler(channelAgain)
        ipcMain.handle(channelAgain, Reflect.get(globalThis, channelAgain))
      }, channel),
  }
}
