import type { Pin } from '../project/progress-records.ts'
import type { Pass, Passes } from './pass-types.ts'

/** The pass that a pin holds: the one it names, or the one with the step it names; undefined where neither is there any more. */
export function passOfPin({ passes }: Pick<Passes, 'passes'>, { passKey }: Pin): Pass | undefined {
  return (
    passes.find(({ key }) => key === passKey) ?? passes.find(({ stepKeys }) => stepKeys.includes(passKey))
  )
}

/** The pins by the passes they hold. One that holds nothing any more keeps its key; where two hold the same pass the later one counts. */
export function pinsOnPasses(passes: Pick<Passes, 'passes'>, pins: readonly Pin[]): readonly Pin[] {
  const byPass = new Map(
    pins.map((pin) => {
      const passKey = passOfPin(passes, pin)?.key ?? pin.passKey
      return [passKey, { ...pin, passKey }]
    }),
  )
  return [...byPass.values()]
}
