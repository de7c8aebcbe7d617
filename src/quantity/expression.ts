/**
 * The little language a formula is shown in: + - * / ^, parentheses, a few functions, numbers, pi and named inputs.
 * One tree serves the numeric check, the unit algebra and the printed working.
 */

export type Tree =
  | { readonly kind: 'number'; readonly value: number; readonly text: string }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'negate'; readonly of: Tree }
  | { readonly kind: 'binary'; readonly op: '+' | '-' | '*' | '/' | '^'; readonly left: Tree; readonly right: Tree }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Tree[] }

const TOKEN = /\s*(?:(\d+\.?\d*(?:[eE][+-]?\d+)?|\.\d+(?:[eE][+-]?\d+)?)|([A-Za-z_][A-Za-z_0-9]*)|(.))/gy

interface Token {
  readonly kind: 'number' | 'name' | 'sign' | 'end'
  readonly text: string
}

function tokens(text: string): Token[] {
  const found: Token[] = []
  const trimmed = text.trimEnd()
  TOKEN.lastIndex = 0
  while (TOKEN.lastIndex < trimmed.length) {
    const match = TOKEN.exec(trimmed)
    if (!match) throw new Error(`cannot read the expression "${text}"`)
    if (match[1] !== undefined) found.push({ kind: 'number', text: match[1] })
    else if (match[2] !== undefined) found.push({ kind: 'name', text: match[2] })
    else found.push({ kind: 'sign', text: match[3] as string })
  }
  found.push({ kind: 'end', text: 'its end' })
  return found
}

/** Parse an expression; throws with the text and what was expected (a formula is the program's own, so this is a bug). */
export function parse(text: string): Tree {
  const list = tokens(text)
  let at = 0
  const peek = (): Token => list[at] as Token
  const isSign = (sign: string): boolean => peek().kind === 'sign' && peek().text === sign
  const fail = (expected: string): never => {
    throw new Error(`expected ${expected} but found ${peek().text} in the expression "${text}"`)
  }
  const take = (sign: string): void => {
    if (!isSign(sign)) fail(`"${sign}"`)
    at += 1
  }

  const sum = (): Tree => {
    let left = product()
    while (isSign('+') || isSign('-')) {
      const op = list[at++]?.text as '+' | '-'
      left = { kind: 'binary', op, left, right: product() }
    }
    return left
  }
  const product = (): Tree => {
    let left = signed()
    while (isSign('*') || isSign('/')) {
      const op = list[at++]?.text as '*' | '/'
      left = { kind: 'binary', op, left, right: signed() }
    }
    return left
  }
  const signed = (): Tree => {
    if (!isSign('-')) return power()
    at += 1
    return { kind: 'negate', of: signed() }
  }
  const power = (): Tree => {
    const base = atom()
    if (!isSign('^')) return base
    at += 1
    return { kind: 'binary', op: '^', left: base, right: signed() }
  }
  const atom = (): Tree => {
    const token = peek()
    if (token.kind === 'number') {
      at += 1
      return { kind: 'number', value: Number(token.text), text: token.text }
    }
    if (token.kind === 'name') {
      at += 1
      return isSign('(') ? { kind: 'call', name: token.text, args: args() } : { kind: 'name', name: token.text }
    }
    if (!isSign('(')) fail('a number, a name or "("')
    take('(')
    const inner = sum()
    take(')')
    return inner
  }
  const args = (): Tree[] => {
    take('(')
    const all = [sum()]
    while (isSign(',')) {
      at += 1
      all.push(sum())
    }
    take(')')
    return all
  }

  const tree = sum()
  if (peek().kind !== 'end') fail('the end')
  return tree
}

/** Every named input an expression uses, pi left out. */
export function namesIn(tree: Tree): readonly string[] {
  const found = new Set<string>()
  const walk = (node: Tree): void => {
    if (node.kind === 'name' && node.name !== 'pi') found.add(node.name)
    else if (node.kind === 'negate') walk(node.of)
    else if (node.kind === 'binary') [node.left, node.right].forEach(walk)
    else if (node.kind === 'call') node.args.forEach(walk)
  }
  walk(tree)
  return [...found]
}
