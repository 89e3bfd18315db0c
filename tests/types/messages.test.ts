import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** What the compiler says about a line of code that uses the package. */
function complaints(code: string): string {
  const file = `${root}tests/types/virtual.ts`
  const options: ts.CompilerOptions = {
    strict: true,
    noEmit: true,
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    skipLibCheck: true,
    types: [],
    paths: { porewater: [`${root}src/quantity/index.ts`] },
  }
  const host = ts.createCompilerHost(options)
  const read = host.getSourceFile.bind(host)
  host.getSourceFile = (name, ...rest) =>
    name === file ? ts.createSourceFile(name, code, ts.ScriptTarget.ES2022, true) : read(name, ...rest)
  host.fileExists = (name) => name === file || ts.sys.fileExists(name)
  const program = ts.createProgram([file], options, host)
  const found = program.getSemanticDiagnostics(program.getSourceFile(file))
  return found.map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n')).join('\n')
}

describe('a wrong unit gets a short message that says what to type', () => {
  it('names the constructors of the kind that was wanted', () => {
    const message = complaints(
      `import { metres, type Volume } from 'porewater'\nexport const v: Volume = metres(11.25)\n`,
    )
    expect(message).toContain('volume in litres, from litres(), millilitres() or scale()')
    expect(message.length).toBeLessThan(500)
  })
  it('tells to name the kind of a share or an EC that was kept in a variable', () => {
    expect(
      complaints(
        `import { percent, type DrainFraction } from 'porewater'\nconst p = percent(15)\nexport const d: DrainFraction = p\n`,
      ),
    ).toContain('annotate it as DrainFraction')
    expect(
      complaints(
        `import { decisiemensPerMetre, type DrainEC } from 'porewater'\nconst p = decisiemensPerMetre(2)\nexport const d: DrainEC = p\n`,
      ),
    ).toContain('annotate it as')
  })
  it('says nothing about correct code', () => {
    expect(
      complaints(
        `import { add, litres, millilitres, percent, type DrainFraction, type Volume } from 'porewater'\nexport const v: Volume = add(litres(1), millilitres(5))\nexport const d: DrainFraction = percent(15)\n`,
      ),
    ).toBe('')
  })
})
