import { expect, test } from 'vitest'
import { type LeadWork, leadVerdict } from '../../core/specification/lead.ts'

/** 40 CFR 745.83 (minor repair and maintenance) and 745.85(a)(3). What is from memory says so in its name. */
const work: LeadWork = {
  yearBuilt: 1950,
  place: 'interior',
  squareFeet: 0,
  earlierSquareFeet: 0,
  removedSquareFeet: 0,
  replacesWindow: false,
  demolishes: false,
  prohibitedPractice: false,
}

test.each([
  ['6.0 sq ft inside, no prohibited practice', { squareFeet: 6 }, 'belowThreshold'],
  ['6.01 sq ft inside', { squareFeet: 6.01 }, 'covered'],
  ['3 sq ft with a window replaced', { squareFeet: 3, replacesWindow: true }, 'covered'],
  ['3 sq ft with a torch', { squareFeet: 3, prohibitedPractice: true }, 'covered'],
  ['demolition of a painted surface', { squareFeet: 1, demolishes: true }, 'covered'],
  ['20 sq ft outside', { place: 'exterior', squareFeet: 20 }, 'belowThreshold'],
  ['20.1 sq ft outside', { place: 'exterior', squareFeet: 20.1 }, 'covered'],
  [
    '4 sq ft now and 3 within the 30 days before (30 days: from memory)',
    { squareFeet: 4, earlierSquareFeet: 3 },
    'covered',
  ],
  ['a component of 7 sq ft taken out whole', { removedSquareFeet: 7 }, 'covered'],
  ['a house of 1977', { yearBuilt: 1977, squareFeet: 7 }, 'covered'],
  ['a house of 1978', { yearBuilt: 1978, squareFeet: 700 }, 'outsideRule'],
  ['a house of unknown age counts as old', { yearBuilt: null, squareFeet: 7 }, 'covered'],
] as const)('%s', (_, changes, expected) => {
  expect(leadVerdict({ ...work, ...changes }).kind).toBe(expected)
})
