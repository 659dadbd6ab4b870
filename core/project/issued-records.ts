import { z } from 'zod'
import {
  centsSchema,
  type Frozen,
  idSchema,
  localDateSchema,
  localDateTimeSchema,
  longText,
  shortText,
} from './schema-parts.ts'
import { crewMemberIdSchema } from './shop-records.ts'
import { roomIdSchema } from './sketch-records.ts'
import { conditionIdSchema } from './survey-records.ts'
import { type Json, upgradeChangeBody, upgradePaperBody, upgradePlanBody } from './upgrades/issued-bodies.ts'

export const issuedIdSchema = idSchema<'IssuedId'>()
export type IssuedId = z.output<typeof issuedIdSchema>

/** Longer than the largest paper measured, with its drawings; less than what a host takes in one request. */
const longestPaper = 20_000_000
const taskKey = z.string().min(1).max(400)
const personMinutes = z.number().min(0).max(1e8)
const manyTasks = 20_000

/** A plan as it was accepted: who is where and when, and which rooms the household does without. */
const planBodySchema = z.strictObject({
  version: z.literal(1),
  plan: z.strictObject({
    tasks: z
      .array(
        z.strictObject({
          key: taskKey,
          /** Plans accepted before there were passes lack these three. */
          passKey: taskKey.optional(),
          name: shortText.optional(),
          roomSetId: roomIdSchema.optional(),
          roomId: roomIdSchema,
          stepKeys: z.array(taskKey).max(manyTasks),
          startsAt: localDateTimeSchema,
          endsAt: localDateTimeSchema,
          segments: z
            .array(z.strictObject({ startsAt: localDateTimeSchema, endsAt: localDateTimeSchema }))
            .max(1000),
          crewMemberIds: z.array(crewMemberIdSchema).max(200),
          /** Touch dry then; null for dry work. */
          dryUntil: localDateTimeSchema.nullable(),
        }),
      )
      .max(manyTasks),
    /** What everybody is paid for, by day and person, in minutes. Plans accepted before it was kept lack it. */
    days: z
      .array(
        z.strictObject({
          crewMemberId: crewMemberIdSchema,
          date: localDateSchema,
          paidMinutes: personMinutes,
          setUpMinutes: personMinutes,
          leavingMinutes: personMinutes,
          betweenMinutes: personMinutes,
        }),
      )
      .max(manyTasks)
      .optional(),
    startsOn: localDateSchema,
    finishesOn: localDateSchema,
    roomsOutOfUse: z
      .array(z.strictObject({ roomId: roomIdSchema, from: localDateTimeSchema, to: localDateTimeSchema }))
      .max(manyTasks),
    /** No plan could finish before; null where that was not worked out. */
    bound: z.strictObject({ finishesOn: localDateSchema, gapDays: z.int().min(0).max(100_000) }).nullable(),
  }),
  /** What the plan was judged to be when it was accepted, by the names of that time. For reading only. */
  judged: z.record(z.string().max(60), z.number()),
})
export type PlanBody = Frozen<z.output<typeof planBodySchema>>

/** A paper as it was printed or saved. */
const paperBodySchema = z.strictObject({
  version: z.literal(2),
  /** Counted over the papers of the job, and printed on it; papers given out before they were counted have none. */
  number: z.int().min(1).max(1_000_000).nullable(),
  name: shortText.min(1),
  size: z.enum(['letter', 'a4']),
  html: z.string().max(longestPaper),
})
export type PaperBody = Frozen<z.output<typeof paperBodySchema>>

/** What was agreed when something was found on site: the job before it and after it. */
const changeBodySchema = z.strictObject({
  version: z.literal(1),
  conditionId: conditionIdSchema,
  found: shortText,
  minutes: z.strictObject({ before: personMinutes, after: personMinutes }),
  totalCents: z.strictObject({ before: centsSchema, after: centsSchema }),
  finishesOn: z.strictObject({ before: localDateSchema.nullable(), after: localDateSchema.nullable() }),
  /** Steps that came and went, in words. */
  added: z.array(longText).max(manyTasks),
  removed: z.array(longText).max(manyTasks),
})

/** A body that this program cannot open. It is carried as it is, into every file and back. */
interface KeptBody {
  readonly version: null
  readonly kept: Json
}

const misfit = 'this is not the form of its version'

/**
 * A body of the version that this program writes, `newest`, has to have its form. One of a version before, or without one, is
 * upgraded where it fits; what does not fit, and what a newer program wrote, is kept.
 */
function bodySchema<Body extends z.ZodType>(
  newest: number,
  upgrade: (data: Json) => Json | null,
  known: Body,
) {
  const isBefore = (version: Json | undefined) =>
    version === undefined || (typeof version === 'number' && version < newest)
  const kept = z.codec(
    z.json().refine((data) => versionOf(data) !== newest, misfit),
    z.custom<KeptBody | z.output<Body>>((value) => typeof value === 'object' && value !== null),
    {
      decode: (data): KeptBody | z.output<Body> => {
        const upgraded = isBefore(versionOf(data)) ? upgrade(data) : null
        const read = upgraded === null ? null : known.safeParse(upgraded)
        return read?.success ? read.data : { version: null, kept: data }
      },
      // Anything else was tried in the known form before and did not fit it.
      encode: (body, { issues }) => {
        if (isKept(body)) return body.kept
        issues.push({ code: 'custom', input: body, message: misfit })
        return null
      },
    },
  )
  return z.union([known, kept])
}

function versionOf(data: Json): Json | undefined {
  return typeof data === 'object' && data !== null && !Array.isArray(data) ? data.version : undefined
}

function isKept(body: unknown): body is KeptBody {
  return typeof body === 'object' && body !== null && 'kept' in body
}

function issuedAs<Kind extends string, Body extends z.ZodType>(kind: Kind, body: Body) {
  return z.strictObject({ id: issuedIdSchema, kind: z.literal(kind), issuedAt: localDateTimeSchema, body })
}

/** A frozen copy of what was given to somebody: it never changes when the job does. */
export const issuedSchema = z.discriminatedUnion('kind', [
  issuedAs('plan', bodySchema(1, upgradePlanBody, planBodySchema)),
  issuedAs('workOrder', bodySchema(2, upgradePaperBody, paperBodySchema)),
  issuedAs('estimate', bodySchema(2, upgradePaperBody, paperBodySchema)),
  issuedAs('forClient', bodySchema(2, upgradePaperBody, paperBodySchema)),
  issuedAs('changeOrder', bodySchema(1, upgradeChangeBody, changeBodySchema)),
])
export type Issued = Frozen<z.output<typeof issuedSchema>>

export type IssuedPaper = Extract<Issued, { readonly kind: 'workOrder' | 'estimate' | 'forClient' }>

/** A document that was printed or saved; what else was given out, as an accepted plan, is no paper. */
export function isPaper(issued: Issued): issued is IssuedPaper {
  return issued.kind === 'workOrder' || issued.kind === 'estimate' || issued.kind === 'forClient'
}

/** The number of the next paper that is given out: one more than any, and than there are papers. */
export function nextPaperNumber(issued: readonly Issued[]): number {
  const papers = issued.filter(isPaper)
  const numbers = papers.map(({ body }) => (body.version === null ? 0 : (body.number ?? 0)))
  return Math.max(papers.length, ...numbers) + 1
}

/** What is said of a record that this program keeps and cannot open. */
export const sealedWords = 'Kept, cannot be opened by this version'
