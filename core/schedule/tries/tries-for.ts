/** Tasks up to which all tries are made. */
const usualTasks = 250

/** Tries for a number of tasks: a try takes longer with the square of them and brings less, so that a larger house gets fewer. */
export function triesFor(tasks: number, most: number, least: number): number {
  const share = Math.min(1, (usualTasks / Math.max(1, tasks)) ** 3)
  return Math.max(least, Math.round(most * share))
}
