import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
const borders = /^src\/(schema|text|chart|catalogue|repl)\//

/** Expressions at module level that a bundler must keep, because working them out could do something. */
function runsAtImport(path: string): string[] {
  const code = readFileSync(`${root}${path}`, 'utf8')
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true)
  const found: string[] = []
  const look = (node: ts.Node): void => {
    if (ts.isArrowFunction(node) || ts.isFunctionExpression(node) || ts.isTypeNode(node)) return
    const harmless =
      ts.isLiteralExpression(node) ||
      ts.isArrayLiteralExpression(node) ||
      ts.isObjectLiteralExpression(node) ||
      ts.isPropertyAssignment(node) ||
      ts.isShorthandPropertyAssignment(node) ||
      ts.isMethodDeclaration(node) ||
      ts.isIdentifier(node) ||
      ts.isPrefixUnaryExpression(node) ||
      ts.isAsExpression(node) ||
      ts.isSatisfiesExpression(node) ||
      ts.isParenthesizedExpression(node) ||
      node.kind === ts.SyntaxKind.TrueKeyword ||
      node.kind === ts.SyntaxKind.FalseKeyword ||
      node.kind === ts.SyntaxKind.NullKeyword
    if (!harmless) {
      found.push(
        `${path}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1} ${node.getText().split('\n')[0]?.slice(0, 60)}`,
      )
      return
    }
    if (ts.isMethodDeclaration(node)) return
    node.forEachChild(look)
  }
  for (const statement of source.statements) {
    if (ts.isVariableStatement(statement)) {
      for (const declaration of statement.declarationList.declarations)
        if (declaration.initializer) look(declaration.initializer)
    } else if (ts.isExpressionStatement(statement) || ts.isForStatement(statement) || ts.isIfStatement(statement)) {
      found.push(`${path}:${source.getLineAndCharacterOfPosition(statement.getStart()).line + 1} a statement`)
    }
  }
  return found
}

describe('importing the core', () => {
  it('works nothing out: constants are literals, so that an import brings only what it uses', () => {
    const files = execFileSync('git', ['ls-files', 'src/*.ts'], { cwd: root, encoding: 'utf8' }).trim().split('\n')
    expect(files.filter((path) => !borders.test(path)).flatMap(runsAtImport)).toEqual([])
  })
})
