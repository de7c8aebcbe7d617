/** What is read from an object, read once: a joint is tried again with each thing changed that might help, its holes the same. */
export function once<T extends object, V>(read: (of: T) => V): (of: T) => V {
  const known = new WeakMap<T, { readonly value: V }>()
  return (of) => {
    const old = known.get(of)
    if (old) return old.value
    const value = read(of)
    known.set(of, { value })
    return value
  }
}
