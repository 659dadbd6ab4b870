/** Keys that belong to a length being typed while a room is drawn. */
export function isTypedKey(key: string): boolean {
  return key === 'Backspace' || (key.length === 1 && /[\d.,/'"’”′″ xX×*a-z-]/i.test(key))
}

export function typedAfter(typed: string, key: string): string {
  return key === 'Backspace' ? typed.slice(0, -1) : typed + key
}
