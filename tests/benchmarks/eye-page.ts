import type { CDPSession, Page } from 'playwright-core'

/** Milliseconds: from the press to the next painted frame, and the page's own work from the press until it rests. */
export interface Seen {
  readonly frame: number
  readonly work: number
}

/** Middle one of the values. */
export function median(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0
}

/** Time the page's own thread was busy since it was opened (ms); work in workers is not in it. */
export async function pageWork(session: CDPSession): Promise<number> {
  const { metrics } = await session.send('Performance.getMetrics')
  return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0)
}

/** Presses what the selector finds, as a click would, and waits until the frame after it is painted. */
export async function pressAndSee(page: Page, session: CDPSession, selector: string): Promise<Seen> {
  const before = await pageWork(session)
  const frame = await page.locator(selector).first().evaluate(pressed)
  await rested(page)
  return { frame, work: (await pageWork(session)) - before }
}

function pressed(element: Element): Promise<number> {
  const begun = performance.now()
  const painted = new Promise<number>((resolve) =>
    requestAnimationFrame(() => {
      const after = new MessageChannel()
      after.port1.onmessage = () => resolve(performance.now() - begun)
      after.port2.postMessage(null)
    }),
  )
  ;(element as HTMLElement).click()
  return painted
}

/** Until the page had nothing to do for a few frames in a row. */
export async function rested(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let quiet = 0; quiet < 6; ) {
      const begun = performance.now()
      await new Promise((done) => setTimeout(done, 20))
      quiet = performance.now() - begun < 30 ? quiet + 1 : 0
    }
  })
}

/** Collects the times between frames while something goes on (ms). */
export async function framesDuring(page: Page, doing: () => Promise<void>): Promise<readonly number[]> {
  await page.evaluate(() => {
    const times: number[] = []
    let last = performance.now()
    const next = (now: number) => {
      times.push(now - last)
      last = now
      if (document.body.dataset.frames === 'on') requestAnimationFrame(next)
    }
    document.body.dataset.frames = 'on'
    Object.assign(window, { frameTimes: times })
    requestAnimationFrame(next)
  })
  await doing()
  return page.evaluate(() => {
    delete document.body.dataset.frames
    return (window as unknown as { readonly frameTimes: readonly number[] }).frameTimes.slice(2)
  })
}
