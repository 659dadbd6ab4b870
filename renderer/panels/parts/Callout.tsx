import type { ReactNode } from 'react'

type CalloutKind = 'stop' | 'wait' | 'note' | 'done'

const marks: Readonly<Record<CalloutKind, string>> = { stop: '!', wait: '◷', note: 'i', done: '✓' }
const spoken: Readonly<Record<CalloutKind, string>> = {
  stop: 'Stop',
  wait: 'Wait',
  note: 'Note',
  done: 'Done',
}

/** A caution that asks for nothing now: one small line, which opens for all of its words and what else is to be said. */
export function QuietNote(props: {
  readonly kind: CalloutKind
  readonly title: string
  readonly words: string
  /** Where it comes from. */
  readonly source?: string
  readonly children?: ReactNode
}) {
  return (
    <details className={`caution caution-${props.kind}`}>
      <summary>
        <span className="callout-mark" aria-hidden="true">
          {marks[props.kind]}
        </span>
        <span className="caution-words">
          <strong>{props.title}:</strong> {props.words}
        </span>
      </summary>
      <div className="caution-rest">
        {props.children}
        {props.source === undefined ? null : <span className="quiet">{props.source}</span>}
      </div>
    </details>
  )
}

/** A sentence that must be seen: its kind is told by a mark and a word, not by colour alone. */
export function Callout(props: {
  readonly kind: CalloutKind
  readonly title?: string
  readonly children: ReactNode
  /** Said at once by readers of the screen. */
  readonly isLive?: boolean
}) {
  return (
    <div className={`callout callout-${props.kind}`} {...(props.isLive ? { role: 'status' } : {})}>
      <span className="callout-mark" aria-hidden="true">
        {marks[props.kind]}
      </span>
      <div>
        <strong className="callout-title">{props.title ?? spoken[props.kind]}</strong>
        <div>{props.children}</div>
      </div>
    </div>
  )
}
