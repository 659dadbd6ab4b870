import { keysOf } from '../../../core/lists/lists.ts'
import { fitStorey, handle, nudge } from '../../canvas/sketch-input.ts'
import { sketchStore, takeTool } from '../../canvas/sketch-store.ts'
import { toolWords } from '../../canvas/tools/tools.ts'
import { showTapeList } from '../../state/tape-list.ts'
import { isTyping, keyName } from '../parts/key-names.ts'
import { goToPickMany } from './many/PickMany.tsx'
import {
  copySelected,
  duplicateSelected,
  pasteCopied,
  removeSelected,
  selectAll,
  selectNextRoom,
} from './selection-actions.ts'
import { zoomBy } from './storey-view.ts'
import { repeatLastOpening } from './usual-room.ts'

/** Keys on the sheet, by their names in the list of keys (app/help/key-list.ts). Escape goes to the chosen tool. */
export const houseKeys: Readonly<Record<string, () => void>> = {
  // The table of words has every tool and nothing else.
  ...Object.fromEntries(
    keysOf(toolWords).map((name) => [toolWords[name].key.toUpperCase(), () => takeTool(name)]),
  ),
  Delete: removeSelected,
  Backspace: removeSelected,
  ArrowLeft: () => nudge(-1, 0),
  ArrowRight: () => nudge(1, 0),
  ArrowUp: () => nudge(0, -1),
  ArrowDown: () => nudge(0, 1),
  '+': () => zoomBy(1.25),
  '=': () => zoomBy(1.25),
  '-': () => zoomBy(0.8),
  '0': fitStorey,
  A: repeatLastOpening,
  L: () => showTapeList(true),
  M: goToPickMany,
  N: () => selectNextRoom(1),
  P: () => selectNextRoom(-1),
  'Ctrl+C': copySelected,
  'Ctrl+V': pasteCopied,
  'Ctrl+D': duplicateSelected,
  'Ctrl+A': selectAll,
}

/** Answers how to stop listening. */
export function listenForHouseKeys(): () => void {
  window.addEventListener('keydown', onKey)
  return () => window.removeEventListener('keydown', onKey)
}

function onKey(event: KeyboardEvent): void {
  if (isTyping(event.target) || isElsewhere(event.target)) return
  const { gesture } = sketchStore.getState()
  const isDrawing = gesture.kind === 'drawingRectangle' || gesture.kind === 'drawingOutline'
  const isControlled = event.ctrlKey || event.metaKey || event.altKey
  if (!isControlled && (isDrawing || event.key === 'Escape')) {
    event.preventDefault()
    handle({ kind: 'key', key: event.key })
    if (!isDrawing && sketchStore.getState().tool !== 'pick') takeTool('pick')
    return
  }
  const name = keyName(event)
  const action = Object.hasOwn(houseKeys, name) ? houseKeys[name] : undefined
  if (action === undefined) return
  event.preventDefault()
  action()
}

/** Keys in the fields beside the drawing belong to those; a name in the list of rooms is as good as the room on the sheet. */
function isElsewhere(target: EventTarget | null): boolean {
  return (
    target instanceof HTMLElement && target.closest('.inspector, [role="dialog"], [role="listbox"]') !== null
  )
}
