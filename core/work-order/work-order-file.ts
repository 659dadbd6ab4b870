import type { z } from 'zod'
import type { Job } from '../project/job.ts'
import type { Caution } from '../specification/types.ts'
import { places } from './amount-entry.ts'
import type { WorkOrder } from './document-types.ts'
import type { workOrderSchema } from './output-schemas.ts'
import type { PassEntry, RoomSheet } from './room-sheet/sheet-types.ts'

type WorkOrderFile = z.output<typeof workOrderSchema>

/** What the cover, the room sheets and the color record show, figures unrounded. */
export function workOrderFile(job: Job, order: WorkOrder): WorkOrderFile {
  const { cover, rooms, colorRecord } = order
  return {
    format: 'coatwright-work-order',
    version: 1,
    jobTitle: job.header.title,
    unitSystem: job.header.unitSystem,
    startsOn: order.startsOn,
    finishesOn: order.finishesOn,
    cover: {
      crew: [...cover.crew],
      rooms: cover.rooms.map(({ roomSetId, number, phases }) => ({
        roomSetId,
        number,
        phases: phases.map(({ phase, days }) => ({ phase, days: [...days] })),
      })),
      leadRules: cover.leadRules.map(({ text, source }) => ({ text, source })),
      cautions: cover.cautions.map(cautionEntry),
    },
    rooms: rooms.map(roomEntry),
    colorRecord: {
      paints: colorRecord.paints.map((paint) => ({
        ...paint,
        spareGallons: places(paint.spareGallons),
        roomNames: [...paint.roomNames],
      })),
      care: [...colorRecord.care],
      leadPapers: [...colorRecord.leadPapers],
    },
  }
}

function roomEntry(room: RoomSheet): WorkOrderFile['rooms'][number] {
  return {
    roomSetId: room.roomSetId,
    number: room.number,
    name: room.name,
    storey: room.storey,
    alongside: [...room.alongside],
    personMinutes: places(room.personMinutes),
    firstDay: room.firstDay,
    lastDay: room.lastDay,
    freeAt: room.freeAt,
    promisedBy: room.promisedBy,
    lead: room.lead,
    ceilingHeight: room.ceilingHeight,
    leadSafe: room.leadSafe,
    openings: room.openings.map(({ openingId, letter, words }) => ({ openingId, letter, words })),
    colors: room.colors.map((line) => ({
      ...line,
      gallons: places(line.gallons),
      primerGallons: places(line.primerGallons),
      stepKeys: [...line.stepKeys],
    })),
    unpainted: [...room.unpainted],
    repairs: room.repairs.map((line) => ({ ...line })),
    photos: room.photos.map((line) => ({ ...line })),
    passes: room.passes.map(passEntry),
    handling: [...room.handling],
    cautions: room.cautions.map(cautionEntry),
    holds: room.holds.map(({ key, short, where, reason, who, expected, cleared }) => ({
      key,
      short,
      where,
      reason,
      who,
      expected,
      cleared,
    })),
    notices: room.notices.map(({ sentence, stops }) => ({ sentence, stops })),
    register: room.register.map((line) => ({ ...line })),
    notes: [...room.notes],
  }
}

function passEntry(pass: PassEntry): WorkOrderFile['rooms'][number]['passes'][number] {
  return {
    passKey: pass.passKey,
    number: pass.number,
    kind: pass.kind,
    name: pass.name,
    personMinutes: places(pass.personMinutes),
    waits: pass.waits.map(({ after, atLeast, atMost }) => ({
      after,
      atLeastElapsedMinutes: atLeast,
      atMostElapsedMinutes: atMost,
    })),
    holds: [...pass.holds],
    lines: pass.lines.map(({ what, where, finish, personMinutes }) => ({
      what,
      where,
      finish,
      personMinutes: places(personMinutes),
    })),
  }
}

function cautionEntry({ text, rule }: Caution) {
  return { text, rule }
}
