/** How a painted surface is judged; printed with the sign-off and the punch list. */
export const viewingRule = {
  text: 'Judged without magnification from 39 in (1 m) or more, under the finished lighting, from a normal viewing position: color, texture, hiding and sheen look uniform.',
  source: 'PCA standard P1, wording and distance as quoted by trade sources',
} as const
