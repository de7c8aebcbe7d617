/**
 * Node 20's engine (V8 11.3) gives each object made by `{ ...some, more }` a hidden shape of its own: making one takes a microsecond
 * instead of a tenth, and whoever reads it afterwards cannot know where its fields lie. A spread of nothing before it takes the
 * engine another way, on which such objects share their shape; a derivation takes a fifth less so. Nothing else changes. See
 * docs/decisions/0011. Think again where Node 20 is given up: Chrome's engine of today does without.
 */
export const withSharedShapes = (text) => text.replace(/\{(\s*)\.\.\.(?!null\b)/g, '{$1...null, ...')

/** For the test runner, so that what is tested is what is run. */
export const sharedShapes = {
  name: 'shared shapes',
  enforce: 'pre',
  transform: (code, id) => (/\/(src|bench)\/[^?]*\.ts$/.test(id) ? { code: withSharedShapes(code), map: null } : null),
}
