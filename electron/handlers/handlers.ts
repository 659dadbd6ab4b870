import { setImmediate as othersFirst } from 'node:timers/promises'
import { type Handlers, type OpenedJob, shopKey } from '../../core/contract/requests.ts'
import { lookAtKept } from '../../core/pictures/picture-bounds.ts'
import { starterShop } from '../../core/price/starter-shop.ts'
import type { NumberedPaper } from '../../core/project/business-record.ts'
import { diffJobs } from '../../core/project/diff.ts'
import type { ShopLists } from '../../core/project/empty-job.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { renameJob } from '../storage/job-bodies.ts'
import type { Keeper } from '../storage/keeper.ts'
import { pictureHash } from '../storage/picture-rows.ts'
import { jobFileName, type Store } from '../storage/store.ts'
import { type Clock, newJobId } from './clock.ts'
import type { Host } from './host.ts'
import { type JobFiles, jobFilesHere } from './job-files.ts'
import { duplicateOf, newJob, shopSheetOf } from './new-job.ts'

interface HandlerParts {
  readonly keeper: Keeper
  readonly host: Host
  readonly clock: Clock
  /** Reads and writes job files; in this thread where it is left out. */
  readonly jobFiles?: JobFiles
  /** Text of the demonstration house's job file; null where the program was installed without it. */
  readonly readDemo: () => string | null
}

/** What the handlers answer from. */
interface FilledParts extends Required<HandlerParts> {
  /** Does something with the open book, or answers why it is shut. */
  readonly inBook: <Value>(use: (store: Store) => Outcome<Value>) => Outcome<Value>
}

/** The one table of handlers, behind Electron's channels and behind the loopback host alike. */
export function createHandlers(given: HandlerParts): Handlers {
  const { keeper, host, clock } = given
  const parts: FilledParts = {
    ...given,
    jobFiles: given.jobFiles ?? jobFilesHere,
    inBook: (use) => {
      const store = keeper.store()
      return store.ok ? use(store.value) : store
    },
  }
  return {
    hostFacts: () => succeed({ ...host.facts, bookPath: keeper.path(), now: clock.local() }),
    ...backupHandlers(parts),
    ...shopHandlers(parts),
    ...jobHandlers(parts),
    ...jobFileHandlers(parts),
    ...pictureHandlers(parts),
    saveDocument: (argument) => host.saveDocument(argument),
    savePdf: (argument) => host.savePdf(argument),
    printDocument: (argument) => host.printDocument(argument),
  }
}

type BackupRequests =
  | 'bookState'
  | 'listBackups'
  | 'lookIntoBackup'
  | 'bringJobBack'
  | 'goBackToBackup'
  | 'leaveShutBook'

function backupHandlers({ keeper, jobFiles, inBook }: FilledParts): Pick<Handlers, BackupRequests> {
  return {
    bookState: () => succeed(keeper.state()),
    listBackups: () => keeper.listBackups(),
    lookIntoBackup: ({ name }) => keeper.lookInto(name),
    bringJobBack: async ({ name, jobKey }) => {
      const raw = await keeper.jobOfBackup(name, jobKey)
      if (!raw.ok) return raw
      const { bodies, pictures } = raw.value
      const job = await jobFiles.readBodies(bodies)
      if (!job.ok) return job
      await othersFirst()
      return inBook((store) => {
        const prepared = { job: job.value, bodies }
        if (!store.revision(jobKey).ok) return store.add(prepared, pictures)
        const older = renameJob(prepared, `${job.value.header.title.slice(0, 180)} (from a backup)`)
        return older.ok ? store.add(older.value, pictures) : older
      })
    },
    goBackToBackup: ({ name }) => keeper.goBackTo(name),
    leaveShutBook: ({ way }) => keeper.leave(way),
  }
}

function shopHandlers({ clock, inBook }: FilledParts): Pick<Handlers, 'openShop' | 'takeNumber'> {
  return {
    openShop: () => inBook((store) => openShop(store, clock)),
    takeNumber: ({ of }) => inBook((store) => takeNumber(store, clock, of)),
  }
}

type JobRequests =
  | 'listJobs'
  | 'duplicateJob'
  | 'createJob'
  | 'openJob'
  | 'jobRevision'
  | 'workElsewhere'
  | 'workOfBook'
  | 'storeEdit'
  | 'deleteJob'

function jobHandlers(parts: FilledParts): Pick<Handlers, JobRequests> {
  const { keeper, clock, inBook } = parts
  return {
    listJobs: () => inBook((store) => store.list()),
    duplicateJob: async ({ jobKey }) => {
      await readElsewhere(parts, jobKey)
      return inBook((store) => {
        const opened = store.open(jobKey)
        return opened.ok ? store.create(duplicateOf(opened.value.job, newJobId())) : opened
      })
    },
    createJob: ({ title, unitSystem }) =>
      inBook((store) => {
        const shop = openShop(store, clock)
        return shop.ok ? store.create(newJob(shop.value.job, newJobFacts(clock, title, unitSystem))) : shop
      }),
    openJob: async ({ jobKey }) => {
      await readElsewhere(parts, jobKey)
      return inBook((store) => store.open(jobKey))
    },
    jobRevision: ({ jobKey }) => inBook((store) => store.revision(jobKey)),
    workElsewhere: ({ jobKey }) =>
      inBook((store) => {
        const others = store.workElsewhere(jobKey)
        if (!others.ok) return others
        return succeed(
          others.value.flatMap((other) =>
            other.work.map((work) => ({ ...work, jobKey: other.jobKey, jobTitle: other.title })),
          ),
        )
      }),
    workOfBook: () => inBook((store) => store.workOfBook()),
    storeEdit: ({ jobKey, revision, diff }) => inBook((store) => store.storeEdit(jobKey, revision, diff)),
    deleteJob: ({ jobKey }) => keeper.remove(jobKey),
  }
}

function jobFileHandlers(parts: FilledParts): Pick<Handlers, 'openDemo' | 'importJob' | 'exportJob'> {
  const { jobFiles, inBook, readDemo } = parts
  return {
    openDemo: () => {
      const text = readDemo()
      return text === null ? noDemo() : inBook((store) => store.import(text))
    },
    importJob: async ({ text }) => {
      const read = await jobFiles.read(text)
      // Taking a large job over from the thread and writing it both take long; others are answered in between.
      await othersFirst()
      return read.ok ? inBook((store) => store.add(read.value.job, read.value.pictures)) : read
    },
    exportJob: async ({ jobKey }) => {
      const opened = inBook((store) => store.open(jobKey))
      if (!opened.ok) return opened
      const taken = inBook((store) => store.picturesForFile(jobKey))
      if (!taken.ok) return taken
      const { job } = opened.value
      const { pictures, leftOut } = taken.value
      const text = await jobFiles.write({ job, pictures })
      return succeed({ fileName: jobFileName(job), text, picturesLeftOut: leftOut })
    },
  }
}

function pictureHandlers({ inBook }: FilledParts): Pick<Handlers, 'keepPicture' | 'readPicture'> {
  return {
    keepPicture: ({ base64 }) => {
      const bytes = Buffer.from(base64, 'base64')
      const look = lookAtKept(bytes)
      if (!look.ok) return look
      const hash = pictureHash(bytes)
      const kept = inBook((store) => store.keepPicture({ hash, mediaType: look.value.mediaType, bytes }))
      return kept.ok ? succeed({ hash }) : kept
    },
    readPicture: ({ hash }) => {
      const read = inBook((store) => store.picture(hash))
      if (!read.ok) return read
      const { mediaType, bytes } = read.value
      return succeed({ mediaType, base64: Buffer.from(bytes).toString('base64') })
    },
  }
}

/** A job of hundreds of rooms takes long to read; meanwhile others are answered. */
async function readElsewhere({ jobFiles, inBook }: FilledParts, jobKey: string): Promise<void> {
  const raw = inBook((store) => store.raw(jobKey))
  if (!raw.ok || raw.value === undefined) return
  const { value } = raw
  const job = await jobFiles.readBodies(value.bodies)
  inBook((store) => {
    store.learn(jobKey, value, job)
    return job
  })
}

function newJobFacts(clock: Clock, title: string, unitSystem: 'imperial' | 'metric') {
  const today = clock.local().slice(0, 10)
  return { id: newJobId(), title, unitSystem, today, timeZone: clock.timeZone() }
}

function openShop(store: Store, clock: Clock): Outcome<OpenedJob> {
  const kept = store.open(shopKey)
  if (kept.ok || kept.problem.kind !== 'notFound') return kept
  const lists = firstLists(store)
  return lists.ok
    ? store.create(shopSheetOf(lists.value, newJobFacts(clock, 'Shop sheet', 'imperial')), shopKey)
    : lists
}

function takeNumber(store: Store, clock: Clock, of: NumberedPaper): Outcome<{ readonly number: number }> {
  const shop = openShop(store, clock)
  if (!shop.ok) return shop
  const { job, revision } = shop.value
  const { nextNumbers } = job.business
  const number = nextNumbers[of]
  const business = { ...job.business, nextNumbers: { ...nextNumbers, [of]: number + 1 } }
  const stored = store.storeEdit(shopKey, revision, diffJobs(job, { ...job, business }))
  return stored.ok ? succeed({ number }) : stored
}

/**
 * A book that had jobs before there was a shop sheet kept the shop's lists in the job worked on last; every other one begins with the
 * neutral shop. Either has to be looked through by the owner.
 */
function firstLists(store: Store): Outcome<ShopLists> {
  const jobs = store.list()
  if (!jobs.ok) return jobs
  const latest = jobs.value.find(({ isDemonstration }) => !isDemonstration)
  if (latest === undefined) return { ok: true, value: starterShop }
  const opened = store.open(latest.jobKey)
  return opened.ok ? { ok: true, value: { ...opened.value.job, business: starterShop.business } } : opened
}

function noDemo(): Outcome<never> {
  return fail('notFound', 'The demonstration house is not here: demo-data/old-house.json is missing.')
}
