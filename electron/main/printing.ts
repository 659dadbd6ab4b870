import { BrowserWindow, type Session } from 'electron'
import type { Argument } from '../../core/contract/requests.ts'
import { withPrintAddress } from './print-session.ts'

type Paper = Argument<'savePdf'>['paper']

const pageSizes = { letter: 'Letter', a4: 'A4' } as const satisfies Record<Paper, string>

/** The document as a tagged PDF; a page size in its own print styles comes before `paper`. */
export function pdfOf(session: Session, html: string, paper: Paper): Promise<Buffer> {
  return onHiddenPage(session, html, (page) =>
    page.webContents.printToPDF({
      pageSize: pageSizes[paper],
      printBackground: true,
      preferCSSPageSize: true,
      generateTaggedPDF: true,
      generateDocumentOutline: true,
    }),
  )
}

/** Shows the system's print dialog; false where the user thought better of it. */
export function printOnPaper(session: Session, html: string, paper: Paper): Promise<boolean> {
  return onHiddenPage(
    session,
    html,
    (page) =>
      new Promise((resolve) => {
        page.webContents.print({ pageSize: pageSizes[paper], printBackground: true }, (done) => resolve(done))
      }),
  )
}

/** A window nobody sees, in which no script runs, in the session that reaches nothing. */
function onHiddenPage<Value>(
  session: Session,
  html: string,
  use: (page: BrowserWindow) => Promise<Value>,
): Promise<Value> {
  return withPrintAddress(html, async (address) => {
    const page = new BrowserWindow({
      show: false,
      webPreferences: {
        session,
        sandbox: true,
        contextIsolation: true,
        nodeIntegration: false,
        javascript: false,
      },
    })
    try {
      await page.loadURL(address)
      return await use(page)
    } finally {
      page.destroy()
    }
  })
}
