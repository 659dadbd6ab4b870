import { z } from 'zod'
import { formSentence, issueToTell, pathText } from '../../core/project/form-sentence.ts'
import { fail, type Outcome, succeed } from '../../core/project/problem.ts'

/** A record as it is kept: its JSON in the form of the job file, and the record that this JSON reads back to. */
interface KeptRecord {
  readonly body: string
  readonly record: unknown
}

/**
 * Checks a record against its schema and answers what to keep. The record read back from the JSON takes its place in memory,
 * so that what is shown after an edit is what reopening would show.
 *
 * @param where path of the record inside the edit, for the problem
 */
export function keepRecord(schema: z.ZodType, candidate: unknown, where: string): Outcome<KeptRecord> {
  const encoded = z.safeEncode(schema, candidate as never)
  if (!encoded.success) return brokenRecord(encoded.error, candidate, where)
  const body = JSON.stringify(encoded.data)
  const read = z.safeDecode(schema, JSON.parse(body))
  return read.success ? succeed({ body, record: read.data }) : brokenRecord(read.error, candidate, where)
}

/** Reads a kept record; null where the book holds something this program's schema does not know. */
export function readRecord(schema: z.ZodType, body: string): unknown | null {
  const read = z.safeDecode(schema, JSON.parse(body))
  return read.success ? read.data : null
}

function brokenRecord(error: z.core.$ZodError, candidate: unknown, where: string): Outcome<never> {
  const first = error.issues[0]
  const issue = first && issueToTell(first)
  const inside = issue === undefined ? '' : pathText(issue.path)
  const path = inside === '' || inside.startsWith('[') ? `${where}${inside}` : `${where}.${inside}`
  const sentence = issue === undefined ? 'It is not valid.' : formSentence(issue, candidate)
  return fail('notValid', `This edit was not stored: ${where} is not right. ${sentence}`, [], path)
}
