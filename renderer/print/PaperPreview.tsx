import { type Ref, useEffect, useImperativeHandle, useMemo, useRef } from 'react'
import type { PagedDocument } from '../../core/work-order/html.ts'
import { fillAll, fillNearest, isFilled, withPlaceholders } from './page-filling.ts'

interface PaperPreviewProps {
  /** A document as `pagedDocument` makes it, or the whole text of one that was kept. */
  readonly paper: PagedDocument | string
  readonly title: string
  readonly ref?: Ref<PreviewHandle>
  /** Every page is there, so that they can be counted and printed. */
  readonly onWhole?: (shown: Document) => void
}

export interface PreviewHandle {
  /** Opens the browser's own print dialog on the whole document; for hosts that cannot print by themselves. */
  readonly print: () => void
}

/** Around its sheets a document lies on the table of the page, which is dark in the dark scheme. */
function onTable(text: string): string {
  return text.replace('<html ', '<html style="background: none" ')
}

/** Milliseconds in which pages are made without a pause; they are laid out after. */
const atATime = 6

/**
 * Shows the very document that is printed and saved, its first pages at once and the others as they are looked at, the rest while
 * nothing else happens. No script runs in it; same origin only lets the page reach it.
 */
export function PaperPreview({ paper, title, ref, onWhole }: PaperPreviewProps) {
  const frame = useRef<HTMLIFrameElement>(null)
  const timer = useRef<number | undefined>(undefined)
  const text = useMemo(() => onTable(typeof paper === 'string' ? paper : withPlaceholders(paper)), [paper])
  // A document that gives way to another is not filled any further.
  useEffect(() => {
    if (text !== '') return () => window.clearTimeout(timer.current)
  }, [text])
  useImperativeHandle(
    ref,
    () => ({
      print: () => {
        const shown = frame.current?.contentDocument
        if (shown && typeof paper !== 'string') fillAll(shown, paper)
        frame.current?.contentWindow?.focus()
        frame.current?.contentWindow?.print()
      },
    }),
    [paper],
  )

  /** A few pages at a time, so that typing and scrolling go on between. */
  function goOn() {
    window.clearTimeout(timer.current)
    const shown = frame.current?.contentDocument
    if (!shown) return
    if (typeof paper === 'string' || isFilled(shown)) {
      onWhole?.(shown)
      return
    }
    fillNearest(shown, paper, atATime)
    timer.current = window.setTimeout(goOn, 0)
  }

  return (
    <iframe
      ref={frame}
      title={title}
      srcDoc={text}
      onLoad={goOn}
      sandbox="allow-same-origin allow-modals"
      style={{
        width: '100%',
        height: '100%',
        border: '1px solid var(--line)',
        background: 'var(--paper-sunk)',
        // Paper stays light, and what is printed with it.
        colorScheme: 'light',
      }}
    />
  )
}
