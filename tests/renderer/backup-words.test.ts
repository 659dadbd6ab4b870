import { expect, test } from 'vitest'
import { shutReasons, waysOut } from '../../core/contract/book.ts'
import {
  agoWords,
  shutTitles,
  sizeWords,
  takenWords,
  wayWords,
} from '../../renderer/app/backups/backup-words.ts'

test('how long ago is said in the largest unit that fits', () => {
  const minute = 60_000
  const words = [-5, 0, 1, 59, 60, 119, 47 * 60 + 59, 48 * 60, 400 * 24 * 60].map((minutes) =>
    agoWords(minutes * minute),
  )
  expect(words).toEqual([
    'just now',
    'just now',
    '1 minute ago',
    '59 minutes ago',
    '1 hour ago',
    '1 hour ago',
    '47 hours ago',
    '2 days ago',
    '400 days ago',
  ])
})

test('date, jobs and size of a backup are said in words', () => {
  expect(takenWords('2027-03-29T08:05')).toBe('Mon Mar 29, 2027, 8:05 am')
  expect(sizeWords({ jobCount: 1, bytes: 449_000 })).toBe('1 job · 0.4 MB')
  expect(sizeWords({ jobCount: 0, bytes: 12_000_000 })).toBe('0 jobs · 12.0 MB')
  expect(sizeWords({ jobCount: null, bytes: 50_000 })).toBe('jobs not counted · 0.1 MB')
})

test('every reason and every way out has words of its own', () => {
  expect(new Set(shutReasons.map((reason) => shutTitles[reason])).size).toBe(shutReasons.length)
  expect(new Set(waysOut.map((way) => wayWords[way].button)).size).toBe(waysOut.length)
})
