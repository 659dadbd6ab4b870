/** Works something out when it is asked for the first time, and remembers it. */
export function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** An object whose parts are each made when they are first asked for. */
export function madeWhenAsked<Parts extends object>(
  makers: {
    readonly [Name in keyof Parts]: () => Parts[Name]
  },
): Parts {
  const parts = Object.entries<() => unknown>(makers).map(([name, make]) => [
    name,
    { enumerable: true, get: once(make) },
  ])
  return Object.create(Object.prototype, Object.fromEntries(parts))
}
