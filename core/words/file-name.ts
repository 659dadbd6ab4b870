/** Letters, digits and single hyphens, at most `most` of them, so that the name is good on every file system; empty where there is none. */
export function fileNameWords(title: string, most = 60): string {
  return title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, most)
}
