import { useEffect, useId, useRef } from 'react'
import { createStore } from 'zustand/vanilla'

/** Something typed or begun that is no action yet: text in a field, a form half filled in. */
interface Draft {
  /** What the field or form is called on the screen. */
  readonly label: string
  /** What was typed, to be shown and copied. */
  readonly text: string
  /** Makes an action of it; false where that cannot be, and then it stays. */
  readonly take: () => boolean
}

interface DraftState {
  /** By the place they are typed in. They count as not stored. */
  readonly drafts: ReadonlyMap<string, Draft>
  /** Whose field has gone before they could be taken; kept to be copied until dismissed. */
  readonly lost: readonly Draft[]
}

export const draftStore = createStore<DraftState>(() => ({ drafts: new Map(), lost: [] }))

export function putDraft(place: string, draft: Draft): void {
  draftStore.setState(({ drafts }) => ({ drafts: new Map(drafts).set(place, draft) }))
}

export function removeDraft(place: string): void {
  const { drafts } = draftStore.getState()
  if (!drafts.has(place)) return
  draftStore.setState({ drafts: new Map([...drafts].filter(([other]) => other !== place)) })
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

export function dismissLost(): void {
  draftStore.setState({ lost: [] })
}

function loseDraft(place: string): void {
  const draft = draftStore.getState().drafts.get(place)
  removeDraft(place)
  if (draft !== undefined) draftStore.setState(({ lost }) => ({ lost: [...lost, draft] }))
}

/**
 * Counts what stands in a field as typed and not yet taken, for as long as `draft` is not null. Call what it answers when the draft
 * was taken or given up on purpose; a field that goes before that leaves its text to be copied.
 */
export function useDraft(draft: Draft | null): () => void {
  const place = useId()
  const latest = useRef(draft)
  latest.current = draft
  const [label, text] = [draft?.label ?? null, draft?.text ?? null]
  useEffect(() => () => loseDraft(place), [place])
  useEffect(() => {
    if (label === null || text === null) removeDraft(place)
    else putDraft(place, { label, text, take: () => latest.current?.take() ?? true })
  }, [place, label, text])
  return () => removeDraft(place)
}
