import { ask } from '../../bridge/client.ts'
import { jobStore } from '../../state/app.ts'

export type Delivered =
  | { readonly kind: 'underWay' }
  | { readonly kind: 'written'; readonly path: string }
  | { readonly kind: 'handedToBrowser' }
  | { readonly kind: 'givenUp' }
  | { readonly kind: 'failed' }

/** Saves a plain file: by the host's own dialog where there is one, else as a download of the browser. */
export async function saveText(
  fileName: string,
  mediaType: string,
  text: string,
  isDesktop: boolean,
): Promise<Delivered> {
  if (!isDesktop) return download(fileName, new Blob([text], { type: `${mediaType};charset=utf-8` }))
  const answer = await ask('saveDocument', { fileName, mediaType, text })
  if (!answer.ok) return failed(answer.problem)
  return answer.value.path === null ? { kind: 'givenUp' } : { kind: 'written', path: answer.value.path }
}

export async function savePdf(fileName: string, html: string, paper: 'letter' | 'a4'): Promise<Delivered> {
  const answer = await ask('savePdf', { fileName, html, paper })
  if (!answer.ok) return failed(answer.problem)
  return answer.value.path === null ? { kind: 'givenUp' } : { kind: 'written', path: answer.value.path }
}

export async function printByHost(html: string, paper: 'letter' | 'a4'): Promise<Delivered> {
  const answer = await ask('printDocument', { html, paper })
  if (!answer.ok) return failed(answer.problem)
  return answer.value.printed ? { kind: 'handedToBrowser' } : { kind: 'givenUp' }
}

function failed(problem: Parameters<typeof jobStore.refuse>[0]): Delivered {
  jobStore.refuse(problem)
  return { kind: 'failed' }
}

function download(fileName: string, blob: Blob): Delivered {
  const link = document.createElement('a')
  link.href = URL.createObjectURL(blob)
  link.download = fileName
  link.click()
  // The browser reads the blob after the click; freed at once, some would save an empty file.
  window.setTimeout(() => URL.revokeObjectURL(link.href), 60_000)
  return { kind: 'handedToBrowser' }
}
