/** What the text of the program is changed by before it runs: spreads at the head of an object, and nothing else. */
import ts from 'typescript-tree'
import { describe, expect, it } from 'vitest'
import { withSharedShapes } from '../scripts/shared-shapes.mjs'
import { readTree } from './tree.js'

/** Objects that begin with a spread, and every text the program can tell from another. */
function told(path: string, text: string): { readonly heads: readonly string[]; readonly texts: readonly string[] } {
  const [heads, texts]: [string[], string[]] = [[], []]
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true)
  const visit = (node: ts.Node): void => {
    if (ts.isObjectLiteralExpression(node)) {
      const [first, second] = node.properties
      if (first && ts.isSpreadAssignment(first)) {
        const isAdded = first.expression.kind === ts.SyntaxKind.NullKeyword && second && ts.isSpreadAssignment(second)
        heads.push((isAdded ? second : first).expression.getText(file))
      }
    }
    if (ts.isStringLiteralLike(node) || ts.isTemplateLiteralToken(node) || ts.isRegularExpressionLiteral(node)) texts.push(node.text)
    ts.forEachChild(node, visit)
  }
  visit(file)
  return { heads, texts }
}

describe('the text that runs', () => {
  it('has a spread of nothing before each spread at the head of an object, and nowhere else', () => {
    let heads = 0
    for (const [path, text] of readTree()) {
      if (!/^(src|bench)\/.*\.ts$/.test(path)) continue
      const changed = withSharedShapes(text)
      const [before, after] = [told(path, text), told(path, changed)]
      const bare = (heads: readonly string[]): readonly string[] => heads.map((head) => withSharedShapes(head).replaceAll('...null, ', ''))
      expect([path, bare(after.heads)]).toEqual([path, bare(before.heads)])
      expect([path, after.texts.map((each) => each.replaceAll('...null, ', ''))]).toEqual([path, before.texts])
      expect([path, changed.split('...null, ').length - text.split('...null, ').length]).toEqual([path, before.heads.length])
      heads += before.heads.length
    }
    expect(heads).toBeGreaterThan(300)
  })

  it('makes the same objects', () => {
    const made = new Function(
      'some',
      withSharedShapes('return [{ ...some, more: 1 }, {\n  ...some }, { more: 1, ...some }, { ...some, a: 2 }]'),
    )
    expect(made({ a: 1 })).toEqual([{ a: 1, more: 1 }, { a: 1 }, { more: 1, a: 1 }, { a: 2 }])
  })
})
