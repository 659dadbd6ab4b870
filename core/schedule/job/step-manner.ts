import type { Skill } from '../../project/vocabulary.ts'
import type { Step } from '../../specification/types.ts'

/** What a step, or several done in one go, asks of people and does to the room. */
export interface Manner {
  readonly skills: readonly Skill[]
  readonly wet: boolean
  readonly dusty: boolean
  readonly fumes: boolean
  readonly closesRoom: boolean
  /** What is in the brush: product and colour; null for dry work. */
  readonly paint: string | null
  readonly splittable: Step['splittable']
}

export function mannerOf(step: Step): Manner {
  const { wet, dusty, fumes, closesRoom } = step.effects
  return {
    skills: [step.skill],
    wet,
    dusty,
    fumes,
    closesRoom,
    paint: step.productId && `${step.productId}/${step.colourId ?? ''}`,
    splittable: step.splittable,
  }
}

/** Several in one go: all skills, all effects, the strictest pauses. They must fit (`mannersFit`). */
export function joinManners(one: Manner, other: Manner): Manner {
  return {
    skills: sameSkills(one, other) ? one.skills : [...new Set([...one.skills, ...other.skills])].sort(),
    wet: one.wet || other.wet,
    dusty: one.dusty || other.dusty,
    fumes: one.fumes || other.fumes,
    closesRoom: one.closesRoom || other.closesRoom,
    paint: one.paint ?? other.paint,
    splittable: strictest(one.splittable, other.splittable),
  }
}

/** Dust never goes together with wet paint, and a brush holds one paint at a time. */
export function mannersFit(one: Manner, other: Manner): boolean {
  const onePaint = one.paint === null || other.paint === null || one.paint === other.paint
  return onePaint && !((one.wet || other.wet) && (one.dusty || other.dusty))
}

export function sameSkills(one: Manner, other: Manner): boolean {
  return one.skills.join() === other.skills.join()
}

const pauses: readonly Step['splittable'][] = ['no', 'break', 'night']

function strictest(one: Step['splittable'], other: Step['splittable']): Step['splittable'] {
  return pauses[Math.min(pauses.indexOf(one), pauses.indexOf(other))] as Step['splittable']
}
