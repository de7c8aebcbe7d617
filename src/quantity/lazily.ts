/** What nobody may ask for is worked out when somebody does, and once. */
export function lazily<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}
