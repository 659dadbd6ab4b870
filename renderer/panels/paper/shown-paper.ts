import { useCallback, useMemo } from 'react'
import { isPaper } from '../../../core/project/issued-records.ts'
import { records } from '../../../core/project/job.ts'
import { type DocumentPart, picturedDocument } from '../../../core/work-order/html.ts'
import { chosenDay, wholeJob } from '../../../core/work-order/paper-choice.ts'
import { noStamp } from '../../../core/work-order/paper-stamp.ts'
import { picturesNamed, withPictures } from '../../../core/work-order/pictured.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob } from '../../state/app.ts'
import { usePictures } from '../../state/pictures.ts'
import { useSiteNow } from '../../state/planner-now.ts'
import type { PaperMemory } from './choice-memory.ts'
import { documentOf, type PaperDocument } from './documents.ts'
import { openBody } from './outgoing.ts'
import { useBuild, useOrder } from './paper-order.ts'

interface PaperWanted {
  readonly plan: WorkPlan
  readonly acceptedAt: string | null
  readonly memory: PaperMemory
  /** Local date that was chosen; null for the usual one. */
  readonly day: string | null
  /** A paper given out before; null for the document chosen. */
  readonly oldId: string | null
}

/** The paper that is looked at, whether it is made from the job as it stands or was given out before. */
export function useShownPaper({ plan, acceptedAt, memory, day, oldId }: PaperWanted) {
  const job = useJob()
  const { today } = useSiteNow()
  const chosen = documentOf(memory.documentId)
  const parts = usePartsOf(chosen, memory)
  const order = useOrder(plan, memory.daysBetweenTrips)
  const shownDay = day ?? chosenDay(order.days, { ...wholeJob, day: today.slice(0, 10) })?.date ?? null
  const isDraft = chosen.isOfPlan && acceptedAt === null
  const build = useBuild(order, parts, memory, shownDay)
  const paged = useMemo(() => build(isDraft ? { kind: 'draft' } : noStamp), [build, isDraft])
  const kept = records(job.issued).filter(isPaper)
  const given = kept.find((each) => each.id === oldId)
  const oldPaper = given === undefined ? undefined : openBody(given)
  const size = oldPaper?.size ?? job.header.paper
  const addressOf = usePaperPictures(oldPaper?.html ?? null)
  const html = useMemo(
    () =>
      oldPaper === undefined ? picturedDocument(paged, addressOf) : withPictures(oldPaper.html, addressOf),
    [oldPaper, paged, addressOf],
  )
  const pictured = (bare: string) => withPictures(bare, addressOf)
  return { chosen, parts, order, shownDay, isDraft, build, kept, given, oldPaper, size, html, pictured }
}

export type ShownPaper = ReturnType<typeof useShownPaper>

/** Addresses of the pictures of the letterhead, of the job's photos, and of those in a paper given out before. */
function usePaperPictures(paper: string | null): (hash: string) => string | null {
  const job = useJob()
  const { logo } = job.business
  const named = useMemo(
    () => [
      ...new Set([
        ...(logo === null ? [] : [logo]),
        ...records(job.photos).map(({ small }) => small),
        ...(paper === null ? [] : picturesNamed(paper)),
      ]),
    ],
    [job.photos, logo, paper],
  )
  const addresses = usePictures(named)
  return useCallback((hash) => addresses.get(hash) ?? null, [addresses])
}

/** The parts of a document; of the pack for the crew those that were chosen. */
function usePartsOf(chosen: PaperDocument, memory: PaperMemory): readonly DocumentPart[] {
  return useMemo(
    () => (chosen.id === 'crew' ? chosen.parts.filter((part) => memory.parts.includes(part)) : chosen.parts),
    [chosen, memory.parts],
  )
}
