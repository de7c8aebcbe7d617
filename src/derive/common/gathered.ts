/** Things by what they go by, in the order they come; one thing may go by several names. */
export function gathered<T>(things: Iterable<T>, namesOf: (thing: T) => readonly string[]): ReadonlyMap<string, readonly T[]> {
  const all = new Map<string, T[]>()
  for (const thing of things)
    for (const name of namesOf(thing)) {
      const known = all.get(name)
      if (known) known.push(thing)
      else all.set(name, [thing])
    }
  return all
}
