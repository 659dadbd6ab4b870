import type { Page } from 'playwright-core'
import type { Answer, Argument, RequestName } from '../../core/contract/requests.ts'
import type { Job } from '../../core/project/job.ts'
import type { Outcome } from '../../core/project/problem.ts'
import { granted } from '../storage/books.ts'

/** Asks the host from inside the page, past everything the page itself shows. */
export async function askFrom<Name extends RequestName>(
  page: Page,
  name: Name,
  argument: Argument<Name>,
): Promise<Outcome<Answer<Name>>> {
  const answer = await page.evaluate(
    async ([request, words]) => {
      if ('coatwright' in window) {
        const desktop = window.coatwright as { ask: (name: string, argument: unknown) => Promise<unknown> }
        return desktop.ask(request as string, words)
      }
      // The page exchanges its code first.
      while (location.hash.includes('code=') || sessionStorage.getItem('coatwright-token') === null) {
        await new Promise((resolve) => setTimeout(resolve, 20))
      }
      const token = sessionStorage.getItem('coatwright-token')
      const heard = await fetch(`/ask/${request}`, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', Authorization: `Bearer ${token}` },
        body: JSON.stringify(words),
      })
      return heard.json()
    },
    [name, argument] as readonly unknown[],
  )
  return answer as Outcome<Answer<Name>>
}

/** The first job of the book, as it is stored. */
export async function storedJob(page: Page): Promise<Job> {
  const [first] = granted(await askFrom(page, 'listJobs', {}))
  return granted(await askFrom(page, 'openJob', { jobKey: first?.jobKey ?? '' })).job
}
