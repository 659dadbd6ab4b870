import { copyFileSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { granted } from '../storage/books.ts'
import { askFrom } from './ask-host.ts'
import { browserJourney, journey, type Program } from './hosts.ts'

/** The size at which the page was looked at. */
const small = { width: 1366, height: 768 }

/** Keeps a picture where PICTURES names a folder, for whoever wants to look. */
async function look({ page, host }: Program, name: string): Promise<void> {
  const folder = process.env.PICTURES
  if (folder !== undefined) await page.screenshot({ path: join(folder, `${name}-${host}.png`) })
}

async function titlesIn(page: Page): Promise<readonly string[]> {
  return granted(await askFrom(page, 'listJobs', {}))
    .map(({ title }) => title)
    .sort()
}

async function openBackupPage(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByRole('button', { name: 'Go back to a backup' }).last().click()
  await page.getByRole('heading', { name: 'Go back to a backup' }).waitFor()
}

function backups(page: Page) {
  return page.getByRole('region', { name: 'Backups' }).getByRole('button')
}

browserJourney(
  'a job taken out of the book comes back alone, out of the backup made before',
  async (program) => {
    await program.page.getByRole('status').getByText('✓ Stored').waitFor()
    granted(await askFrom(program.page, 'createJob', { title: 'Mill lane', unitSystem: 'imperial' }))
    await program.restart()
    const { page } = program
    await page.setViewportSize(small)
    await page.getByRole('status').getByText('✓ Stored').waitFor()
    await page.getByRole('button', { name: 'Book of jobs' }).click()
    const book = page.getByRole('dialog', { name: 'Book of jobs' })
    await book.getByRole('button', { name: 'More for Mill lane' }).click()
    await page.getByRole('menuitem', { name: 'Delete from the book' }).click()
    await page.getByRole('button', { name: 'Delete it; the backup keeps it' }).click()
    await page.getByText('Mill lane').first().waitFor({ state: 'hidden' })
    await page.keyboard.press('Escape')
    const before = await titlesIn(page)
    expect(before).not.toContain('Mill lane')
    await openBackupPage(page)
    await backups(page).filter({ hasText: 'before a job was deleted' }).click()
    await page.getByRole('button', { name: 'Bring it back: Mill lane' }).waitFor()
    await look(program, 'inside')
    await page.getByRole('button', { name: 'Bring it back: Mill lane' }).click()
    await page.getByRole('heading', { name: 'Go back to a backup' }).waitFor({ state: 'hidden' })
    await page.getByRole('button', { name: /Job sheet.*Mill lane/ }).waitFor()
    expect(await titlesIn(page)).toEqual([...before, 'Mill lane'].sort())
  },
)

journey('the whole book goes back to a backup, and what it was is in the list', async (program) => {
  await program.page.getByRole('status').getByText('✓ Stored').waitFor()
  const first = await titlesIn(program.page)
  await program.restart()
  const { page } = program
  await page.setViewportSize(small)
  await page.getByRole('status').getByText('✓ Stored').waitFor()
  granted(await askFrom(page, 'createJob', { title: 'Mill lane', unitSystem: 'imperial' }))
  await openBackupPage(page)
  await backups(page).last().click()
  await page.getByRole('button', { name: 'Go back to this whole backup' }).click()
  await look(program, 'sure')
  await page.getByRole('button', { name: 'Go back to it now' }).click()
  await page.getByRole('heading', { name: 'Go back to a backup' }).waitFor({ state: 'hidden' })
  await page.getByRole('status').getByText('✓ Stored').waitFor()
  expect(await titlesIn(page)).toEqual(first)
  await openBackupPage(page)
  expect(await backups(page).filter({ hasText: 'set aside' }).first().textContent()).toContain('2 jobs')
})

journey('a damaged book starts the program all the same, on the page with the way back', async (program) => {
  await program.page.getByRole('status').getByText('✓ Stored').waitFor()
  const first = await titlesIn(program.page)
  await program.restart((path) => {
    const bytes = readFileSync(path)
    bytes.fill(0x5a, 4096 * 3, bytes.length - 4096)
    writeFileSync(path, bytes)
  })
  const { page } = program
  await page.setViewportSize(small)
  await page.getByRole('heading', { name: 'The book of jobs is damaged' }).waitFor()
  await page.getByText('Choose a backup to look inside it').waitFor()
  await look(program, 'damaged')
  await backups(page).first().click()
  await page.getByRole('button', { name: 'Go back to this whole backup' }).click()
  await page.getByRole('button', { name: 'Go back to it now' }).click()
  await page.getByRole('status').getByText('✓ Stored').waitFor()
  expect(await titlesIn(page)).toEqual(first)
})

browserJourney('a missing book asks, and is found again when it is put back', async (program) => {
  await program.page.getByRole('status').getByText('✓ Stored').waitFor()
  let moved = ''
  await program.restart((path) => {
    moved = `${path}.moved`
    copyFileSync(path, moved)
    rmSync(path)
  })
  const { page } = program
  await page.getByRole('heading', { name: 'The book of jobs is not there' }).waitFor()
  expect(await page.getByRole('button', { name: 'Begin a new, empty book' }).isVisible()).toBe(true)
  copyFileSync(moved, moved.replace(/\.moved$/, ''))
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.getByRole('status').getByText('✓ Stored').waitFor()
  expect(await titlesIn(page)).toHaveLength(1)
})

browserJourney(
  'a book exchanged under the program: the edit stays on the page and goes into the book that comes back',
  async (program) => {
    const { page } = program
    await page.setViewportSize(small)
    await page.getByRole('status').getByText('✓ Stored').waitFor()
    const { bookPath } = granted(await askFrom(page, 'hostFacts', {}))
    const [job] = granted(await askFrom(page, 'listJobs', {}))
    writeFileSync(bookPath, readFileSync(bookPath).subarray(0, 8192))
    await page.getByRole('button', { name: /Job sheet/ }).click()
    await page.getByLabel('Client', { exact: true }).fill('A late caller')
    await page.keyboard.press('Tab')
    await page.keyboard.press('Escape')
    await page.getByRole('heading', { name: 'The book was replaced while it was open' }).waitFor()
    await backups(page).filter({ hasText: 'what was stored when the file was replaced' }).click()
    await look(program, 'exchanged')
    await page.getByRole('button', { name: 'Go back to this whole backup' }).click()
    await page.getByRole('button', { name: 'Go back to it now' }).click()
    await page.getByRole('status').getByText('✓ Stored').waitFor()
    const opened = granted(await askFrom(page, 'openJob', { jobKey: job?.jobKey ?? '' }))
    expect(opened.job.header.client).toBe('A late caller')
  },
)
