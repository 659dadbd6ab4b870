import { commonPractice, type HouseRule } from '../rule.ts'
import { number } from '../step-requests.ts'

/** Steps on the room as a whole are made by `room-steps.ts`; their reasons and switches are kept here. */
function roomStepRule(
  facts: Omit<HouseRule, 'level' | 'order' | 'on' | 'numbers'> & Partial<HouseRule>,
): HouseRule {
  return { on: true, numbers: {}, ...facts, level: 'house', order: [] }
}

const protect = roomStepRule({
  id: 'protect-room',
  theme: 'keptItems',
  title: 'Protect the room',
  found: 'Every room that is worked in.',
  reason: 'Floors and belongings are moved or covered before anything falls on them.',
  source: commonPractice,
  safety: 'dust',
})

const floorsKept = roomStepRule({
  id: 'floors-kept',
  theme: 'keptItems',
  title: 'Floors kept',
  found: 'Floors that stay as they are.',
  reason:
    'The floor stays: it is swept, covered wall to wall and the cover fixed along the baseboard; stairs get a cover that cannot slip.',
  source: commonPractice,
  safety: 'height',
})

const takeOff = roomStepRule({
  id: 'take-off-hardware',
  theme: 'keptItems',
  title: 'Take off hardware, plates and fixtures',
  found: 'Plates, locks, hinges, curtain hardware, light fixtures.',
  reason: 'Hardware is taken off, bagged and labeled, not taped: tape leaves a line and paint on the metal.',
  source: commonPractice,
  safety: 'electricity',
})

const maskInPlace = roomStepRule({
  id: 'mask-in-place',
  theme: 'keptItems',
  title: 'Mask what cannot come off',
  found: 'Fixtures that stay where they are.',
  reason: 'What cannot come off is masked, and unmasked when the last coat is touch dry.',
  source: commonPractice,
  safety: 'none',
  numbers: { feetPerPiece: number(3, 'ft', 'Tape around one piece') },
})

const hanging = roomStepRule({
  id: 'loosen-hanging',
  theme: 'keptItems',
  title: 'Hangings that stay',
  found: 'Wall hangings, mirrors and shelves that stay in the room.',
  reason: 'It is loosened when its wall is worked on, painted behind, and refitted when the paint is dry.',
  source: commonPractice,
  safety: 'none',
})

const alarm = roomStepRule({
  id: 'cover-alarm',
  theme: 'keptItems',
  title: 'Alarms and sensors',
  found: 'Smoke and carbon monoxide alarms, sensors: wired ones are covered, removable ones taken down.',
  reason:
    'Dust and spray spoil an alarm, and a covered one does not protect: it is covered or taken down for the working hours only and put back and tested the same day.',
  source:
    'NFPA 72-2010 17.7.1.11 (protect, then verify or replace); covering for working hours only: common practice',
  safety: 'alarm',
})

const dustDown = roomStepRule({
  id: 'dust-down',
  theme: 'dust',
  title: 'Dust down under a raking light',
  found: 'Every room; cobwebs, dust.',
  reason: 'Cobwebs and dust come off under a raking light before any coat: a coat over dust is a defect.',
  source: commonPractice,
  safety: 'dust',
})

const cleanUp = roomStepRule({
  id: 'clean-up',
  theme: 'keptItems',
  title: 'Put back, clean up, inspect',
  found: 'Every room that was worked in.',
  reason: 'The room goes back to the family whole and clean, and is looked at before they do.',
  source: 'judged unmagnified from 39 in (1 m) or more under finished lighting: PCA P1; common practice',
  safety: 'none',
})

const finishCoat = roomStepRule({
  id: 'finish-coat',
  theme: 'coats',
  title: 'The finish chosen',
  found: 'Every surface that is to be painted.',
  reason: 'The color and sheen chosen for this surface.',
  source: commonPractice,
  safety: 'none',
})

export const keptItemRules = [
  protect,
  floorsKept,
  takeOff,
  maskInPlace,
  hanging,
  alarm,
  dustDown,
  cleanUp,
  finishCoat,
] as const
