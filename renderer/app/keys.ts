import { isTyping, keyName } from '../panels/parts/key-names.ts'
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
