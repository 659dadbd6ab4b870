import type { PDFDocumentLoadingTask, PDFDocumentProxy, PDFPageProxy } from 'pdfjs-dist'
import { lookAtPdf, mostPixels } from '../../core/pictures/picture-bounds.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import './older-runtime.ts'
import { pageTimer } from './timer.ts'

/** A PDF file that is open to be looked at, until it is closed. */
export interface PdfFile {
  readonly pages: number
  /** A page, counted from 1, as it is read, with so many pixels on its longer side; a problem goes on after the file's name. */
  readonly draw: (page: number, longest: number) => Promise<Outcome<HTMLCanvasElement>>
  readonly close: () => void
}

/** The reader is fetched and its worker started when the first PDF is chosen; most jobs have none. */
async function loadReader() {
  const reader = await import('pdfjs-dist/legacy/build/pdf.mjs')
  reader.GlobalWorkerOptions.workerPort ??= new Worker(new URL('./pdf-worker.ts', import.meta.url), {
    type: 'module',
  })
  return reader
}

/** Opens a file somebody chose. Nothing in it is run and nothing is fetched; what it holds for display is drawn. */
export async function openPdf(file: Blob): Promise<Outcome<PdfFile>> {
  const data = new Uint8Array(await file.arrayBuffer())
  const look = lookAtPdf(data)
  if (!look.ok) return look
  const reader = await loadReader()
  const loading = reader.getDocument({
    data,
    maxImageSize: mostPixels,
    verbosity: reader.VerbosityLevel.ERRORS,
    // The security policy allows no WebAssembly; the same decoders in plain script lie beside the page.
    useWasm: false,
    wasmUrl: new URL('pdf-decoders/', document.baseURI).href,
  })
  try {
    return succeed(fileOf(loading, await loading.promise))
  } catch (error) {
    void loading.destroy()
    return fail('notValid', error instanceof reader.PasswordException ? locked : damaged)
  }
}

const locked = 'It is locked with a password. Save a copy without one, and choose that.'
const damaged = 'It is damaged and cannot be read. Copy it again from where it came from.'
const pageDamaged = 'This page is damaged and cannot be drawn. Choose another, or save it as PNG or JPEG.'
const tooSlow = 'This page takes too long to draw. Save it as PNG or JPEG, and choose that.'
const empty = 'Nothing can be seen on this page.'

function fileOf(loading: PDFDocumentLoadingTask, document: PDFDocumentProxy): PdfFile {
  return {
    pages: document.numPages,
    close: () => void loading.destroy(),
    async draw(number, longest) {
      try {
        const canvas = await drawn(await document.getPage(number), longest)
        if (canvas === null) return fail('notValid', tooSlow)
        return isWhite(canvas) ? fail('notValid', empty) : succeed(canvas)
      } catch {
        return fail('notValid', pageDamaged)
      }
    },
  }
}

/** Milliseconds. A page of a plan takes a second or two. */
const patience = 60_000

/** Null where it takes too long. However large the page is said to be, the canvas is as large as asked. */
async function drawn(page: PDFPageProxy, longest: number): Promise<HTMLCanvasElement | null> {
  const { width, height } = page.getViewport({ scale: 1 })
  const viewport = page.getViewport({ scale: longest / Math.max(width, height) })
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(viewport.width))
  canvas.height = Math.max(1, Math.round(viewport.height))
  const drawing = page.render({ canvas, viewport })
  let isLate = false
  const callOff = pageTimer.after(patience, () => {
    isLate = true
    drawing.cancel()
  })
  try {
    await drawing.promise
    return canvas
  } catch (error) {
    if (isLate) return null
    throw error
  } finally {
    callOff()
    page.cleanup()
  }
}

function isWhite(canvas: HTMLCanvasElement): boolean {
  const pen = canvas.getContext('2d')
  if (pen === null) return true
  const { data } = pen.getImageData(0, 0, canvas.width, canvas.height)
  return new Uint32Array(data.buffer).every((pixel) => pixel === 0xffffffff)
}
