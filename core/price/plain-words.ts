/** `liquidDeglosser` as `liquid deglosser`, `coat-trim` as `coat, trim`. */
export function plainWords(tag: string): string {
  return tag.replaceAll('-', ', ').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}
