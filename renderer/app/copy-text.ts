/** Puts text on the clipboard the old way, which needs no permission; the desktop window gives none to its page. */
export function copyText(text: string): void {
  const place = document.createElement('textarea')
  place.value = text
  place.className = 'unseen'
  document.body.append(place)
  place.select()
  document.execCommand('copy')
  place.remove()
}
