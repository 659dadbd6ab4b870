/** Does work once the next frame is painted, or at once where the page is not shown; answers how to give it up. */
export function afterFrame(work: () => void): () => void {
  let timer = 0
  const soon = () => {
    timer = window.setTimeout(work)
  }
  let frame = 0
  if (document.visibilityState === 'hidden') soon()
  else frame = window.requestAnimationFrame(soon)
  return () => {
    window.cancelAnimationFrame(frame)
    window.clearTimeout(timer)
  }
}
