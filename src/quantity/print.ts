/** An expression tree printed for a reader, its names left as symbols or replaced by figures. */
import type { Tree } from './expression.js'

/** Print with the fewest brackets that keep the meaning. `say` gives the text of a name. */
export function printTree(tree: Tree, say: (name: string) => string = (name) => name): string {
  return print(tree, say, 0)
}

const RANK = { '+': 1, '-': 1, '*': 2, '/': 2, '^': 4 } as const
const SIGN = { '+': ' + ', '-': ' - ', '*': ' × ', '/': ' / ', '^': '^' } as const

function print(tree: Tree, say: (name: string) => string, around: number): string {
  switch (tree.kind) {
    case 'number':
      return tree.text
    case 'call':
      return `${tree.name}(${tree.args.map((each) => print(each, say, 0)).join(', ')})`
    case 'negate':
      return bracket(`-${print(tree.of, say, 3)}`, 3, around)
    case 'name': {
      const text = tree.name === 'pi' ? 'pi' : say(tree.name)
      // "2.62 mm" raised to a power would read as mm squared only, so a figure with its unit is bracketed there
      return around >= 4 && text.includes(' ') && !text.startsWith('(') ? `(${text})` : text
    }
    case 'binary': {
      const rank = RANK[tree.op]
      const rightTighter = tree.op === '-' || tree.op === '/' ? rank + 0.5 : rank
      const left = print(tree.left, say, tree.op === '^' ? rank + 0.5 : rank)
      const right = print(tree.right, say, tree.op === '^' ? 0.25 : rightTighter)
      const raised = tree.op === '^' && tree.right.kind !== 'number' && tree.right.kind !== 'name' ? `(${right})` : right
      return bracket(`${left}${SIGN[tree.op]}${raised}`, rank, around)
    }
  }
}

function bracket(text: string, rank: number, around: number): string {
  return rank < around ? `(${text})` : text
}
