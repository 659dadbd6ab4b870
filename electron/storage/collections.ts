import type { CollectionName } from '../../core/project/job.ts'

/** The table each collection of a job is kept in. */
export const tableNames = {
  storeys: 'storeys',
  rooms: 'rooms',
  openings: 'openings',
  ceilingOpenings: 'ceiling_openings',
  trimRuns: 'trim_runs',
  builtItems: 'built_items',
  keptItems: 'kept_items',
  existing: 'existing',
  conditions: 'conditions',
  photos: 'photos',
  holds: 'holds',
  colours: 'colours',
  finishes: 'finishes',
  products: 'products',
  crew: 'crew',
  rates: 'rates',
  rules: 'rules',
  pins: 'pins',
  marks: 'marks',
  issued: 'issued',
  options: 'options',
  dealings: 'dealings',
} as const satisfies Record<CollectionName, string>
