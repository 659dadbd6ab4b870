import { fail, succeed } from '../../core/project/problem.ts'
import type { Host } from '../handlers/host.ts'

interface GatheringHost {
  readonly host: Host
  /** Every document saved so far, by file name. */
  readonly documents: ReadonlyMap<string, string>
}

/** A host without a window: documents are gathered, to be written together when all of them are there; nothing is put on paper. */
export function gatheringHost(version: string): GatheringHost {
  const documents = new Map<string, string>()
  const noPaper = () =>
    Promise.resolve(
      fail('notAllowed', 'The command line writes no paper; print work-order.html from a browser.'),
    )
  return {
    documents,
    host: {
      facts: { host: 'headless', version, writesPdf: false },
      saveDocument: async ({ fileName, text }) => {
        documents.set(fileName, text)
        return succeed({ path: fileName })
      },
      savePdf: noPaper,
      printDocument: noPaper,
    },
  }
}
