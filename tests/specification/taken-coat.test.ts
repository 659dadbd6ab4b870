import { expect, test } from 'vitest'
import { hasStep, type OneSurface, specifyOne } from './one-surface.ts'

const unsaid = (surfaceClass: OneSurface['surfaceClass'], yearBuilt: number | null) =>
  specifyOne({
    surfaceClass,
    existing: { substrate: null, coat: null, sheen: null, depth: null, textured: null },
    job: { header: { yearBuilt } },
  })

test('walls of a house of 1995 are not sanded and primed for want of a word, and somebody is asked to test them', () => {
  const modern = unsaid('walls', 1995)
  expect(['walls/sand/1', 'walls/prime/1'].filter((key) => hasStep(modern, key))).toEqual([])
  expect(modern.holds).toEqual([])
  const asked = modern.notices.filter(({ sentence }) => sentence.startsWith('Latex is taken'))
  expect(asked.map(({ surfaceKeys }) => surfaceKeys)).toEqual([['wall:r:north:whole']])
})

test('what nobody has tested in an older house, or one of unknown age, is treated as the worst likely', () => {
  for (const year of [1979, 1890, null]) {
    const older = unsaid('walls', year)
    expect(['walls/sand/1', 'walls/prime/1'].filter((key) => hasStep(older, key))).toHaveLength(2)
    expect(older.notices.filter(({ sentence }) => sentence.startsWith('Latex is taken'))).toEqual([])
  }
})

test('woodwork counts as old oil paint until 2000, then as glossy latex that is dulled without a primer', () => {
  const primed = (year: number) => hasStep(unsaid('trim', year), 'trim/prime/1')
  expect([primed(1999), primed(2000)]).toEqual([true, false])
  expect(hasStep(unsaid('trim', 2000), 'trim/sand/1')).toBe(true)
})

test('once somebody has said that it is latex, nobody is asked any more', () => {
  const said = specifyOne({ surfaceClass: 'walls', job: { header: { yearBuilt: 1995 } } })
  expect(said.notices.filter(({ sentence }) => sentence.startsWith('Latex is taken'))).toEqual([])
})
