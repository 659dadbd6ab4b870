import { useEffect, useId, useRef } from 'react'
import { createStore } from 'zustand/vanilla'

/** Something typed or begun that is no deed yet: text in a field, a form half filled in. */
export interface Draft {
  /** What the field or form is called on the screen. */
  readonly label: string
  /** What was typed, to be shown and copied. */
  readonly text: string
  /** Makes a deed of it; false where that cannot be, and then it stays. */
  readonly take: () => boolean
}

/** Drafts by the place they are typed in. They count as not stored. */
export const draftStore = createStore<{ readonly drafts: ReadonlyMap<string, Draft> }>(() => ({
  drafts: new Map(),
}))

export function putDraft(place: string, draft: Draft): void {
  draftStore.setState(({ drafts }) => ({ drafts: new Map(drafts).set(place, draft) }))
}

export function removeDraft(place: string): void {
  const { drafts } = draftStore.getState()
  if (drafts.has(place)) {
    draftStore.setState({ drafts: new Map([...drafts].filter(([other]) => other !== place)) })
  }
}

export function pendingDrafts(): readonly Draft[] {
  return [...draftStore.getState().drafts.values()]
}

/** Takes every draft that can be taken; true when none is left. */
export function takeDrafts(): boolean {
  for (const [place, draft] of draftStore.getState().drafts) if (draft.take()) removeDraft(place)
  return draftStore.getState().drafts.size === 0
}

/** The user leaves without them. */
export function dropDrafts(): void {
  draftStore.setState({ drafts: new Map() })
}

/** Hears of text whose field has gone before it could be taken. */
let hearLost: (draft: Draft) => void = () => undefined

export function listenForLostDrafts(hear: (draft: Draft) => void): void {
  hearLost = hear
}

/** Counts what stands in a field as typed and not yet taken, for as long as `draft` is not null. */
export function useDraft(draft: Draft | null): void {
  const place = useId()
  const latest = useRef(draft)
  latest.current = draft
  const isPending = draft !== null
  const text = draft?.text ?? ''
  const label = draft?.label ?? ''
  useEffect(() => {
    if (!isPending) return
    putDraft(place, { label, text, take: () => latest.current?.take() ?? true })
    return () => removeDraft(place)
  }, [place, isPending, label, text])
  useEffect(
    () => () => {
      // Taken down with its field while still standing there.
      if (latest.current !== null && latest.current.text !== '') hearLost(latest.current)
    },
    [],
  )
}
