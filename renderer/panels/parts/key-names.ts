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
