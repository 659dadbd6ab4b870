import type { BuiltItem } from '../project/built-records.ts'

/** A radiator to begin with; shop assumption, to be changed to what is there. */
export const firstRadiator: Omit<Extract<BuiltItem, { kind: 'radiator' }>, 'id' | 'roomId' | 'name'> = {
  kind: 'radiator',
  pattern: 'column',
  columns: 3,
  heightInches: 38,
  sections: 8,
}
