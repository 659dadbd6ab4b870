import { z } from 'zod'
import { waysOut } from '../../core/contract/book.ts'
import { type Argument, type Handlers, type RequestName, requestNames } from '../../core/contract/requests.ts'
import { isOneOf } from '../../core/lists/lists.ts'
import { numberedPapers } from '../../core/project/business-record.ts'
import { fail, type Outcome } from '../../core/project/problem.ts'
import { pictureHashSchema } from '../../core/project/schema-parts.ts'

const nothing = z.strictObject({})
const jobKey = z.string().min(1).max(100)
/** Much more than the largest job file or printed document measured; less than what would exhaust the machine. */
const longestText = 60_000_000
const documentText = z.string().max(longestText)
/** Of a picture in base64; what the book keeps of one is less. */
const longestPicture = 2_800_000
const fileName = z.string().min(1).max(200)
const paper = z.enum(['letter', 'a4'])

/** The outer shape of every argument. What is inside an edit or a job file is judged where it is read. */
const argumentSchemas = {
  hostFacts: nothing,
  bookState: nothing,
  listBackups: nothing,
  lookIntoBackup: z.strictObject({ name: fileName }),
  bringJobBack: z.strictObject({ name: fileName, jobKey }),
  goBackToBackup: z.strictObject({ name: fileName }),
  leaveShutBook: z.strictObject({ way: z.enum(waysOut) }),
  listJobs: nothing,
  openShop: nothing,
  takeNumber: z.strictObject({ of: z.enum(numberedPapers) }),
  duplicateJob: z.strictObject({ jobKey }),
  createJob: z.strictObject({
    title: z.string().min(1).max(200),
    unitSystem: z.enum(['imperial', 'metric']),
  }),
  openJob: z.strictObject({ jobKey }),
  jobRevision: z.strictObject({ jobKey }),
  workElsewhere: z.strictObject({ jobKey }),
  workOfBook: nothing,
  openDemo: nothing,
  storeEdit: z.strictObject({
    jobKey,
    revision: z.int().min(1),
    diff: z.custom<Argument<'storeEdit'>['diff']>((value) => typeof value === 'object' && value !== null),
  }),
  deleteJob: z.strictObject({ jobKey }),
  importJob: z.strictObject({ text: documentText }),
  exportJob: z.strictObject({ jobKey }),
  keepPicture: z.strictObject({ base64: z.string().max(longestPicture) }),
  readPicture: z.strictObject({ hash: pictureHashSchema }),
  saveDocument: z.strictObject({ fileName, mediaType: z.string().min(1).max(100), text: documentText }),
  savePdf: z.strictObject({ fileName, html: documentText, paper }),
  printDocument: z.strictObject({ html: documentText, paper }),
} satisfies { readonly [Name in RequestName]: z.ZodType<Argument<Name>> }

export function isRequestName(name: unknown): name is RequestName {
  return typeof name === 'string' && isOneOf(requestNames, name)
}

/**
 * Answers one request of an unknown caller: a known name, an argument of the right shape, and every failure as data. Who the
 * caller is (window, origin, token) is the host's question and asked before.
 */
export async function answerRequest(
  handlers: Handlers,
  name: unknown,
  argument: unknown,
): Promise<Outcome<unknown>> {
  if (!isRequestName(name)) return fail('notAllowed', 'The host knows no such request.')
  const read = argumentSchemas[name].safeParse(argument)
  if (!read.success) {
    const issue = read.error.issues[0]
    const path = issue?.path.join('.') ?? ''
    return fail(
      'notValid',
      `The request ${name} was not understood: ${path || 'argument'}: ${issue?.message}.`,
      [],
      path,
    )
  }
  try {
    const handle = handlers[name] as (argument: unknown) => Promise<Outcome<unknown>> | Outcome<unknown>
    return await handle(read.data)
  } catch (error) {
    return fail(
      'hostFailed',
      `The host failed at ${name}: ${error instanceof Error ? error.message : String(error)}`,
    )
  }
}
