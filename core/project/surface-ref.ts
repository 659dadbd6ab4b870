import { z } from 'zod'
import { builtItemIdSchema } from './built-records.ts'
import type { Frozen } from './schema-parts.ts'
import { openingIdSchema, roomIdSchema, trimRunIdSchema, wallIdSchema } from './sketch-records.ts'

/** `whole` for a wall without a rail or wainscot; else the zone under or over it. */
const wallZones = ['whole', 'lower', 'upper'] as const
export type WallZone = (typeof wallZones)[number]

export const openingParts = ['casing', 'jamb', 'slab', 'sash', 'stool'] as const
export type OpeningPart = (typeof openingParts)[number]

/** Names one paintable surface. An opening's parts belong to the side (near, far) they are painted from. */
export const surfaceRefSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('wall'),
    roomId: roomIdSchema,
    wallId: wallIdSchema,
    zone: z.enum(wallZones),
  }),
  z.strictObject({ kind: z.literal('ceiling'), roomId: roomIdSchema }),
  z.strictObject({ kind: z.literal('floor'), roomId: roomIdSchema }),
  z.strictObject({ kind: z.literal('trim'), roomId: roomIdSchema, trimRunId: trimRunIdSchema }),
  z.strictObject({
    kind: z.literal('opening'),
    openingId: openingIdSchema,
    side: z.enum(['near', 'far']),
    part: z.enum(openingParts),
  }),
  z.strictObject({ kind: z.literal('built'), roomId: roomIdSchema, builtItemId: builtItemIdSchema }),
])
export type SurfaceRef = Frozen<z.output<typeof surfaceRefSchema>>

/** A stable text for maps and step keys, e.g. `wall:dining:north:upper`. */
export function surfaceKey(ref: SurfaceRef): string {
  switch (ref.kind) {
    case 'wall':
      return `wall:${ref.roomId}:${ref.wallId}:${ref.zone}`
    case 'ceiling':
      return `ceiling:${ref.roomId}`
    case 'floor':
      return `floor:${ref.roomId}`
    case 'trim':
      return `trim:${ref.roomId}:${ref.trimRunId}`
    case 'opening':
      return `opening:${ref.openingId}:${ref.side}:${ref.part}`
    case 'built':
      return `built:${ref.roomId}:${ref.builtItemId}`
  }
}
