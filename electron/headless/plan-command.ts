import { readFileSync } from 'node:fs'
import type { Job } from '../../core/project/job.ts'
import { readJobFile } from '../../core/project/job-file.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'
import { readWords } from './words.ts'
import { writeFolder } from './write-folder.ts'

/** The files of a planned job by name, and a few lines for the person at the command line. */
export interface PlanFiles {
  readonly files: Readonly<Record<string, string>>
  readonly summary: readonly string[]
}

export interface PlanParts {
  readonly makeFiles: (job: Job) => Outcome<PlanFiles>
  readonly say: (line: string) => void
  readonly complain: (line: string) => void
}

/** Plans the job of a file and writes what follows into a folder. Answers the exit code: bad input writes nothing and is not 0. */
export function planCommand(words: readonly string[], { makeFiles, say, complain }: PlanParts): 0 | 1 {
  const done = planInto(words, makeFiles)
  if (!done.ok) {
    complain(done.problem.sentence)
    return 1
  }
  for (const line of done.value) say(line)
  return 0
}

function planInto(words: readonly string[], makeFiles: PlanParts['makeFiles']): Outcome<readonly string[]> {
  const read = readWords(words)
  if (!read.ok) return read
  const { jobFile, outFolder } = read.value
  const text = readText(jobFile)
  if (!text.ok) return text
  const job = readJobFile(text.value)
  if (!job.ok) return job
  const made = makeFiles(job.value)
  if (!made.ok) return made
  const { files, summary } = made.value
  const written = writeFolder(outFolder, files)
  if (!written.ok) return written
  return succeed([...summary, `Written to ${outFolder}: ${Object.keys(files).join(', ')}`])
}

function readText(path: string): Outcome<string> {
  try {
    return succeed(readFileSync(path, 'utf8'))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return fail('notFound', `The job file ${path} cannot be read: ${why}`)
  }
}
