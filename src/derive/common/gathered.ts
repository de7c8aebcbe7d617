/** Things by what they go by, in the order they come; one thing may go by several names, and stands once under each. */
export function gathered<T>(things: Iterable<T>, namesOf: (thing: T) => readonly string[]): ReadonlyMap<string, readonly T[]> {
  const all = new Map<string, T[]>()
  for (const thing of things)
    for (const name of namesOf(thing)) {
      const known = all.get(name)
      if (!known) all.set(name, [thing])
      else if (known[known.length - 1] !== thing) known.push(thing)
    }
  return all
}
