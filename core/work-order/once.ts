/** Works something out when it is asked for the first time, and remembers it. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
