import type { BrowserWindow, Session } from 'electron'
import { succeed } from '../../core/project/problem.ts'
import type { Host } from '../handlers/host.ts'
import { pdfOf, printOnPaper } from './printing.ts'
import { saveWhereAsked } from './saving.ts'

/**
 * Windows, dialogs and paper of the desktop. With `saveFolder` (tests) files go there without a dialog, and what would go to the
 * printer is written there as `printed.pdf`.
 */
export function desktopHost(
  window: BrowserWindow,
  print: Session,
  version: string,
  saveFolder: string | undefined,
): Host {
  return {
    facts: { host: 'desktop', version, writesPdf: true },
    saveDocument: ({ fileName, text }) => saveWhereAsked(window, saveFolder, fileName, async () => text),
    savePdf: ({ fileName, html, paper }) =>
      saveWhereAsked(window, saveFolder, fileName, () => pdfOf(print, html, paper)),
    printDocument: async ({ html, paper }) => {
      if (saveFolder === undefined) return succeed({ printed: await printOnPaper(print, html, paper) })
      const saved = await saveWhereAsked(window, saveFolder, 'printed.pdf', () => pdfOf(print, html, paper))
      return saved.ok ? succeed({ printed: true }) : saved
    },
  }
}
