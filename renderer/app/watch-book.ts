import { ask } from '../bridge/client.ts'
import { jobStore } from '../state/app.ts'

/** How often the book is asked for its revision of the open job while the page is looked at (ms). */
const betweenLooks = 4000

/**
 * Hears of edits made in another window: from that window itself where it is one of the same browser, by asking when this window
 * is turned to, and now and then. Answers how to stop.
 */
export function watchBook(): () => void {
  const channel = new BroadcastChannel('coatwright')
  const look = () => void lookIntoBook()
  const timer = window.setInterval(() => {
    if (document.visibilityState === 'visible') look()
  }, betweenLooks)
  channel.onmessage = (event: MessageEvent<string>) => {
    if (event.data === jobStore.store.getState().jobKey) look()
  }
  const stopTelling = jobStore.store.subscribe((state, before) => {
    const isNewlyStored = state.stored === 'stored' && before.stored === 'storing'
    if (isNewlyStored && state.jobKey !== null) channel.postMessage(state.jobKey)
  })
  window.addEventListener('focus', look)
  window.addEventListener('online', jobStore.storeNow)
  return () => {
    window.clearInterval(timer)
    channel.close()
    stopTelling()
    window.removeEventListener('focus', look)
    window.removeEventListener('online', jobStore.storeNow)
  }
}

async function lookIntoBook(): Promise<void> {
  const { jobKey, stored } = jobStore.store.getState()
  if (jobKey === null || stored === 'storing' || stored === 'gone') return
  const answer = await ask('jobRevision', { jobKey })
  if (jobStore.store.getState().jobKey !== jobKey) return
  if (answer.ok) jobStore.heard(answer.value.revision)
  else if (answer.problem.kind === 'notFound') jobStore.takenOut()
}
