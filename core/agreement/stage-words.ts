import type { Stage } from './agreement.ts'

/** What is said of where a job stands. */
export const stageWords: Readonly<Record<Stage, string>> = {
  notQuoted: 'Not quoted yet',
  quoted: 'Quoted',
  lost: 'Lost',
  accepted: 'Accepted',
  underWay: 'Under way',
  finished: 'Finished',
  paid: 'Paid',
}
