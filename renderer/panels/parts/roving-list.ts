/**
 * A list of buttons that is one stop for Tab: Up and Down go from row to row, Left and Right within one, Home and End to its ends.
 * The buttons of a row lie in an element with `data-row`; fields in it stay as they are. Given as the `ref` of the list; answers how
 * to stop, as React asks of one.
 */
export function rovingList(list: HTMLElement | null): (() => void) | undefined {
  return list === null ? undefined : rove(list)
}

function rove(list: HTMLElement): () => void {
  let stop: HTMLElement | null = null
  function keepOneStop() {
    const buttons = buttonsIn(list)
    if (stop === null || !buttons.includes(stop)) stop = buttons[0] ?? null
    for (const button of buttons) button.tabIndex = button === stop ? 0 : -1
  }
  function onFocus({ target }: FocusEvent) {
    if (!(target instanceof HTMLElement) || !buttonsIn(list).includes(target)) return
    stop = target
    keepOneStop()
  }
  function onKey(event: KeyboardEvent) {
    const { target } = event
    if (!(target instanceof HTMLElement) || event.ctrlKey || event.altKey || event.metaKey) return
    const next = neighbor(buttonsIn(list), target, event.key)
    if (next === undefined) return
    event.preventDefault()
    next.focus()
  }
  keepOneStop()
  // Rows come, go and open without the list being drawn anew.
  const observer = new MutationObserver(keepOneStop)
  observer.observe(list, { childList: true, subtree: true })
  list.addEventListener('focusin', onFocus)
  list.addEventListener('keydown', onKey)
  return () => {
    observer.disconnect()
    list.removeEventListener('focusin', onFocus)
    list.removeEventListener('keydown', onKey)
  }
}

function buttonsIn(list: HTMLElement): readonly HTMLElement[] {
  return [...list.querySelectorAll<HTMLElement>('[data-row] button')]
}

/** Where a key goes from a button; undefined where it goes nowhere. */
function neighbor(buttons: readonly HTMLElement[], from: HTMLElement, key: string): HTMLElement | undefined {
  const rowOf = (button: HTMLElement | undefined) => button?.closest('[data-row]')
  const at = buttons.indexOf(from)
  if (at < 0) return undefined
  const row = buttons.filter((button) => rowOf(button) === rowOf(from))
  const place = row.indexOf(from)
  const rows = [...new Set(buttons.map(rowOf))]
  const line = rows.indexOf(rowOf(from))
  const inLine = (index: number) => {
    const there = index < 0 ? [] : buttons.filter((button) => rowOf(button) === rows[index])
    return there[Math.min(place, there.length - 1)]
  }
  switch (key) {
    case 'ArrowLeft':
      return row[place - 1]
    case 'ArrowRight':
      return row[place + 1]
    case 'ArrowUp':
      return inLine(line - 1)
    case 'ArrowDown':
      return inLine(line + 1)
    case 'Home':
      return inLine(0)
    case 'End':
      return inLine(rows.length - 1)
    default:
      return undefined
  }
}
