export function withSharedShapes(text: string): string
export const sharedShapes: {
  readonly name: string
  readonly enforce: 'pre'
  readonly transform: (code: string, id: string) => { readonly code: string; readonly map: null } | null
}
