import { isTyping, keyName } from '../parts/key-names.ts'
import { goToRoom, recordUsualAt, soundAndNext } from './walk-actions.ts'

/** Keys of the walk, by their names in the list of keys (app/help/key-list.ts). */
export const walkKeys: Readonly<Record<string, () => void>> = {
  ...Object.fromEntries([1, 2, 3, 4, 5, 6].map((place) => [`${place}`, () => recordUsualAt(place - 1)])),
  S: soundAndNext,
  N: () => goToRoom(1),
  P: () => goToRoom(-1),
}

/** Answers how to stop listening. The list of surfaces would take letters for its own, so the walk hears them first. */
export function listenForWalkKeys(): () => void {
  window.addEventListener('keydown', onKey, true)
  return () => window.removeEventListener('keydown', onKey, true)
}

function onKey(event: KeyboardEvent): void {
  if (isTyping(event.target) || isElsewhere(event.target)) return
  const name = keyName(event)
  const action = Object.hasOwn(walkKeys, name) ? walkKeys[name] : undefined
  if (action === undefined) return
  event.preventDefault()
  event.stopPropagation()
  action()
}

/** Letters in an open list or on its button choose in it; what lies over the page has keys of its own. */
function isElsewhere(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('.choice, .choice-list, [role="dialog"]') !== null
}
