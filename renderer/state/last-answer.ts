/**
 * Remembers the last answer for what it is asked of, by identity: parts of the screen share one computation, and a station that is shown
 * again finds it made.
 */
export function lastAnswer<Asked extends readonly unknown[], Value>(
  compute: (...asked: Asked) => Value,
): (...asked: Asked) => Value {
  let last: { readonly asked: Asked; readonly value: Value } | null = null
  return (...asked) => {
    if (last === null || asked.some((each, index) => each !== last?.asked[index])) {
      last = { asked, value: compute(...asked) }
    }
    return last.value
  }
}
