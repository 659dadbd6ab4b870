import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readJobFile } from '../../core/project/job-file.ts'
import { takeOff } from '../../core/quantities/take-off.ts'
import { cautionsOfRoom, gravestFirst } from '../../core/specification/cautions.ts'
import { allRules } from '../../core/specification/rule-list.ts'
import { specify } from '../../core/specification/specify.ts'

const read = readJobFile(
  readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'old-house.json'), 'utf8'),
)
if (!read.ok) throw new Error(read.problem.sentence)
const job = read.value
const specification = specify(job, takeOff(job))

/** Laws by their numbers, standards, handbooks, and what was only remembered. */
const provenance =
  /\bmemory\b|\bCFR\b|MIL-HDBK|\bNFPA\b|\bASTM\b|\bNHBC\b|\bPCA\b|\bMPI\b|\bIS 1200\b|common practice|shop assumption/i

test('no sentence of a notice, a hold, a caution or a reason says where it comes from: that stands in the details of its rule', () => {
  const sentences = [
    ...specification.notices.map((notice) => notice.sentence),
    ...specification.holds.map((hold) => hold.reason),
    ...specification.order.map((order) => order.reason),
    ...specification.steps.flatMap((step) => step.cautions.map((caution) => caution.text)),
    ...allRules.map((rule) => rule.reason),
  ]
  expect(sentences.length).toBeGreaterThan(200)
  expect(sentences.filter((sentence) => provenance.test(sentence))).toEqual([])
})

test('a room has at most four cautions, and none that holds for the whole house', () => {
  const everywhere = ['lead', 'dust', 'ladder', 'solvent', 'oilyRags', 'childrenAndPets']
  for (const roomId of Object.keys(job.rooms)) {
    const all = specification.steps.filter((step) => step.roomId === roomId).flatMap((step) => step.cautions)
    const shown = cautionsOfRoom(all)
    expect(shown.length, roomId).toBeLessThanOrEqual(4)
    expect(shown.filter(({ id }) => everywhere.includes(id))).toEqual([])
    // What is left out of a room still stands on the cover.
    const cover = gravestFirst(specification.steps.flatMap((step) => step.cautions)).map(({ id }) => id)
    for (const { id } of all) expect(cover).toContain(id)
  }
})

test('what the lead rule asks of the whole house is said once', () => {
  const lead = specification.notices.filter((notice) => notice.kind === 'leadSafe')
  expect(lead.filter((notice) => notice.roomId === null).length).toBe(1)
  expect(lead.filter((notice) => notice.sentence.includes('pamphlet')).length).toBe(1)
})
