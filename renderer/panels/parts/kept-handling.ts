import type { KeptItem } from '../../../core/project/survey-records.ts'
import {
  type KeptItemHandling,
  type KeptItemKind,
  keptItemHandlings,
} from '../../../core/project/vocabulary.ts'

export const alarms: ReadonlySet<KeptItemKind> = new Set<KeptItemKind>([
  'smokeAlarm',
  'carbonMonoxideAlarm',
  'sensor',
])

export function usualHandling(
  kind: KeptItemKind,
  wired: boolean,
): { handling: KeptItemHandling; wired: boolean } {
  if (kind === 'hanging') return { handling: 'loosen', wired: false }
  if (alarms.has(kind)) return { handling: wired ? 'coverDaily' : 'takeOff', wired }
  return { handling: 'takeOff', wired: false }
}

/** What is wired cannot come down. */
export function handlingsFor(item: Pick<KeptItem, 'wired'>): readonly KeptItemHandling[] {
  return item.wired ? ['coverDaily', 'maskInPlace'] : keptItemHandlings
}
