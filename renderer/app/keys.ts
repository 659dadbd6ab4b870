import { jobStore, stations, viewStore } from '../state/app.ts'
import { takeDrafts } from '../state/drafts.ts'

/** Keys that work everywhere, by their names in the list of keys (help/key-list.ts). */
export const everywhereKeys: Readonly<Record<string, () => void>> = {
  F1: () => viewStore.setState({ isHelpOpen: true }),
  ...Object.fromEntries(
    stations.map((station, index) => [`Alt+${index + 1}`, () => viewStore.setState({ station })]),
  ),
  'Alt+J': () => viewStore.setState({ jobSheet: 'open' }),
  'Ctrl+Z': jobStore.undo,
  'Ctrl+Shift+Z': jobStore.redo,
  'Ctrl+Y': jobStore.redo,
}

/** Answers how to stop listening. */
export function listenForKeys(): () => void {
  window.addEventListener('keydown', onKey)
  return () => window.removeEventListener('keydown', onKey)
}

function onKey(event: KeyboardEvent): void {
  const name = keyName(event)
  const action = Object.hasOwn(everywhereKeys, name) ? everywhereKeys[name] : undefined
  if (action === undefined) return
  // Undo belongs to the text while it is typed; stations and sheet belong to a job.
  if (name.startsWith('Ctrl+') && isTyping(event.target)) return
  if (name.startsWith('Alt+') && jobStore.store.getState().job === null) return
  // Keys lead away from a field without leaving it.
  if (name.startsWith('Alt+')) takeDrafts()
  event.preventDefault()
  action()
}

/**
 * The name of what is pressed: `Ctrl+Shift+Z`, `Alt+1`, `ArrowLeft`. Ctrl is also the Mac's Command. With Alt the place of the key
 * counts and not its sign, which Alt changes on some keyboards; without Ctrl a Shift is part of the sign.
 */
export function keyName(
  event: Pick<KeyboardEvent, 'key' | 'code' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>,
): string {
  const isControlled = event.ctrlKey || event.metaKey
  const held = [isControlled && 'Ctrl', event.altKey && 'Alt', isControlled && event.shiftKey && 'Shift']
  const sign = event.key.length === 1 ? event.key.toUpperCase() : event.key
  const base = event.altKey ? event.code.replace(/^(Digit|Key)/, '') : sign === ' ' ? 'Space' : sign
  return [...held.filter((name) => name !== false), base].join('+')
}

/** While text is being typed, undo belongs to the text. */
export function isTyping(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement &&
    (target.isContentEditable || target instanceof HTMLTextAreaElement || isTextInput(target))
  )
}

function isTextInput(target: HTMLElement): boolean {
  return (
    target instanceof HTMLInputElement &&
    !['checkbox', 'radio', 'range', 'button', 'color'].includes(target.type)
  )
}
