import type { StepOrder } from '../../../core/specification/types.ts'
import { formatMinutes } from '../../../core/units/duration.ts'

/** The waits that an order of two steps asks for; empty where it asks for none. */
export function orderWaitWords(order: StepOrder): string {
  const least = order.minimumWait === 0 ? '' : `At least ${formatMinutes(order.minimumWait)} between. `
  const most = order.maximumWait === null ? '' : `At most ${formatMinutes(order.maximumWait)} between. `
  return least + most
}
