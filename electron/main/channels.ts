import { type BrowserWindow, ipcMain } from 'electron'
import { type Handlers, requestNames } from '../../core/contract/requests.ts'
import { fail } from '../../core/project/problem.ts'
import { answerRequest } from '../handlers/answer.ts'
import { isOwnPage } from './guard.ts'

/** One channel per request; each asks who is calling before it looks at what is asked. */
export function serveChannels(handlers: Handlers, window: BrowserWindow): void {
  for (const name of requestNames) {
    ipcMain.removeHandler(`coatwright:${name}`)
    ipcMain.handle(`coatwright:${name}`, (event, argument: unknown) =>
      isOwnPage(event, window.webContents)
        ? answerRequest(handlers, name, argument)
        : fail('notAllowed', 'Only Coatwright’s own window may ask this.'),
    )
  }
}
