import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { readJobFile } from '../../core/project/job-file.ts'
import { fail } from '../../core/project/problem.ts'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { answerInstead, loseAnswers } from './host-answers.ts'
import { browserJourney, journey, type Program } from './hosts.ts'

const fullDisk = fail('storageFailed', 'The disk is full: the last edit was not stored.')

async function openKey(page: Page): Promise<string> {
  await page.getByTestId('house-figures').waitFor()
  return granted(await askFrom(page, 'listJobs', {}))[0]?.jobKey ?? ''
}

async function nameClient(page: Page, client: string): Promise<void> {
  await page.getByRole('button', { name: /^Job sheet/ }).click()
  await page.getByLabel('Client', { exact: true }).fill(client)
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Done', exact: true }).click()
}

async function clientInBook(page: Page, jobKey: string): Promise<string> {
  return granted(await askFrom(page, 'openJob', { jobKey })).job.header.client
}

journey(
  'an edit that cannot be stored is said, kept, tried again, and asked about before leaving',
  async (program) => {
    const { page } = program
    const jobKey = await openKey(page)
    const before = await clientInBook(page, jobKey)
    const between = await answerInstead(program, 'storeEdit', fullDisk)
    await nameClient(page, 'Not stored at first')
    const bar = page.getByRole('region', { name: 'Not stored' })
    await bar.getByText('The disk is full').waitFor()
    await page.locator('[data-stored="notStored"]').waitFor()
    expect(await clientInBook(page, jobKey)).toBe(before)

    const saved = await program.save('job-not-stored.json', () =>
      bar.getByRole('button', { name: 'Save a copy as a file' }).click(),
    )
    expect(granted(readJobFile(readFileSync(saved, 'utf8'))).header.client).toBe('Not stored at first')

    await page.getByRole('button', { name: 'Book of jobs' }).click()
    await page.getByRole('button', { name: 'Open a fresh demonstration house' }).click()
    const question = page.getByRole('alertdialog', { name: 'Not everything is stored' })
    await question.getByText('Job sheet changed').waitFor()
    await question.getByRole('button', { name: 'Store now' }).click()
    await question.getByText('The disk is full').waitFor()
    await question.getByRole('button', { name: 'Stay' }).click()
    await question.waitFor({ state: 'detached' })
    expect(granted(await askFrom(page, 'listJobs', {}))).toHaveLength(1)
    await page.keyboard.press('Escape')

    await between.takeAway()
    await bar.getByRole('button', { name: 'Try again now' }).click()
    await page.locator('[data-stored="stored"]').waitFor()
    await bar.waitFor({ state: 'detached' })
    expect(await clientInBook(page, jobKey)).toBe('Not stored at first')
    await page.reload()
    await page.getByText('Not stored at first').waitFor()
  },
)

browserJourney('an edit whose answer was lost is in the book once, and undo goes on', async (program) => {
  const { page } = program
  const jobKey = await openKey(page)
  const before = await clientInBook(page, jobKey)
  const between = await loseAnswers(program, 'storeEdit')
  await nameClient(page, 'Stored without a word')
  await page.locator('[data-stored="notStored"]').waitFor()
  expect(await clientInBook(page, jobKey)).toBe('Stored without a word')
  await between.takeAway()
  await page.locator('[data-stored="stored"]').waitFor()
  await page.getByRole('button', { name: 'Undo: Name the client' }).click()
  await page.locator('[data-stored="stored"]').waitFor()
  expect(await clientInBook(page, jobKey)).toBe(before)
})

browserJourney('text that is typed and not taken counts as not stored', async (program) => {
  const { page } = program
  await openKey(page)
  await page.getByRole('button', { name: 'Kitchen', exact: true }).click()
  const field = page.getByLabel('Name', { exact: true }).first()
  await field.fill('')
  await page.locator('[data-stored="typed"]').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByRole('button', { name: 'Open a fresh demonstration house' }).click()
  const question = page.getByRole('alertdialog', { name: 'Not everything is stored' })
  await question.getByText('Typed in “Name” and not entered').waitFor()
  await question.getByRole('button', { name: 'Leave without it' }).click()
  await question.waitFor({ state: 'detached' })
  await page.locator('[data-stored="stored"]').waitFor()
  expect(granted(await askFrom(page, 'listJobs', {}))).toHaveLength(2)
})

journey('a window with something unsent is not closed without a question', async (program) => {
  const { page } = program
  await openKey(page)
  const between = await answerInstead(program, 'storeEdit', fullDisk)
  await nameClient(page, 'Nearly lost')
  await page.locator('[data-stored="notStored"]').waitFor()
  const wasAsked = await triesToClose(program)
  expect(wasAsked).toBe(true)
  const question = page.getByRole('alertdialog', { name: 'Not everything is stored' })
  await question.getByText('Job sheet changed').waitFor()
  await between.takeAway()
  await question.getByRole('button', { name: 'Stay' }).click()
  await page.getByRole('button', { name: 'Try again now' }).click()
  await page.locator('[data-stored="stored"]').waitFor()
})

/** Closes the window, or in a browser, which asks in the same way then, loads the page anew; true when it stayed. */
async function triesToClose({ page, application }: Program): Promise<boolean> {
  if (application === null) {
    const asked = page.waitForEvent('dialog')
    void page.reload().catch(() => undefined)
    const dialog = await asked
    await dialog.dismiss()
    return dialog.type() === 'beforeunload'
  }
  await application.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.close())
  await page.waitForTimeout(300)
  return application.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length === 1)
}
