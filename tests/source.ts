/** What a rule can ask of one source file, read from its syntax tree, so that a word in a comment or a string is never taken for code. */
import { posix } from 'node:path'
import ts from 'typescript-tree'

interface Import {
  /** path from the top of the repository for a relative import, otherwise the package's name */
  readonly from: string
  readonly relative: boolean
  /** nothing of it is left when the types are gone */
  readonly typeOnly: boolean
  readonly line: number
}

export interface Source {
  readonly path: string
  readonly lines: number
  readonly imports: readonly Import[]
  /** every place where the node's kind and shape pass the question: its line number */
  readonly where: (asked: (node: ts.Node) => boolean) => readonly number[]
}

export function readSource(path: string, text: string): Source {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true)
  const lineOf = (node: ts.Node): number => file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1
  const imports: Import[] = []
  const visit = (node: ts.Node, see: (node: ts.Node) => void): void => {
    see(node)
    ts.forEachChild(node, (child) => visit(child, see))
  }
  visit(file, (node) => {
    const found = moduleOf(node)
    if (found === null) return
    const relative = found.name.startsWith('.')
    const from = relative ? posix.join(posix.dirname(path), found.name).replace(/\.js$/, '.ts') : found.name
    imports.push({ from, relative, typeOnly: found.typeOnly, line: lineOf(node) })
  })
  return {
    path,
    lines: text.split('\n').length - (text.endsWith('\n') ? 1 : 0),
    imports,
    where: (asked) => {
      const lines: number[] = []
      visit(file, (node) => {
        if (asked(node)) lines.push(lineOf(node))
      })
      return lines
    },
  }
}

/** The module an `import`, `export … from`, `import()` or `import('…').Type` names. */
function moduleOf(node: ts.Node): { name: string; typeOnly: boolean } | null {
  if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) {
    return { name: node.moduleSpecifier.text, typeOnly: isTypeOnly(node.importClause) }
  }
  if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) {
    return { name: node.moduleSpecifier.text, typeOnly: node.isTypeOnly }
  }
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
    const [name] = node.arguments
    return name && ts.isStringLiteral(name) ? { name: name.text, typeOnly: false } : null
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) {
    return { name: node.argument.literal.text, typeOnly: true }
  }
  return null
}

function isTypeOnly(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true
  const named = clause.namedBindings
  if (clause.name || !named || !ts.isNamedImports(named)) return false
  return named.elements.length > 0 && named.elements.every((element) => element.isTypeOnly)
}

/** A name used as a value that this file does not get from a property (`x.process` is not `process`). */
export function usesGlobal(node: ts.Node, names: ReadonlySet<string>): boolean {
  if (!ts.isIdentifier(node) || !names.has(node.text)) return false
  const parent = node.parent
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node && !isLocal(node)
  if (ts.isTypeReferenceNode(parent) || ts.isQualifiedName(parent)) return false
  const declared = parent as { readonly name?: ts.Node }
  if (declared.name === node || ts.isImportSpecifier(parent) || ts.isExportSpecifier(parent)) return false
  return !isLocal(node)
}

/** Whether a name is declared by something that encloses its use: a parameter, or a variable of an enclosing block. */
function isLocal(node: ts.Identifier): boolean {
  const declares = (name: ts.BindingName): boolean =>
    ts.isIdentifier(name) ? name.text === node.text : name.elements.some((e) => ts.isBindingElement(e) && declares(e.name))
  for (let at: ts.Node = node; at; at = at.parent) {
    if (ts.isFunctionLike(at) && at.parameters.some((p) => declares(p.name))) return true
    if (
      ts.isForOfStatement(at) &&
      ts.isVariableDeclarationList(at.initializer) &&
      at.initializer.declarations.some((d) => declares(d.name))
    )
      return true
    const statements = ts.isBlock(at) || ts.isSourceFile(at) ? at.statements : undefined
    if (statements?.some((s) => ts.isVariableStatement(s) && s.declarationList.declarations.some((d) => declares(d.name)))) return true
  }
  return false
}

/** `Date.now()`, `Date()` and `new Date()` read the clock; a date made from what it is given does not. */
export function readsClock(node: ts.Node): boolean {
  if (ts.isPropertyAccessExpression(node)) return isNamed(node.expression, 'Date') && node.name.text === 'now'
  if (ts.isNewExpression(node)) return isNamed(node.expression, 'Date') && (node.arguments?.length ?? 0) === 0
  return ts.isCallExpression(node) && isNamed(node.expression, 'Date')
}

export const readsChance = (node: ts.Node): boolean =>
  ts.isPropertyAccessExpression(node) && isNamed(node.expression, 'Math') && node.name.text === 'random'

const isNamed = (node: ts.Node, name: string): boolean => ts.isIdentifier(node) && node.text === name

/** A class other than one that only gives an error its name. */
export function isPlainClass(node: ts.Node): boolean {
  if (!ts.isClassLike(node)) return false
  const base = node.heritageClauses?.find((clause) => clause.token === ts.SyntaxKind.ExtendsKeyword)?.types[0]?.expression
  return !(base && ts.isIdentifier(base) && /Error$/.test(base.text))
}

export function isDefaultExport(node: ts.Node): boolean {
  if (ts.isExportAssignment(node)) return true
  if (ts.isExportSpecifier(node)) return node.name.text === 'default'
  return ts.canHaveModifiers(node) && (ts.getModifiers(node) ?? []).some((modifier) => modifier.kind === ts.SyntaxKind.DefaultKeyword)
}

/** `style` in markup with a value that is known beforehand: it is built into the template as an attribute, which the policy forbids. */
export const isWrittenStyle = (node: ts.Node): boolean => {
  if (!ts.isJsxAttribute(node) || node.name.getText() !== 'style' || !node.initializer) return false
  if (ts.isStringLiteral(node.initializer)) return true
  const value = ts.isJsxExpression(node.initializer) ? node.initializer.expression : undefined
  if (value === undefined) return false
  if (!ts.isObjectLiteralExpression(value)) return ts.isStringLiteralLike(value)
  return value.properties.some(
    (one) => ts.isPropertyAssignment(one) && (ts.isStringLiteralLike(one.initializer) || ts.isNumericLiteral(one.initializer)),
  )
}

export const isEnum = (node: ts.Node): boolean => ts.isEnumDeclaration(node)

export const calls =
  (name: string) =>
  (node: ts.Node): boolean =>
    ts.isCallExpression(node) && isNamed(node.expression, name)

/** `given.field = …`, `given[i] += …`, `given.n++` or `delete given.x`, where `given` was handed to a function around it. */
export function changesWhatItWasGiven(node: ts.Node): boolean {
  const target = targetOf(node)
  if (!target) return false
  let base: ts.Expression = target
  while (
    ts.isPropertyAccessExpression(base) ||
    ts.isElementAccessExpression(base) ||
    ts.isNonNullExpression(base) ||
    ts.isAsExpression(base)
  ) {
    base = ts.isParenthesizedExpression(base.expression) ? base.expression.expression : base.expression
  }
  return base !== target && ts.isIdentifier(base) && isParameter(base.text, node)
}

function targetOf(node: ts.Node): ts.Expression | null {
  if (ts.isBinaryExpression(node)) {
    const { kind } = node.operatorToken
    return kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment ? node.left : null
  }
  if (ts.isDeleteExpression(node)) return node.expression
  const steps = ts.isPrefixUnaryExpression(node) || ts.isPostfixUnaryExpression(node)
  return steps && (node.operator === ts.SyntaxKind.PlusPlusToken || node.operator === ts.SyntaxKind.MinusMinusToken) ? node.operand : null
}

function isParameter(name: string, from: ts.Node): boolean {
  for (let node: ts.Node | undefined = from.parent; node; node = node.parent) {
    if (ts.isFunctionLike(node) && node.parameters.some((given) => ts.isIdentifier(given.name) && given.name.text === name)) return true
  }
  return false
}
