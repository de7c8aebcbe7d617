export const flagsOf: Readonly<Record<string, readonly string[]>>
export const NODE_FLAGS: readonly string[]
