import { groupedByEach } from '../lists/lists.ts'
import type { Passes, PassKind } from '../passes/pass-types.ts'
import { type Job, records } from '../project/job.ts'
import { gravestFirst } from '../specification/cautions.ts'
import type { Specification } from '../specification/types.ts'
import { compareText } from '../words/text.ts'
import type { Cover, CoverRoom, PhaseDays } from './document-types.ts'
import { leadPractice } from './lead-rules.ts'
import { type Phase, phaseOf } from './phases.ts'
import type { RoomSheet } from './room-sheet/sheet-types.ts'
import type { WorkPlan, WorkPlanTask } from './work-plan.ts'

/** What stands once for the whole job; rooms by their numbers. */
export function coverOf(
  job: Job,
  specification: Specification,
  plan: WorkPlan,
  passes: Passes,
  sheets: readonly RoomSheet[],
): Cover {
  const isLeadSafe = sheets.some(({ leadSafe }) => leadSafe)
  const ofHouse = specification.notices.filter(({ hold, roomId }) => !hold && roomId === null)
  return {
    phones: job.header.phones,
    access: job.header.access,
    rooms: coverRooms(plan, passes, sheets),
    crew: records(job.crew).map((person) => person.name),
    holds: sheets.flatMap(({ number, name, holds }) =>
      holds.map((hold) => ({ ...hold, roomNumber: number, roomName: name })),
    ),
    toDecide: specification.notices.filter((notice) => notice.hold && notice.holdKey === undefined),
    notices: ofHouse.filter(({ kind }) => kind !== 'leadSafe' || !isLeadSafe),
    leadRules: isLeadSafe ? leadPractice : [],
    cautions: gravestFirst(specification.steps.flatMap((step) => step.cautions)),
  }
}

function coverRooms(
  { tasks }: WorkPlan,
  { passes }: Passes,
  sheets: readonly RoomSheet[],
): readonly CoverRoom[] {
  const passOf = new Map(passes.flatMap((pass) => pass.stepKeys.map((key) => [key, pass] as const)))
  const tasksOf = groupedByEach(
    tasks,
    ({ stepKeys }) => new Set(stepKeys.flatMap((key) => passOf.get(key)?.roomSetId ?? [])),
  )
  return sheets.map((sheet) => {
    const kindOf = (stepKey: string) => {
      const pass = passOf.get(stepKey)
      return pass?.roomSetId === sheet.roomSetId ? pass.kind : undefined
    }
    return coverRoom(sheet, phaseDays(tasksOf.get(sheet.roomSetId) ?? [], kindOf))
  })
}

function coverRoom(sheet: RoomSheet, phases: CoverRoom['phases']): CoverRoom {
  const { roomSetId, number, name, storey, alongside, firstDay, lastDay, freeAt, promisedBy } = sheet
  const { personMinutes } = sheet
  return {
    roomSetId,
    number,
    name,
    storey,
    alongside,
    firstDay,
    lastDay,
    freeAt,
    promisedBy,
    personMinutes,
    phases,
  }
}

/** Days on which a room is worked in, by phase; days in a row of one phase are one stretch. */
function phaseDays(
  tasks: readonly WorkPlanTask[],
  kindOf: (stepKey: string) => PassKind | undefined,
): readonly PhaseDays[] {
  const days = tasks
    .flatMap(({ stepKeys, segments }) => {
      const kind = stepKeys.map(kindOf).find((each) => each !== undefined)
      if (kind === undefined) return []
      return segments.map(({ startsAt }) => ({
        phase: phaseOf(kind),
        day: startsAt.slice(0, 10),
        startsAt,
      }))
    })
    .toSorted((one, other) => compareText(one.startsAt, other.startsAt))
  const stretches: { phase: Phase; days: string[] }[] = []
  for (const { phase, day } of days) {
    const last = stretches.at(-1)
    if (last?.phase === phase) {
      if (last.days.at(-1) !== day) last.days.push(day)
    } else stretches.push({ phase, days: [day] })
  }
  return stretches
}
