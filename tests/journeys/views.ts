import type { Page } from 'playwright-core'

/** One place of the program that is looked at: how to get there from anywhere, and which tabs it has. */
interface View {
  readonly name: string
  readonly ways: readonly Way[]
  /** All tabs that show there, without their counts; each of them is a view of its own. */
  readonly tabs?: readonly string[]
  /** What stands over a station; Escape closes it. */
  readonly isOver?: true
}

type Way = (page: Page) => Promise<unknown>

const station =
  (name: string): Way =>
  (page) =>
    page.getByRole('navigation', { name: 'Stations' }).getByRole('button', { name }).click()
const press =
  (name: string | RegExp): Way =>
  (page) =>
    page.getByRole('button', { name, exact: true }).first().click()
const tab =
  (name: string): Way =>
  (page) =>
    page.getByRole('tab', { name: new RegExp(`^${name}( \\d+)?$`) }).click()
const row =
  (name: RegExp): Way =>
  (page) =>
    page.getByRole('row', { name }).first().click()
const option =
  (name: RegExp): Way =>
  (page) =>
    page.getByRole('option', { name }).first().click()
const at =
  (selector: string): Way =>
  (page) =>
    page.locator(selector).first().click()
const key =
  (name: string): Way =>
  (page) =>
    page.keyboard.press(name)
const until =
  (selector: string): Way =>
  (page) =>
    page.locator(selector).first().waitFor()
const typed =
  (label: string, text: string): Way =>
  (page) =>
    page.getByRole('textbox', { name: label }).fill(text)
/** A picture of one color, chosen where the button asks for a file. */
const file =
  (button: string | RegExp): Way =>
  async (page) => {
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), press(button)(page)])
    const buffer = await page.evaluate(async () => {
      const canvas = new OffscreenCanvas(64, 48)
      canvas.getContext('2d')?.fillRect(0, 0, 64, 48)
      const bytes = new Uint8Array(await (await canvas.convertToBlob()).arrayBuffer())
      return [...bytes]
    })
    await chooser.setFiles({ name: 'picture.png', mimeType: 'image/png', buffer: Buffer.from(buffer) })
  }

/** Before any job is in the book, and in a job without a room. */
export const emptyViews: readonly View[] = [
  { name: 'Empty book', ways: [until('[aria-label="Begin"]')] },
  { name: 'Empty book: Start a house', ways: [press(/^Start a house/), until('.new-job input')] },
  { name: 'Empty book: Book of jobs', ways: [press('Book of jobs')], isOver: true },
  { name: 'First job sheet', ways: [startHouse], isOver: true },
  ...['House', 'Walk', 'Finish', 'Figures', 'Calendar', 'Site', 'Paper'].map((name) => ({
    name: `Empty ${name}`,
    ways: [station(name)],
  })),
]

async function startHouse(page: Page): Promise<void> {
  await page.getByRole('textbox', { name: 'New job' }).fill('Elm Street')
  await press('Start it')(page)
  await page.getByRole('dialog').waitFor()
}

const roomTabs = ['Room', 'Height', 'Trim', 'Built', 'Stays', 'Surfaces']
const manyTabs = ['Size', 'Finish', 'There now', 'Found', 'Stays']
const walkTabs = ['Wrong', 'There now', 'Stays', 'Small damage', 'Photos', 'To decide']
const finishTabs = ['Finishes', 'Steps and reasons', 'House rules', 'Products', 'Air']
const figureTabs = [
  'Quantities',
  'Hours',
  'Materials',
  'Estimate',
  'Options',
  'Agreement',
  'Afterwards',
  'Rates',
]
const calendarTabs = ['Plan', 'Crew', 'Site hours and rooms']
const siteTabs = ['Passes', 'Found on site', 'Taken off', 'Photos', 'Punch list']
const shopTabs = [
  'Business',
  'People',
  'Money and hours',
  'Rates',
  'Kinds of rooms',
  'Products',
  'Rules',
  'Proposal',
]

/** On the demonstration house. A view that is added to the program gets its line here; a tab is missed by itself. */
export const houseViews: readonly View[] = [
  { name: 'House', ways: [station('House'), key('Escape')] },
  { name: 'House: a room', ways: [station('House'), press('Kitchen')], tabs: roomTabs },
  { name: 'House: an opening', ways: [station('House'), press('Kitchen'), press(/^Window/)] },
  { name: 'House: many', ways: [station('House'), key('Escape'), press(/^Pick \d+$/)], tabs: manyTabs },
  { name: 'House: List of rooms', ways: [station('House'), press('List of rooms')], isOver: true },
  {
    name: 'House: scale of a picture',
    ways: [station('House'), file(/^Put a plan under it/), until('[role="dialog"]')],
    isOver: true,
  },
  { name: 'Walk', ways: [station('Walk')], tabs: walkTabs },
  { name: 'Walk: a surface', ways: [station('Walk'), tab('Wrong'), option(/^Ceiling/)] },
  {
    name: 'Walk: a photo',
    ways: [station('Walk'), tab('Photos'), file(/^Add photos/), press(/^Look at /)],
    isOver: true,
  },
  { name: 'Finish', ways: [station('Finish')], tabs: finishTabs },
  { name: 'Figures', ways: [station('Figures')], tabs: figureTabs },
  { name: 'Figures: a line', ways: [station('Figures'), tab('Quantities'), row(/^Entry/)] },
  { name: 'Calendar', ways: [station('Calendar'), until('.whole-frame')], tabs: calendarTabs },
  { name: 'Calendar: a block', ways: [station('Calendar'), tab('Plan'), at('.whole-block')] },
  { name: 'Calendar: by the hour', ways: [station('Calendar'), press('Whole job'), until('.plan-view')] },
  { name: 'Calendar: the house on a day', ways: [station('Calendar'), press('House on a day')] },
  { name: 'Site: Today', ways: [station('Site'), press('Today'), until('.today-pane')] },
  { name: 'Site: a room', ways: [station('Site'), option(/^Dining room/)], tabs: siteTabs },
  {
    name: 'Site: out of order',
    ways: [station('Site'), option(/^Dining room/), tab('Passes'), press(/walls.*: check off as done$/i)],
    isOver: true,
  },
  { name: 'Paper', ways: [station('Paper'), until('iframe')] },
  { name: 'Book of jobs', ways: [press('Book of jobs')], isOver: true },
  { name: 'Job sheet', ways: [key('Alt+j')], isOver: true },
  { name: 'Help', ways: [key('F1')], isOver: true },
  {
    name: 'Leaving something typed',
    ways: [
      station('House'),
      typed('A room by its size', 'a large one'),
      press('Book of jobs'),
      press('Shop sheet'),
    ],
    isOver: true,
  },
  { name: 'All jobs', ways: [press('Book of jobs'), press('All jobs on one calendar')] },
  { name: 'Backups', ways: [press('Book of jobs'), press('Go back to a backup'), until('.backup-page')] },
  {
    name: 'Shop sheet',
    ways: [station('House'), typed('A room by its size', ''), press('Book of jobs'), press('Shop sheet')],
    tabs: shopTabs,
  },
]

/** Goes to each view and each of its tabs, and shows it to the one who looks. */
export async function walkViews(
  page: Page,
  views: readonly View[],
  look: (name: string) => Promise<void>,
): Promise<void> {
  for (const { name, ways, tabs = [], isOver } of views) {
    for (const way of ways) await way(page)
    await settled(page)
    await look(tabs.length === 0 ? name : `${name}, ${tabs[0]}`)
    const listed = views.filter((view) => stationOf(view) === stationOf({ name }))
    const missed = isOver
      ? []
      : (await shownTabs(page)).filter((shown) => !listed.some((view) => view.tabs?.includes(shown)))
    if (missed.length > 0) throw new Error(`No line of the views names these tabs of ${name}: ${missed}`)
    for (const each of tabs.slice(1)) {
      await tab(each)(page)
      await settled(page)
      await look(`${name}, ${each}`)
    }
    if (isOver) await page.keyboard.press('Escape')
  }
}

function stationOf({ name }: { readonly name: string }): string | undefined {
  return name.split(':')[0]
}

async function shownTabs(page: Page): Promise<readonly string[]> {
  const texts = await page.getByRole('tab').allInnerTexts()
  return texts.map((text) => text.replace(/ \d+$/, ''))
}

/** Two frames after what was pressed last, when React has drawn it. */
async function settled(page: Page): Promise<void> {
  await page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done(null)))),
  )
}
