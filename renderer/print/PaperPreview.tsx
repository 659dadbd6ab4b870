import type { Ref } from 'react'

interface PaperPreviewProps {
  /** A whole document as `workOrderHtml` makes it. */
  readonly html: string
  readonly title: string
  readonly ref?: Ref<HTMLIFrameElement>
  readonly onLoad?: () => void
}

/** Shows the very document that is printed and saved. No script runs in it; same origin only lets `printPreview` reach it. */
export function PaperPreview({ html, title, ref, onLoad }: PaperPreviewProps) {
  return (
    <iframe
      ref={ref ?? null}
      title={title}
      srcDoc={html}
      onLoad={onLoad}
      sandbox="allow-same-origin allow-modals"
      style={{
        width: '100%',
        height: '100%',
        border: '1px solid var(--line)',
        background: 'var(--paper-sunk)',
      }}
    />
  )
}

/** Opens the browser's own print dialog on the shown document; for hosts that cannot print by themselves. */
export function printPreview(frame: HTMLIFrameElement): void {
  frame.contentWindow?.focus()
  frame.contentWindow?.print()
}
