/** What this copy of the program says about itself. */
export interface HelpFacts {
  readonly version: string
  readonly host: 'desktop' | 'loopback' | 'headless'
  readonly bookPath: string
}

export interface HelpSection {
  readonly id: string
  readonly title: string
  readonly paragraphs: readonly string[]
}

/** The Help page but for its keys; one text for both hosts. README says the same without the paths of one machine. */
export function helpSections(facts: HelpFacts | null): readonly HelpSection[] {
  return [work(facts), notStored, backups(facts), moving, updating(facts), limits, systems, report, licence]
}

function work(facts: HelpFacts | null): HelpSection {
  const place = facts === null ? 'one file' : `the file ${facts.bookPath}`
  return {
    id: 'work',
    title: 'Where your work is kept',
    paragraphs: [
      `All jobs are in ${place}: the book of jobs. While the program runs, files whose names begin with the same name and end in -wal, -shm or .lock are next to it and belong to it.`,
      'Nothing leaves this machine unless you save, print or send it. The program asks no server for anything.',
      'Every change is in the book as soon as the title block says “Stored”; there is nothing to save by hand.',
    ],
  }
}

const notStored: HelpSection = {
  id: 'not-stored',
  title: 'When something is not stored, and two windows on one job',
  paragraphs: [
    'While a change cannot be stored, a bar above the title block says why. It is kept on the page and tried again by itself after 1, 2, 4, 8, 15 and then every 30 seconds, and at once when you press “Try again now”. You can go on working, undo included. Keep the window open, or save a copy of the job as a file.',
    'Text in a field that was not entered yet (press Enter or leave the field) counts as not stored. Closing the window, opening another job or starting one asks first when something would be lost.',
    'When another window or tab changes the same job, this one takes the change over within seconds. If you have something of your own that is not stored yet, it asks: “Put my edits on top” keeps both where they can be had together; what cannot is listed and can be copied. The other window’s edit then stands.',
    'The last 200 actions can be undone, as long as no other window has changed the same records since.',
    'If a station cannot be shown, the others go on and nothing is lost: try it again, undo the last thing, and keep the details it offers to copy for a report.',
  ],
}

function backups(facts: HelpFacts | null): HelpSection {
  const folder = facts === null ? 'a folder beside the book' : `the folder ${backupFolderOf(facts.bookPath)}`
  return {
    id: 'backups',
    title: 'Backups, and going back to one',
    paragraphs: [
      `The program copies the whole book by itself into ${folder}: after every session, every three hours of work, before a job is deleted, and before a newer version updates the book. Of the copies made while working all of the last day are kept, one of each day for two weeks, and one of each week for a year.`,
      'To go back: Book of jobs, “Go back to a backup”. The page lists the backups, lets you look inside each, and brings back one job or the whole book; the present book is set aside among the backups, nothing is deleted. Where the book cannot be opened, the program shows that page by itself.',
      'By hand, should the program not start at all: close it. Move the book and the files that belong to it (-wal, -shm, .lock) together into a folder of your own; delete nothing. Copy the backup to where the book was, give it the name of the book, and start the program.',
      'These backups are on the same disk as the book. Copy the folder to another disk, or send jobs out as files, as often as you would not like to do the work again.',
    ],
  }
}

/** As electron/storage names it: the file's name without its ending, and `-backups`. */
export function backupFolderOf(bookPath: string): string {
  return `${bookPath.replace(/\.sqlite$/, '')}-backups`
}

const moving: HelpSection = {
  id: 'moving',
  title: 'Moving to another machine',
  paragraphs: [
    'One job: Book of jobs, “Save a copy of this job as a file”; on the other machine “Open a job file”.',
    'Everything: close the program on both machines. Copy the book, the files that belong to it and the folder of backups to the place where the program keeps its book on the other machine; its Help page says where.',
    'Do not keep the book in a folder that two machines share or synchronize while the program runs.',
  ],
}

function updating(facts: HelpFacts | null): HelpSection {
  const isDesktop = facts?.host === 'desktop'
  const unpack =
    'A packaged program: close it, unpack the new archive, start it from there, and delete the old folder.'
  const fetched =
    'From the source: close it, fetch the new version, then run npm ci and npm start in its folder as before.'
  return {
    id: 'updating',
    title: 'Updating and removing the program',
    paragraphs: [
      ...(isDesktop ? [unpack, fetched] : [fetched, unpack]),
      'Your book stays where it is and is updated after a copy of it was made. An older version does not open a newer book; it says so and changes nothing.',
      'To remove the program, delete its folder. Your book and its backups are elsewhere, as said above, and stay until you delete them yourself.',
    ],
  }
}

const limits: HelpSection = {
  id: 'limits',
  title: 'Known limits',
  paragraphs: [
    'One machine and one book: no accounts, no server, no phone. The same book is open in one program at a time; in a browser it may be open in several tabs.',
    'Walls are straight. A curved wall or a bay is drawn as short straight pieces.',
    'A job of hundreds of rooms opens and can be worked on, but measuring, specifying and planning it takes half a minute at two hundred rooms and some minutes at five hundred.',
    'Production rates and prices begin as assumptions, marked as such. Put in your own.',
    'Trim is listed by kind of woodwork. A kind that goes faster or slower gets its own rate at the foot of Figures, Rates.',
    'Rules for lead and asbestos follow federal rules of the United States; your state or town may ask for more. Nothing here says that a surface is free of either.',
    'In a browser, saving and printing go by the browser: switch its own header and footer off, and choose the paper there.',
    'The desktop program is not signed, so a system may warn before it starts. It does not update itself.',
  ],
}

const systems: HelpSection = {
  id: 'systems',
  title: 'Systems it was tried on',
  paragraphs: [
    'Linux on x64 (Debian 12): all tests, in Chromium 153 and in a desktop window of an older Electron (25) than the program is meant for.',
    'macOS, Windows, other browsers and the Electron it is meant for (45): built for, not tried. Firefox and Safari may draw details differently.',
    'The window needs 1024 by 640 points; 1366 by 768 and more are comfortable.',
  ],
}

const report: HelpSection = {
  id: 'report',
  title: 'When something goes wrong',
  paragraphs: [
    'Tell whoever gave you the program what you did, what you expected and what came instead, with the words on the screen and a picture of the window.',
    'Attach the facts below and the job as a file (Book of jobs, “Save a copy of this job as a file”). Names, addresses and pictures of your client are in that file: ask first, or take them out of a copy of the job.',
    'Do not send the whole book: it holds all your clients.',
  ],
}

const licence: HelpSection = {
  id: 'licence',
  title: 'License',
  paragraphs: [
    'No license has been chosen yet. Until one is, nobody but the owner may copy, change or pass on the program. The packages it is built of keep their own licenses; a packaged program has them in its folder.',
  ],
}

/** What to attach to a report, one fact on each line. */
export function reportFacts(facts: HelpFacts | null, agent: string, size: string): readonly string[] {
  return [
    `Coatwright ${facts?.version ?? '(version not known: the host did not answer)'}`,
    `Runs as: ${facts === null ? 'not known' : runsAs(facts.host)}`,
    `Browser or window: ${agent}`,
    `Size of the page: ${size}`,
  ]
}

export function runsAs(host: HelpFacts['host']): string {
  return host === 'desktop' ? 'desktop program' : 'page in a browser'
}
