/** How far a plan can be from the best at most, in days. Small steps are joined into tasks before anything is proved, so the words say of what. */
export function gapWords(gapDays: number): string {
  if (gapDays <= 0) return 'The last day is proved best for these tasks.'
  return `At most ${gapDays === 1 ? '1 day' : `${gapDays} days`} from the best possible for these tasks.`
}
