export const slabWords = {
  flush: 'Flush',
  panelled: 'Paneled',
  glazed: 'Glazed',
  partGlazed: 'Part glazed',
  louvred: 'Louvered',
} as const
export const sashWords = {
  fixed: 'Fixed',
  doubleHung: 'Double-hung',
  casement: 'Casement',
  hopper: 'Hopper',
} as const
