import type { StepOrder } from '../../../core/specification/types.ts'
import { minutesText } from '../parts/minutes.ts'

/** The waits that an order of two steps asks for; empty where it asks for none. */
export function orderWaitWords(order: StepOrder): string {
  const least = order.minimumWait === 0 ? '' : `At least ${minutesText(order.minimumWait)} between. `
  const most = order.maximumWait === null ? '' : `At most ${minutesText(order.maximumWait)} between. `
  return least + most
}
