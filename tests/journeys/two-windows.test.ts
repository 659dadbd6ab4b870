import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { diffJobs } from '../../core/project/diff.ts'
import type { Job } from '../../core/project/job.ts'
import { fail } from '../../core/project/problem.ts'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { answerInstead } from './host-answers.ts'
import { browserJourney, journey, type Program } from './hosts.ts'

async function openKey(page: Page): Promise<string> {
  await page.getByTestId('house-figures').waitFor()
  return granted(await askFrom(page, 'listJobs', {}))[0]?.jobKey ?? ''
}

async function bookJob(page: Page, jobKey: string): Promise<Job> {
  return granted(await askFrom(page, 'openJob', { jobKey })).job
}

/** What another window would send, past the page that is looked at. */
async function editElsewhere(page: Page, jobKey: string, change: (job: Job) => Job): Promise<void> {
  const { job, revision } = granted(await askFrom(page, 'openJob', { jobKey }))
  granted(await askFrom(page, 'storeEdit', { jobKey, revision, diff: diffJobs(job, change(job)) }))
}

function withClient(client: string): (job: Job) => Job {
  return (job) => ({ ...job, header: { ...job.header, client } })
}

async function nameClient(page: Page, client: string): Promise<void> {
  await page.getByRole('button', { name: /^Job sheet/ }).click()
  await page.getByLabel('Client', { exact: true }).fill(client)
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Done', exact: true }).click()
}

/** The page hears nothing of other windows before it stores something itself. */
function deaf(program: Program) {
  return answerInstead(program, 'jobRevision', fail('hostFailed', 'Not now.'))
}

browserJourney(
  'what another window stores shows up by itself, without anything to press',
  async ({ page }) => {
    const jobKey = await openKey(page)
    await editElsewhere(page, jobKey, withClient('Named elsewhere'))
    await page.getByRole('contentinfo').getByText('Named elsewhere').waitFor()
    await page.getByText('with the edits of the other window').waitFor()
    await page.getByRole('button', { name: 'Add a floor' }).click()
    await page.locator('[data-stored="stored"]').waitFor()
    const job = await bookJob(page, jobKey)
    expect(job.header.client).toBe('Named elsewhere')
    expect(Object.keys(job.storeys)).toHaveLength(3)
  },
)

journey(
  'own edits are put on top of the other window’s, and what no longer fits can be copied',
  async (program) => {
    const { page } = program
    const jobKey = await openKey(page)
    const between = await deaf(program)
    await editElsewhere(page, jobKey, withClient('Named elsewhere'))
    await nameClient(page, 'Named here')
    const offer = page.getByRole('region', { name: 'Changed in another window' })
    await offer.getByText('Job sheet changed').waitFor()
    await page.getByRole('button', { name: 'Add a floor' }).click()
    await offer.getByText(/Floor “Floor 3” added/).waitFor()
    await page.locator('[data-stored="behind"]').waitFor()
    await between.takeAway()
    await offer.getByRole('button', { name: 'Put my edits on top' }).click()
    await page.locator('[data-stored="stored"]').waitFor()
    const job = await bookJob(page, jobKey)
    expect(job.header.client).toBe('Named elsewhere')
    expect(Object.keys(job.storeys)).toHaveLength(3)
    const leftOut = page.getByRole('region', { name: 'Edits left out' })
    await leftOut.getByText('(it was changed in the other window too)').waitFor()
    await leftOut.getByText('All they say').click()
    await leftOut.getByText('"Named here"').waitFor()
    await leftOut.getByRole('button', { name: 'Copy them' }).click()
    await page.getByRole('button', { name: /^First / }).click()
    await page.getByRole('button', { name: 'Kitchen', exact: true }).click()
    const note = page.getByLabel('Note', { exact: true }).first()
    await note.focus()
    await page.keyboard.press('Control+V')
    expect(await note.inputValue()).toContain('client: "The family on the corner" -> "Named here"')
    await page.keyboard.press('Escape')
    await leftOut.getByRole('button', { name: 'OK', exact: true }).click()
    await leftOut.waitFor({ state: 'detached' })
  },
)

browserJourney('two tabs on one job meet each other’s edits without a reload', async (program) => {
  const { page: left } = program
  const jobKey = await openKey(left)
  const right = await left
    .context()
    .browser()
    ?.newPage({ viewport: { width: 1366, height: 768 } })
  if (right === undefined) throw new Error('The page has no browser')
  await right.goto(await program.nextAddress())
  await right.getByTestId('house-figures').waitFor()
  await nameClient(left, 'From the left')
  await right.getByRole('contentinfo').getByText('From the left').waitFor()
  await nameClient(right, 'From the right')
  await left.getByRole('contentinfo').getByText('From the right').waitFor()
  await left.getByRole('button', { name: 'Kitchen', exact: true }).click()
  await left.getByLabel('Name', { exact: true }).first().fill('')
  await left.locator('[data-stored="typed"]').waitFor()
  await nameClient(right, 'While the left is typing')
  const offer = left.getByRole('region', { name: 'Changed in another window' })
  await offer.getByText('What you typed in a field here is not entered yet').waitFor()
  await left.getByLabel('Name', { exact: true }).first().fill('Big kitchen')
  await left.keyboard.press('Enter')
  await offer.getByText('Room “Big kitchen” changed').waitFor()
  await offer.getByRole('button', { name: 'Put my edits on top' }).click()
  await left.locator('[data-stored="stored"]').waitFor()
  await right.getByRole('button', { name: 'Big kitchen', exact: true }).waitFor()
  const job = await bookJob(left, jobKey)
  expect(job.header.client).toBe('While the left is typing')
  await right.close()
})
