import { setImmediate as othersFirst } from 'node:timers/promises'
import type { Handlers, OpenedJob } from '../../core/contract/requests.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'
import { presencesOf, type WorkElsewhere } from '../../core/schedule/job/elsewhere.ts'
import type { AcceptedElsewhere } from '../storage/accepted-elsewhere.ts'
import { renameJob } from '../storage/job-bodies.ts'
import type { Keeper } from '../storage/keeper.ts'
import { jobFileName, type Store } from '../storage/store.ts'
import { type Clock, newJobId } from './clock.ts'
import type { Host } from './host.ts'
import { type JobFiles, jobFilesHere } from './job-files.ts'
import { newJob } from './new-job.ts'

interface HandlerParts {
  readonly keeper: Keeper
  readonly host: Host
  readonly clock: Clock
  /** Reads and writes job files; in this thread where it is left out. */
  readonly jobFiles?: JobFiles
  /** Text of the demonstration house's job file; null where the program was installed without it. */
  readonly readDemo: () => string | null
}

/** The one table of handlers, behind Electron's channels and behind the loopback host alike. */
export function createHandlers({
  keeper,
  host,
  clock,
  readDemo,
  jobFiles = jobFilesHere,
}: HandlerParts): Handlers {
  /** Does something with the open book, or answers why it is shut. */
  function inBook<Value>(use: (store: Store) => Outcome<Value>): Outcome<Value> {
    const store = keeper.store()
    return store.ok ? use(store.value) : store
  }

  /** A job of hundreds of rooms takes long to read; meanwhile others are answered. */
  async function readElsewhere(jobKey: string): Promise<void> {
    const raw = inBook((store) => store.raw(jobKey))
    if (!raw.ok || raw.value === undefined) return
    const { value } = raw
    const job = await jobFiles.readBodies(value.bodies)
    inBook((store) => {
      store.learn(jobKey, value, job)
      return job
    })
  }

  function openDemo(): Outcome<OpenedJob> {
    const text = readDemo()
    return text === null ? noDemo() : inBook((store) => store.import(text))
  }

  /** The lists of the job worked on last are the shop's lists; in an empty book the demonstration house lends its own. */
  function shop(store: Store): Outcome<Job> {
    const jobs = store.list()
    if (!jobs.ok) return jobs
    const latest = jobs.value[0]
    if (latest === undefined) {
      const text = readDemo()
      return text === null ? noDemo() : readJobFile(text)
    }
    const opened = store.open(latest.jobKey)
    return opened.ok ? { ok: true, value: opened.value.job } : opened
  }

  return {
    hostFacts: () => ({
      ok: true,
      value: { ...host.facts, bookPath: keeper.path(), now: clock.local() },
    }),
    bookState: () => ({ ok: true, value: keeper.state() }),
    listBackups: () => keeper.listBackups(),
    lookIntoBackup: ({ name }) => keeper.lookInto(name),
    bringJobBack: async ({ name, jobKey }) => {
      const raw = await keeper.jobOfBackup(name, jobKey)
      if (!raw.ok) return raw
      const { bodies } = raw.value
      const job = await jobFiles.readBodies(bodies)
      if (!job.ok) return job
      await othersFirst()
      return inBook((store) => {
        const prepared = { job: job.value, bodies }
        if (!store.revision(jobKey).ok) return store.add(prepared)
        const older = renameJob(prepared, `${job.value.header.title.slice(0, 180)} (from a backup)`)
        return older.ok ? store.add(older.value) : older
      })
    },
    goBackToBackup: ({ name }) => keeper.goBackTo(name),
    leaveShutBook: ({ way }) => keeper.leave(way),
    listJobs: () => inBook((store) => store.list()),
    createJob: ({ title, unitSystem }) =>
      inBook((store) => {
        const lists = shop(store)
        if (!lists.ok) return lists
        const today = clock.local().slice(0, 10)
        const facts = { id: newJobId(), title, unitSystem, today, timeZone: clock.timeZone() }
        return store.create(newJob(lists.value, facts))
      }),
    openJob: async ({ jobKey }) => {
      await readElsewhere(jobKey)
      return inBook((store) => store.open(jobKey))
    },
    jobRevision: ({ jobKey }) => inBook((store) => store.revision(jobKey)),
    workElsewhere: ({ jobKey }) =>
      inBook((store) => {
        const others = store.acceptedElsewhere(jobKey)
        return others.ok ? { ok: true, value: others.value.flatMap(workOf) } : others
      }),
    openDemo,
    storeEdit: ({ jobKey, revision, diff }) => inBook((store) => store.storeEdit(jobKey, revision, diff)),
    deleteJob: ({ jobKey }) => keeper.remove(jobKey),
    importJob: async ({ text }) => {
      const read = await jobFiles.read(text)
      // Taking a large job over from the thread and writing it both take long; others are answered in between.
      await othersFirst()
      return read.ok ? inBook((store) => store.add(read.value)) : read
    },
    exportJob: async ({ jobKey }) => {
      const opened = inBook((store) => store.open(jobKey))
      if (!opened.ok) return opened
      const { job } = opened.value
      return { ok: true, value: { fileName: jobFileName(job), text: await jobFiles.write(job) } }
    },
    saveDocument: (argument) => host.saveDocument(argument),
    savePdf: (argument) => host.savePdf(argument),
    printDocument: (argument) => host.printDocument(argument),
  }
}

function workOf({ plan, timeZone, names }: AcceptedElsewhere): readonly WorkElsewhere[] {
  return presencesOf(plan, timeZone).map((each) => ({ ...each, name: names.get(each.crewMemberId) ?? '' }))
}

/** A book without jobs gets the demonstration house, so that the first start shows one. */
export async function fillEmptyBook(handlers: Handlers): Promise<Outcome<unknown>> {
  const jobs = await handlers.listJobs({})
  return jobs.ok && jobs.value.length === 0 ? handlers.openDemo({}) : jobs
}

function noDemo(): Outcome<never> {
  return fail('notFound', 'The demonstration house is not here: demo-data/old-house.json is missing.')
}
