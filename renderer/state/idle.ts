/** Milliseconds a step of work may take; with less idle time left the next one waits. */
const longestStep = 5

/** Goes on with work from stop to stop while the page has nothing else to do, first of all to paint; answers how to give it up. */
export function whenIdle<Value>(work: Iterator<void, Value>, then: (value: Value) => void): () => void {
  const goOn = (left: () => number) => {
    do {
      const { done, value } = work.next()
      if (done) return then(value)
    } while (left() > longestStep)
    giveUp = wish(goOn)
  }
  const frame = window.requestAnimationFrame(() => {
    giveUp = wish(goOn)
  })
  let giveUp = () => window.cancelAnimationFrame(frame)
  return () => giveUp()
}

/** Not every browser tells when it is idle; there it is a moment later, and for a moment. */
function wish(work: (left: () => number) => void): () => void {
  if (window.requestIdleCallback === undefined) {
    const timer = window.setTimeout(() => {
      const end = performance.now() + 2 * longestStep
      work(() => end - performance.now())
    }, 50)
    return () => window.clearTimeout(timer)
  }
  const handle = window.requestIdleCallback((deadline) => work(() => deadline.timeRemaining()), {
    timeout: 1500,
  })
  return () => window.cancelIdleCallback(handle)
}
