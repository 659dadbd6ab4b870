import type { TrimKind } from '../project/vocabulary.ts'
import { feet, inches, type Length, zeroLength } from '../units/length.ts'

interface TrimSize {
  readonly height: Length
  readonly girth: Length
  readonly level: Length
}

/** Sizes a new run starts with; shop assumption, to be changed to what is there. */
export const firstTrimSizes: Readonly<Record<TrimKind, TrimSize>> = {
  baseboard: { height: inches(5.5), girth: inches(7), level: zeroLength },
  crown: { height: inches(3.5), girth: inches(5), level: zeroLength },
  pictureRail: { height: inches(1.75), girth: inches(3), level: feet(7) },
  chairRail: { height: inches(2.5), girth: inches(4), level: inches(32) },
  wainscotCap: { height: inches(1.5), girth: inches(4), level: inches(36) },
}
