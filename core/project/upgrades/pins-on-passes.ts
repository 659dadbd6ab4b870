import { isFields } from '../../lists/lists.ts'
import type { FileUpgrade } from './file-data.ts'

/**
 * Version 2 held tasks, whose keys were those of passes or, before there were any, of steps. The words stay as they are: a plan looks up the
 * pass that has the step.
 */
export const withPinsOnPasses: FileUpgrade = (data) => {
  const { pins } = data
  return Array.isArray(pins) ? { ...data, pins: pins.map(pinOnPass) } : data
}

function pinOnPass(pin: unknown): unknown {
  if (!isFields(pin) || !('taskKey' in pin)) return pin
  const { taskKey, ...rest } = pin
  return { ...rest, passKey: taskKey }
}

/** Version 2 looked for one kind of plan. */
export const withPlanAim: FileUpgrade = (data) =>
  isFields(data.header) ? { ...data, header: { planFor: 'balanced', ...data.header } } : data
