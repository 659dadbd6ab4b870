import { BrowserWindow } from 'electron'
import type { Argument } from '../../core/contract/requests.ts'
import { withPrintAddress } from './scheme.ts'

type Paper = Argument<'savePdf'>['paper']

const pageSizes = { letter: 'Letter', a4: 'A4' } as const satisfies Record<Paper, string>

/** The document as a tagged PDF; a page size in its own print styles comes before `paper`. */
export function pdfOf(html: string, paper: Paper): Promise<Buffer> {
  return onHiddenPage(html, (page) =>
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
export function printOnPaper(html: string, paper: Paper): Promise<boolean> {
  return onHiddenPage(
    html,
    (page) =>
      new Promise((resolve) => {
        page.webContents.print({ pageSize: pageSizes[paper], printBackground: true }, (done) => resolve(done))
      }),
  )
}

/** A window nobody sees, in which no script runs. */
function onHiddenPage<Value>(html: string, use: (page: BrowserWindow) => Promise<Value>): Promise<Value> {
  return withPrintAddress(html, async (address) => {
    const page = new BrowserWindow({
      show: false,
      webPreferences: { sandbox: true, contextIsolation: true, javascript: false },
    })
    try {
      await page.loadURL(address)
      return await use(page)
    } finally {
      page.destroy()
    }
  })
}
