import type { Opening } from '../../../../core/project/sketch-records.ts'

export type OpeningChange = Partial<Omit<Opening, 'id'>>

export interface OpeningPartProps {
  readonly opening: Opening
  readonly set: (change: OpeningChange) => void
}
