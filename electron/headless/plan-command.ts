import { readFileSync } from 'node:fs'
import type { Handlers } from '../../core/contract/requests.ts'
import { isGroup } from '../../core/lists/lists.ts'
import type { Job } from '../../core/project/job.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { picturesNamed, withPictures } from '../../core/work-order/pictured.ts'
import { readWords } from './summary-words.ts'
import { writeFolder } from './write-folder.ts'

/** The files of a planned job by name, and a few lines for the person at the command line. */
export interface PlanFiles {
  readonly files: Readonly<Record<string, string>>
  readonly summary: readonly string[]
}

export interface PlanParts {
  readonly handlers: Handlers
  /** What the host behind the handlers was given to save. */
  readonly documents: ReadonlyMap<string, string>
  readonly makeFiles: (job: Job, progress: (line: string) => void) => Outcome<PlanFiles>
  readonly say: (line: string) => void
  /** For what is being worked on; not part of the answer. */
  readonly progress: (line: string) => void
  readonly complain: (line: string) => void
}

/** Plans the job of a file and writes what follows into a folder. Answers the exit code: bad input writes nothing and is not 0. */
export async function planCommand(words: readonly string[], parts: PlanParts): Promise<0 | 1> {
  const done = await planInto(words, parts)
  if (!done.ok) {
    parts.complain(done.problem.sentence)
    return 1
  }
  for (const line of done.value) parts.say(line)
  return 0
}

async function planInto(
  words: readonly string[],
  { handlers, documents, makeFiles, progress }: PlanParts,
): Promise<Outcome<readonly string[]>> {
  const read = readWords(words)
  if (!read.ok) return read
  const { jobFile, outFolder } = read.value
  const text = readText(jobFile)
  if (!text.ok) return text
  const opened = await handlers.importJob({ text: text.value })
  if (!opened.ok) return opened
  const made = makeFiles(opened.value.job, progress)
  if (!made.ok) return made
  for (const [fileName, content] of Object.entries(made.value.files)) {
    const text = fileName.endsWith('.html') ? await pictured(content, handlers) : content
    const saved = await handlers.saveDocument({ fileName, mediaType: mediaTypeOf(fileName), text })
    if (!saved.ok) return saved
  }
  const written = writeFolder(outFolder, documents)
  if (!written.ok) return written
  return succeed([...made.value.summary, `Written to ${outFolder}: ${[...documents.keys()].join(', ')}`])
}

/** A paper with the pictures that came with the job. */
async function pictured(paper: string, handlers: Handlers): Promise<string> {
  const addresses = new Map<string, string>()
  for (const hash of picturesNamed(paper)) {
    const read = await handlers.readPicture({ hash })
    if (read.ok) addresses.set(hash, `data:${read.value.mediaType};base64,${read.value.base64}`)
  }
  return withPictures(paper, (hash) => addresses.get(hash) ?? null)
}

function readText(path: string): Outcome<string> {
  try {
    // Some editors of plain text begin a file with a byte order mark, which is no part of the JSON (RFC 8259 section 8.1).
    return succeed(readFileSync(path, 'utf8').replace(/^\uFEFF/, ''))
  } catch (error) {
    return fail('notFound', unreadable(path, error))
  }
}

function unreadable(path: string, error: unknown): string {
  switch (isGroup(error) ? error.code : undefined) {
    case 'ENOENT':
      return `There is no file ${path}.`
    case 'EISDIR':
      return `${path} is a folder; a job file is needed.`
    default:
      return `The job file ${path} cannot be read: ${error instanceof Error ? error.message : String(error)}`
  }
}

function mediaTypeOf(fileName: string): string {
  switch (fileName.slice(fileName.lastIndexOf('.'))) {
    case '.json':
      return 'application/json'
    case '.html':
      return 'text/html'
    case '.csv':
      return 'text/csv'
    case '.ics':
      return 'text/calendar'
    default:
      return 'text/plain'
  }
}
