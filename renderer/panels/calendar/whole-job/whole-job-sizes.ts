import type { ReactNode } from 'react'
import type { LengthUnitSystem } from '../../../../core/units/length.ts'
import type { Picture } from './picture.ts'

export const rowNameWidth = 172
export const rowHeight = 30
export const personHeight = 24
export const headHeight = 34

/** A word needs about so many pixels a letter in the small type of the drawing. */
export const letterWidth = 6.2

export interface WholeJobProps {
  readonly picture: Picture
  /** Width there is, names included, in pixels. */
  readonly width: number
  readonly system: LengthUnitSystem
  readonly roomName: (roomSetId: string) => string
  readonly personName: (id: string) => string
  readonly pickedKey: string | null
  /** First task of a block that is picked. */
  readonly onPick: (taskKey: string) => void
  readonly corner: ReactNode
}

export interface HalfDayPlacing {
  readonly place: (half: number) => number
}
