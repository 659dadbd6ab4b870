import { useCallback, useState } from 'react'
import type { WorkOrder } from '../../../core/work-order/document-types.ts'
import { type DocumentPart, type PagedDocument, pagedDocument } from '../../../core/work-order/html.ts'
import type { PaperStamp } from '../../../core/work-order/paper-stamp.ts'
import { workOrder } from '../../../core/work-order/work-order.ts'
import type { WorkPlan } from '../../../core/work-order/work-plan.ts'
import { useJob } from '../../state/app.ts'
import { usePasses, useSpecification, useTakeoff } from '../../state/derived.ts'
import { lastAnswer } from '../../state/last-answer.ts'
import { usePaidEstimate } from '../../state/planner.ts'
import { loadMemory, type PaperMemory, saveMemory } from './choice-memory.ts'

/** The last choice of this job, by the memory of the browser. */
export function usePaperMemory(): readonly [PaperMemory, (memory: PaperMemory) => void] {
  const { id } = useJob().header
  const [memory, setMemory] = useState(() => loadMemory(id))
  return [
    memory,
    (next) => {
      setMemory(next)
      saveMemory(id, next)
    },
  ]
}

const orderOf = lastAnswer(workOrder)

export function useOrder(plan: WorkPlan, daysBetweenTrips: number): WorkOrder {
  const job = useJob()
  const takeoff = useTakeoff()
  const specification = useSpecification()
  const estimate = usePaidEstimate()
  const passes = usePasses()
  return orderOf(job, takeoff, specification, estimate, plan, daysBetweenTrips, passes)
}

/** Lays out what is chosen, under a stamp. */
export function useBuild(
  order: WorkOrder,
  parts: readonly DocumentPart[],
  memory: PaperMemory,
  day: string | null,
): (stamp: PaperStamp) => PagedDocument {
  const { rooms, people, weeks } = memory
  const { paper } = useJob().header
  return useCallback(
    (stamp) => pagedDocument(order, paper, parts, { rooms, people, weeks, day }, stamp),
    [order, paper, parts, rooms, people, weeks, day],
  )
}
