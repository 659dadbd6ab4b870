import { expect, test } from 'vitest'
import { tableOf } from '../../core/project/empty-job.ts'
import { epochMinutes } from '../../core/time/instant.ts'
import { instantOf } from '../../core/time/site-moment.ts'
import { allJobsPicture, jobLetter, stayWords } from '../../renderer/app/all-jobs/all-jobs-picture.ts'
import { startAnswer } from '../../renderer/app/all-jobs/start-answer.ts'
import { plainJob } from '../fixtures/plain-room.ts'

const zone = 'America/New_York'

function stay(jobKey: string, from: string, to: string) {
  return { jobKey, jobId: jobKey, from: instantOf(from, zone), to: instantOf(to, zone) }
}

test('stays stand by their hours between six and six, from a Monday to a Sunday', () => {
  const stays = [stay('elm', '2027-03-31T09:00', '2027-03-31T15:00')]
  const picture = allJobsPicture([{ name: 'Ada', stays }], [], zone, '2027-03-30')
  expect([picture.firstDay % 7, picture.days]).toEqual([4, 7])
  expect(picture.people[0]?.stays).toEqual([{ jobKey: 'elm', date: '2027-03-31', from: 2.25, to: 2.75 }])
})

test('what is long over is not drawn, and an empty book is the week of today', () => {
  const stays = [stay('elm', '2026-01-05T09:00', '2026-01-05T15:00')]
  const old = allJobsPicture([{ name: 'Ada', stays }], [], zone, '2027-03-30')
  expect(old.people[0]?.stays).toEqual([])
  expect(allJobsPicture([], [], zone, '2027-03-30').days).toBe(7)
})

test('a person’s row is said in words, each job once', () => {
  const drawn = [
    { jobKey: 'elm', date: '2027-03-29', from: 0, to: 1 },
    { jobKey: 'oak', date: '2027-03-30', from: 1, to: 2 },
    { jobKey: 'elm', date: '2027-03-31', from: 2, to: 3 },
  ]
  const words = stayWords(
    drawn,
    (key) => key.toUpperCase(),
    (date) => date.slice(8),
  )
  expect(words).toBe('ELM, 2 days from 29 to 31; OAK, 30')
  expect([stayWords([], String, String), jobLetter(0), jobLetter(27)]).toEqual([
    'free all the time',
    'A',
    'B2',
  ])
})

test('a start is said with people and both days; the accepted plan of the job itself keeps nobody from it', () => {
  const job = plainJob()
  const [first] = Object.values(job.crew)
  if (first === undefined) throw new Error('nobody on the crew')
  const hours = [{ from: '08:00', to: '16:00' }]
  const week = { ...first.week, monday: hours, tuesday: hours, wednesday: hours }
  const ada = { ...first, name: 'Ada', week, breaks: [], daysOff: [], partDays: [] }
  const houseRules = { ...job.houseRules, holidays: [], setUpMinutes: 0, cleanUpMinutes: 0 }
  const shop = { ...job, crew: tableOf([ada]), houseRules }
  const [from, to] = ['2027-03-29T08:00', '2027-03-29T09:00'].map((at) => instantOf(at, zone))
  const work = [
    { crewMemberId: first.id, name: 'Ada', from: from ?? epochMinutes(0), to: to ?? epochMinutes(0) },
  ]
  const atWork = [
    { jobKey: 'k', jobId: 'elm', title: 'Elm', startsOn: '2027-03-29', finishesOn: '2027-03-29', work },
  ]
  const asked = { hours: 16, people: 1, from: '2027-03-29', jobId: null }
  expect(startAnswer(shop, atWork, asked).sentences).toEqual([
    'Tue Mar 30, 2027, done on Wed Mar 31, 2027: Ada, with no other job in between.',
  ])
  expect(startAnswer(shop, atWork, { ...asked, jobId: 'elm' }).startsOn).toBe('2027-03-29')
})
