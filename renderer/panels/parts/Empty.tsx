import type { ReactNode } from 'react'

/** What a station says while there is nothing to show: what belongs here and how to get it. */
export function Empty(props: { readonly title: string; readonly children: ReactNode }) {
  return (
    <div className="empty">
      <h2>{props.title}</h2>
      <div className="empty-words">{props.children}</div>
    </div>
  )
}
