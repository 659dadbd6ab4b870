import { jobStore, stations, viewStore } from '../state/app.ts'

/** Keys that work everywhere: Alt+1 to Alt+7 for the stations, Alt+J for the job sheet, undo and redo outside of text. Answers how to stop listening. */
export function listenForKeys(): () => void {
  window.addEventListener('keydown', onKey)
  return () => window.removeEventListener('keydown', onKey)
}

function onKey(event: KeyboardEvent): void {
  if (event.altKey && !event.ctrlKey && !event.metaKey) {
    if (event.code === 'KeyJ' && jobStore.store.getState().job !== null) {
      event.preventDefault()
      viewStore.setState({ jobSheet: 'open' })
      return
    }
    const station = stations[Number(event.code.replace('Digit', '')) - 1]
    if (station === undefined || jobStore.store.getState().job === null) return
    event.preventDefault()
    viewStore.setState({ station })
    return
  }
  if (!(event.ctrlKey || event.metaKey) || isTyping(event.target)) return
  const key = event.key.toLowerCase()
  if (key === 'z' && !event.shiftKey) take(event, jobStore.undo)
  if (key === 'y' || (key === 'z' && event.shiftKey)) take(event, jobStore.redo)
}

function take(event: KeyboardEvent, action: () => void): void {
  event.preventDefault()
  action()
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
