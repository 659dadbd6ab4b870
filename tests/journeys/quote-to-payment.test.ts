import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { browserJourney } from './hosts.ts'

async function startJob(page: Page): Promise<void> {
  await page.getByTestId('house-figures').waitFor()
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill('Elm Street')
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByLabel('Year built').fill('1995')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByLabel('A room by its size').fill("12' x 10'")
  await page.getByRole('button', { name: 'Add this room' }).click()
}

async function open(page: Page, station: string, tab?: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name: station }).click()
  if (tab !== undefined) await page.getByRole('tab', { name: tab }).click()
}

async function press(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name, exact: true }).click()
}

async function choose(page: Page, field: RegExp, option: string): Promise<void> {
  await page.getByRole('button', { name: field }).click()
  await page.getByRole('option', { name: option }).click()
}

/** The next invoice, and the payment of all that is due. */
async function invoiceAndPay(page: Page, number: number, step: string): Promise<void> {
  await press(page, 'Make the invoice')
  await page.getByRole('cell', { name: `Invoice ${number}: ${step}`, exact: true }).waitFor()
  await press(page, 'Write down the payment')
  await page.getByRole('row', { name: new RegExp(`Invoice ${number}: .* paid`) }).waitFor()
}

browserJourney(
  'a job goes from two options to the last payment, with a change order and a new start between',
  async (program) => {
    const { page } = program
    await startJob(page)
    await open(page, 'Figures', 'Options')
    await press(page, 'Add the option')
    await page.getByRole('cell', { name: 'Paint ceiling', exact: true }).waitFor()
    await choose(page, /What is different/, 'One coat more')
    await choose(page, /What$/, 'Walls')
    await press(page, 'Add the option')
    await page.getByRole('cell', { name: 'One coat more on walls', exact: true }).waitFor()

    await open(page, 'Paper')
    await page.getByText('Proposal', { exact: true }).click()
    const paper = page.frameLocator('iframe')
    await paper.getByRole('row', { name: /Paint ceiling/ }).waitFor()
    await paper.getByRole('row', { name: /One coat more on walls/ }).waitFor()

    await open(page, 'Figures', 'Agreement')
    await press(page, 'Write down the quote as given')
    await page.getByText(/^Paint ceiling, \+/).click()
    await page.getByLabel('Accepted by').fill('A. Client')
    await page.keyboard.press('Enter')
    await press(page, 'Write down the acceptance')
    await press(page, 'Make a change order')
    await choose(page, /What$/, 'Walls')
    await press(page, 'Write the change order')
    await page.getByLabel('Answered by').fill('A. Client')
    await page.keyboard.press('Enter')
    await press(page, 'Agreed and signed')
    await page.getByText('Change order 1 agreed by A. Client').waitFor()
    await invoiceAndPay(page, 1, 'Deposit, on acceptance')

    await page.locator('[data-stored="stored"]').waitFor()
    await program.restart()
    await open(program.page, 'Figures', 'Agreement')
    await invoiceAndPay(program.page, 2, 'Progress, when half of the rooms are done')
    await press(program.page, 'Work is finished')
    await invoiceAndPay(program.page, 3, 'Final, when all is done and looked over')
    await program.page.getByRole('heading', { name: 'Paid', exact: true }).waitFor()
    const balance = program.page.getByRole('row', { name: /^Balance/ })
    expect(await balance.textContent()).toBe('Balance$0.00')
  },
)
