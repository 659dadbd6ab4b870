/** Which of two texts comes first, by code unit: below 0 the first, above 0 the second. Dates and moments stand in their order. */
export function compareText(one: string, other: string): number {
  return one === other ? 0 : one < other ? -1 : 1
}

/** With a capital first letter. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** `liquidDeglosser` as `liquid deglosser`, `coat-trim` as `coat, trim`. */
export function plainWords(tag: string): string {
  return tag.replaceAll('-', ', ').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

/** The lines of a text that say something. */
export function linesOf(text: string): readonly string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
}

/** Words as a sentence lists them: `ceiling, walls and trim`. */
export function enumerated(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`
}
