import type { Handlers, OpenedJob } from '../../core/contract/requests.ts'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'
import type { Keeper } from '../storage/keeper.ts'
import type { Store } from '../storage/store.ts'
import { type Clock, newJobId } from './clock.ts'
import type { Host } from './host.ts'
import { newJob } from './new-job.ts'

export interface HandlerParts {
  readonly keeper: Keeper
  readonly host: Host
  readonly clock: Clock
  /** Text of the demonstration house's job file; null where the program was installed without it. */
  readonly readDemo: () => string | null
}

/** The one table of handlers, behind Electron's channels and behind the loopback host alike. */
export function createHandlers({ keeper, host, clock, readDemo }: HandlerParts): Handlers {
  /** Does something with the open book, or answers why it is shut. */
  function inBook<Value>(use: (store: Store) => Outcome<Value>): Outcome<Value> {
    const store = keeper.store()
    return store.ok ? use(store.value) : store
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
    bringJobBack: ({ name, jobKey }) => keeper.bringJobBack(name, jobKey),
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
    openJob: ({ jobKey }) => inBook((store) => store.open(jobKey)),
    jobRevision: ({ jobKey }) => inBook((store) => store.revision(jobKey)),
    openDemo,
    storeEdit: ({ jobKey, revision, diff }) => inBook((store) => store.storeEdit(jobKey, revision, diff)),
    deleteJob: ({ jobKey }) => keeper.remove(jobKey),
    importJob: ({ text }) => inBook((store) => store.import(text)),
    exportJob: ({ jobKey }) => inBook((store) => store.export(jobKey)),
    saveDocument: (argument) => host.saveDocument(argument),
    savePdf: (argument) => host.savePdf(argument),
    printDocument: (argument) => host.printDocument(argument),
  }
}

/** A book without jobs gets the demonstration house, so that the first start shows one. */
export async function fillEmptyBook(handlers: Handlers): Promise<Outcome<unknown>> {
  const jobs = await handlers.listJobs({})
  return jobs.ok && jobs.value.length === 0 ? handlers.openDemo({}) : jobs
}

function noDemo(): Outcome<never> {
  return fail('notFound', 'The demonstration house is not here: demo-data/old-house.json is missing.')
}
