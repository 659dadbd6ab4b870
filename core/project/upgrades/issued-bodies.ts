/** Data as JSON holds it. */
export type Json = string | number | boolean | null | Json[] | { [name: string]: Json }
type Fields = { readonly [name: string]: Json }

/**
 * Bodies of given-out records had no form and no version once. Each of these brings one into the newest version, or answers null where
 * it is not what the program wrote then. Whether the answer has the form of that version is checked by whoever asks.
 */

/** An accepted plan used to be the whole answer of the search, with what it was judged to be. */
export function upgradePlanBody(data: Json): Json | null {
  if (!isFields(data) || !isFields(data.plan)) return null
  const { plan, value, gapDays } = data
  const { tasks } = plan
  if (!Array.isArray(tasks)) return null
  return {
    version: 1,
    plan: {
      tasks: tasks.map(planTask),
      startsOn: plan.startsOn ?? null,
      finishesOn: plan.finishesOn ?? null,
      roomsOutOfUse: plan.roomsOutOfUse ?? [],
      bound: plan.bound ?? null,
    },
    judged: { ...numbersOf(plan.value), ...numbersOf(value), ...numbersOf({ gapDays: gapDays ?? null }) },
  }
}

function planTask(task: Json): Json {
  if (!isFields(task)) return task
  const { state: _state, dryUntil, ...rest } = task
  return { ...rest, dryUntil: dryUntil ?? null }
}

function numbersOf(value: Json | undefined): { [name: string]: number } {
  const entries = isFields(value) ? Object.entries(value) : []
  return Object.fromEntries(
    entries.filter((entry): entry is [string, number] => typeof entry[1] === 'number'),
  )
}

/** A paper used to be its name, its size and its text; version 1 said so, and version 2 has a number besides. */
export function upgradePaperBody(data: Json): Json | null {
  return isFields(data) && typeof data.html === 'string' ? { number: null, ...data, version: 2 } : null
}

/** A change order used to be the same fields without a version. */
export function upgradeChangeBody(data: Json): Json | null {
  return isFields(data) && isFields(data.totalCents) ? { version: 1, ...data } : null
}

function isFields(data: Json | undefined): data is Fields {
  return typeof data === 'object' && data !== null && !Array.isArray(data)
}
