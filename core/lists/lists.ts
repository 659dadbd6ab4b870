/** What is known to be there: an item of a list, an entry of a table. Throws where it is not, which is a fault of the program. */
export function present<Value>(value: Value | null | undefined): Value {
  if (value === undefined || value === null) throw new Error('something that has to be there is missing')
  return value
}

/** The names of an object's own fields. Only for objects made with just the fields of their type, such as tables of words. */
export function keysOf<Key extends string>(table: { readonly [K in Key]: unknown }): Key[] {
  return Object.keys(table) as Key[]
}

/** An object with a value made for each key. */
export function tableByKey<Key extends string, Made>(
  keys: readonly Key[],
  make: (key: Key) => Made,
): Record<Key, Made> {
  return Object.fromEntries(keys.map((key) => [key, make(key)])) as Record<Key, Made>
}

/** Items by what `keyOf` says of them, keys in the order in which they are come upon. */
export function groupedBy<Item, Key>(
  items: Iterable<Item>,
  keyOf: (item: Item) => Key,
): ReadonlyMap<Key, readonly Item[]> {
  return groupedByEach(items, (item) => [keyOf(item)])
}

/** Items by every key that `keysOf` says of them; one without a key is in no group, one with several is in several. */
export function groupedByEach<Item, Key>(
  items: Iterable<Item>,
  keysOf: (item: Item) => Iterable<Key>,
): ReadonlyMap<Key, readonly Item[]> {
  const groups = new Map<Key, Item[]>()
  for (const item of items) {
    for (const key of keysOf(item)) {
      const group = groups.get(key)
      if (group === undefined) groups.set(key, [item])
      else group.push(item)
    }
  }
  return groups
}

/** An object, a list among them, whose parts can be looked at by their names. */
export function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

/** A group of named parts, not a list. */
export function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return isGroup(value) && !Array.isArray(value)
}

/** Whether a word is one of some words. */
export function isOneOf<Word extends string>(words: readonly Word[], word: string): word is Word {
  const known: readonly string[] = words
  return known.includes(word)
}
