import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { countedHand } from './counted-hand.ts'
import { browserJourney } from './hosts.ts'
import { newcomerSeconds, practicedSeconds, type Tally } from './keystroke-level.ts'
import { twelveRooms } from './twelve-rooms.ts'

type Hand = ReturnType<typeof countedHand>

async function startJob(page: Page, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Book of jobs' }).click()
  await page.getByLabel('New job').fill(title)
  await page.getByRole('button', { name: 'Start it' }).click()
  await page.getByRole('button', { name: 'Sketch the house' }).click()
  await page.getByRole('heading', { name: 'An empty sheet' }).waitFor()
}

async function writeList(page: Page, hand: Hand, text: string): Promise<void> {
  await hand.press('l')
  await page.getByLabel('One room a line').waitFor()
  await hand.write(text)
  const rooms = text.split('\n').filter((line) => /\d/.test(line)).length
  await page
    .getByRole('button', { name: rooms === 1 ? 'Make this room' : `Make these ${rooms} rooms` })
    .waitFor()
  await hand.press('Control+Enter')
  await page.getByRole('dialog', { name: 'List of rooms' }).waitFor({ state: 'hidden' })
}

function report(house: string, tally: Tally): void {
  const minutes = (seconds: number) => (seconds / 60).toFixed(1)
  console.log(
    `${house}: ${tally.inputs} inputs and ${tally.typed} typed signs; by the keystroke-level model ` +
      `${minutes(practicedSeconds(tally))} min practiced, ${minutes(newcomerSeconds(tally))} min for a newcomer (our extension)`,
  )
}

function button(page: Page, name: string) {
  return page.getByRole('button', { name, exact: true })
}

function tab(page: Page, name: string) {
  return page.getByRole('tab', { name, exact: true })
}

async function choose(page: Page, hand: Hand, label: string, option: string): Promise<void> {
  const inspector = page.getByRole('complementary', { name: 'What is selected' })
  await hand.click(inspector.getByRole('button', { name: new RegExp(`${label}$`) }))
  await hand.click(page.getByRole('option', { name: option }).first())
}

const fourRooms = `Stair hall 7 x 15 x 9, 2 dr
Kitchen 12-6 x 11 x 9, 2 win, 1 dr
Dining 14 x 12 x 9, 2 win, 2 dr, crown
Attic
Attic room 10 x 14, low 5 high 8, 1 dr`

/** From the hall's wall to the left, with a bay of three walls, two of them slanting: direction and length of each. */
const bayWalls = [
  [[-8, 0], '14'],
  [[-14.3, 5], '4'],
  [[-16, 6], `2'10`],
  [[-16.3, 9], '4'],
  [[-15, 11.5], `2'10`],
  [[-14.3, 14], '4'],
  [[-8, 16], '14'],
] as const

async function drawBayRoom(page: Page, hand: Hand): Promise<void> {
  await hand.press('-')
  await hand.press('c')
  await hand.clickAt([-1 / 3, 0])
  for (const [towards, length] of bayWalls) {
    await hand.aim(towards)
    await hand.length(length)
    await hand.end('Enter')
  }
  await hand.end('Enter')
  await page.getByRole('textbox', { name: 'Name' }).and(page.locator(':focus')).waitFor()
  await hand.write('Living')
  await hand.end('Enter')
  await hand.press('d')
  await hand.clickAt([-1 / 6, 12])
  await hand.press('w')
  for (const at of [
    [-15.3, 5],
    [-16.3, 8],
    [-15.3, 11],
  ] as const)
    await hand.clickAt(at)
  expect(await page.getByRole('button', { name: /^Window \d+ [A-Z]$/ }).count()).toBe(3)
}

async function giveStair(page: Page, hand: Hand): Promise<void> {
  await hand.click(button(page, 'Stair hall'))
  await hand.click(tab(page, 'Height'))
  await hand.click(button(page, 'A stair runs through this room'))
  await hand.click(page.getByRole('textbox', { name: 'Treads' }))
  await hand.press('Control+a')
  await hand.write('14')
  await hand.end('Enter')
  await hand.click(button(page, 'Set this stair'))
  await page.getByRole('button', { name: 'Undo: set a stair in Stair hall' }).waitFor()
}

/** One finding on a class of everything picked. */
async function find(page: Page, hand: Hand, found: string, on: string | null): Promise<void> {
  await choose(page, hand, 'Found', found)
  if (on !== null) await choose(page, hand, 'On', on)
  await hand.click(page.getByRole('button', { name: /^Record it in/ }))
}

async function findInAll(page: Page, hand: Hand): Promise<void> {
  await hand.press('m')
  await choose(page, hand, 'Pick', 'All rooms')
  await hand.click(page.getByRole('button', { name: /^Pick \d/ }))
  await hand.click(tab(page, 'Found'))
  await find(page, hand, 'Stress crack', null)
  await find(page, hand, 'Open joint to caulk', 'Trim')
  await hand.click(tab(page, 'Size'))
  await choose(page, hand, 'Pick', 'All windows')
  await hand.click(page.getByRole('button', { name: /^Pick \d/ }))
  await hand.click(tab(page, 'Found'))
  await find(page, hand, 'Missing putty', null)
}

/** Room by room: the first of the usual findings on its first piece, and the rest is as it is. */
async function walkThrough(page: Page, hand: Hand, rooms: number): Promise<void> {
  await hand.press('Alt+2')
  const check = page.getByRole('region', { name: 'Not looked at yet' })
  const said = async () =>
    ((await check.locator('p').textContent()) ?? '').replace(/^All looked at|^\d+ of \d+/, '')
  const room = async () => (await said()).replace(/ not looked at yet\.$|\.$/, '')
  for (let count = 0; count < rooms; count++) {
    const before = await room()
    await hand.press('n')
    if (rooms > 1) await expect.poll(room).not.toBe(before)
    await hand.press('1')
    const rest = button(page, 'Nothing wrong with the rest')
    if ((await rest.count()) > 0) await hand.click(rest)
  }
  await page.getByText('Every other room is done').waitFor()
  await check.getByText('All looked at').waitFor()
}

browserJourney('inputs for three houses', async ({ page }) => {
  await page.setViewportSize({ width: 1366, height: 768 })
  await page.getByTestId('house-figures').waitFor()
  await startJob(page, 'Five rooms')
  const five = countedHand(page)
  await writeList(page, five, fourRooms)
  await drawBayRoom(page, five)
  await giveStair(page, five)
  report('Five rooms', five.tally())
  expect(five.tally().inputs).toBeLessThanOrEqual(45)
  await page.getByRole('button', { name: /^Attic \d/ }).click()
  await button(page, 'Attic room').click()
  await tab(page, 'Height').click()
  await page.getByRole('img', { name: /^Section: (?:5' 0", 8' 0"|8' 0", 5' 0") high$/ }).waitFor()

  await startJob(page, 'Twelve rooms')
  const twelve = countedHand(page)
  await writeList(page, twelve, twelveRooms)
  await findInAll(page, twelve)
  await walkThrough(page, twelve, 12)
  report('Twelve rooms', twelve.tally())
  expect(twelve.tally().inputs).toBeLessThanOrEqual(120)
  expect(practicedSeconds(twelve.tally())).toBeLessThanOrEqual(6 * 60)
  expect(newcomerSeconds(twelve.tally())).toBeLessThanOrEqual(15 * 60)

  await startJob(page, 'One room')
  const one = countedHand(page)
  await writeList(page, one, 'Dining 14 x 12 x 9, 2 win, 2 dr, crown')
  await walkThrough(page, one, 1)
  report('One room', one.tally())
  expect(one.tally().inputs).toBeLessThanOrEqual(10)
})
