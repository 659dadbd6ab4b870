import { z } from 'zod'
import type { CrewMemberId } from '../../../core/project/shop-records.ts'
import type { RoomId } from '../../../core/project/sketch-records.ts'
import { crewParts, type DocumentPart, documentParts } from '../../../core/work-order/html.ts'
import { usualDaysBetweenTrips } from '../../../core/work-order/trips.ts'
import { type PaperDocument, paperDocuments } from './documents.ts'

/** What was chosen on Paper: the last of each job is remembered by the browser, not by the job. */
export interface PaperMemory {
  readonly documentId: PaperDocument['id']
  /** Of the pack for the crew. */
  readonly parts: readonly DocumentPart[]
  /** Null is all there are, those to come too. */
  readonly rooms: readonly RoomId[] | null
  readonly people: readonly CrewMemberId[] | null
  readonly weeks: readonly string[] | null
  readonly daysBetweenTrips: number
}

const ids = z.array(z.string().max(64)).max(500).nullable().catch(null)
const documentIds = paperDocuments.map(({ id }) => id)
const memorySchema = z.object({
  documentId: z.enum(documentIds).catch('workOrder'),
  parts: z.array(z.enum(documentParts)).catch([...crewParts]),
  rooms: ids,
  people: ids,
  weeks: ids,
  daysBetweenTrips: z.int().min(1).max(90).catch(usualDaysBetweenTrips),
})

function keyOf(jobId: string): string {
  return `coatwright.paper.${jobId}`
}

/** What was chosen last in this job; anything that cannot be read is as if nothing had been. */
export function readMemory(text: string | null): PaperMemory {
  return memorySchema.parse(parsed(text)) as PaperMemory
}

function parsed(text: string | null): object {
  try {
    const data: unknown = JSON.parse(text ?? '{}')
    return typeof data === 'object' && data !== null ? data : {}
  } catch {
    return {}
  }
}

export function loadMemory(jobId: string): PaperMemory {
  return readMemory(window.localStorage.getItem(keyOf(jobId)))
}

export function saveMemory(jobId: string, memory: PaperMemory): void {
  window.localStorage.setItem(keyOf(jobId), JSON.stringify(memory))
}

/** A choice with one of all there are put in or taken out; all of them is null, so that those to come belong to it. */
export function toggled<Id extends string>(
  all: readonly Id[],
  chosen: readonly Id[] | null,
  id: Id,
  isOn: boolean,
): readonly Id[] | null {
  const now = new Set(chosen ?? all)
  if (isOn) now.add(id)
  else now.delete(id)
  const left = all.filter((each) => now.has(each))
  return left.length === all.length ? null : left
}
