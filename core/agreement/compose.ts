import type { JobChange } from '../project/agreement-records.ts'
import { type Job, records } from '../project/job.ts'
import { ownAt, resolveFinish, roomOfSurface, surfaceClassOf } from '../project/scopes.ts'
import type { RoomId } from '../project/sketch-records.ts'
import type { ColourId, Finish, Scope } from '../project/survey-records.ts'
import type { ProductClass, Sheen, SurfaceClass } from '../project/vocabulary.ts'

/** What shall be otherwise. */
export type Wish =
  | { readonly kind: 'leaveOut' }
  | { readonly kind: 'paint' }
  | { readonly kind: 'color'; readonly colourId: ColourId }
  | { readonly kind: 'sheen'; readonly sheen: Sheen }
  | { readonly kind: 'product'; readonly productClass: ProductClass }
  | { readonly kind: 'moreCoats'; readonly coats: number }

/** A room, or with null the whole house, and which of its surfaces. */
export interface WishPlace {
  readonly roomId: RoomId | null
  readonly surfaceClasses: readonly SurfaceClass[]
}

/**
 * The changes to the job that give a part of it what is wished. What was set apart inside the part (a room of the house, a single surface) goes
 * along where it is painted; a color goes only to what has the color of the part.
 */
export function composeChanges(job: Job, part: WishPlace, wish: Wish): readonly JobChange[] {
  return part.surfaceClasses.flatMap((surfaceClass) => {
    const scope: Scope =
      part.roomId === null
        ? { level: 'house', surfaceClass }
        : { level: 'room', roomId: part.roomId, surfaceClass }
    const own = ownAt(job.finishes, scope) ?? ownAt(job.finishes, { level: 'house', surfaceClass })
    const apart =
      wish.kind === 'paint' ? [] : setApart(job, scope).filter((finish) => goesAlong(finish, own, wish))
    return [scope, ...apart.map((finish) => finish.scope)].map(
      (each): JobChange => ({
        kind: 'finish',
        scope: each,
        set: setOf(wish),
      }),
    )
  })
}

function setOf(wish: Wish): Extract<JobChange, { readonly kind: 'finish' }>['set'] {
  switch (wish.kind) {
    case 'leaveOut':
      return { paint: false }
    case 'paint':
      return { paint: true }
    case 'color':
      return { colourId: wish.colourId }
    case 'sheen':
      return { sheen: wish.sheen }
    case 'product':
      return { productClass: wish.productClass }
    case 'moreCoats':
      return { moreCoats: wish.coats }
  }
}

/** Finishes of a narrower scope inside a wider one. */
function setApart(job: Job, scope: Exclude<Scope, { readonly level: 'surface' }>): readonly Finish[] {
  const inside = (roomId: RoomId | null) => scope.level === 'house' || scope.roomId === roomId
  return records(job.finishes).filter(({ scope: own }) => {
    if (own.level === 'house') return false
    if (own.level === 'room') return scope.level === 'house' && own.surfaceClass === scope.surfaceClass
    return surfaceClassOf(job, own.surface) === scope.surfaceClass && inside(roomOfSurface(job, own.surface))
  })
}

function goesAlong(finish: Finish, wide: Finish | undefined, wish: Wish): boolean {
  return finish.paint && (wish.kind !== 'color' || finish.colourId === wide?.colourId)
}

/** Whether a surface is painted as the job stands. */
export function isPainted(job: Job, surface: Parameters<typeof resolveFinish>[1]): boolean {
  return resolveFinish(job, surface)?.paint ?? false
}
