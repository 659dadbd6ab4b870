/** Does work once the next frame is painted, or at once where the page is not shown; answers how to give it up. */
export function afterFrame(work: () => void): () => void {
  let timer = 0
  const soon = () => {
    timer = window.setTimeout(work)
  }
  if (document.visibilityState === 'hidden') soon()
  const frame = document.visibilityState === 'hidden' ? 0 : window.requestAnimationFrame(soon)
  return () => {
    window.cancelAnimationFrame(frame)
    window.clearTimeout(timer)
  }
}
