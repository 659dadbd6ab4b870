import { expect, test } from 'vitest'
import { resolveExisting } from '../../core/project/scopes.ts'
import type { SurfaceRef } from '../../core/project/surface-ref.ts'
import type { Existing, ExistingId, Scope } from '../../core/project/survey-records.ts'
import { holdingFacts, nothingSaid, withFacts } from '../../renderer/panels/walk/existing-facts.ts'
import { twoRooms } from '../sketch/two-rooms.ts'

const roomId = twoRooms().rooms.study?.id
if (roomId === undefined) throw new Error('the study is missing')
const wallId = twoRooms().rooms.study?.corners[0]?.wallId
if (wallId === undefined) throw new Error('the study has walls')
const surface: SurfaceRef = { kind: 'wall', roomId, wallId, zone: 'whole' }
const scopes = {
  surface: { level: 'surface', surface },
  room: { level: 'room', roomId, surfaceClass: 'walls' },
  house: { level: 'house', surfaceClass: 'walls' },
} as const satisfies Record<string, Scope>

function said(id: keyof typeof scopes, facts: Partial<Existing>): Existing {
  return { ...nothingSaid, ...facts, id: id as unknown as ExistingId, scope: scopes[id] }
}

function jobSaying(...records: readonly Existing[]) {
  return { ...twoRooms(), existing: Object.fromEntries(records.map((record) => [record.id, record])) }
}

test('each fact comes from the narrowest record that says it, and stays open where none does', () => {
  const job = jobSaying(
    said('house', { substrate: 'plaster', coat: 'latexFlat', sheen: 'flat' }),
    said('room', { coat: 'oilPaint' }),
    said('surface', { sheen: 'gloss' }),
  )
  expect(resolveExisting(job, surface)).toEqual({
    substrate: 'plaster',
    coat: 'oilPaint',
    sheen: 'gloss',
    depth: null,
    textured: null,
  })
  expect(resolveExisting(jobSaying(), surface)).toEqual(nothingSaid)
})

test('saying one thing records nothing else, and taking the last back leaves no record', () => {
  const made = withFacts(null, scopes.room, () => 'new' as ExistingId, { coat: 'oilPaint' })
  expect(made).toEqual({ id: 'new', scope: scopes.room, ...nothingSaid, coat: 'oilPaint' })
  expect(withFacts(made, scopes.room, () => 'other' as ExistingId, { coat: null })).toBeNull()
})

test('what holds while nothing is said is shown with where it comes from', () => {
  const place = { surfaceClass: 'walls', roomId, surface } as const
  const job = jobSaying(said('house', { coat: 'calcimine' }), said('room', { sheen: 'matte' }))
  const facts = holdingFacts(job, place, scopes.surface)
  expect(facts.coat).toEqual({ own: null, otherwise: { value: 'calcimine', from: 'house' } })
  expect(facts.sheen).toEqual({ own: null, otherwise: { value: 'matte', from: 'room' } })
  expect(facts.substrate.otherwise?.from).toBe('taken')
  expect(facts.depth).toEqual({ own: null, otherwise: null })
  expect(holdingFacts(job, place, scopes.room).sheen.own).toBe('matte')
})
