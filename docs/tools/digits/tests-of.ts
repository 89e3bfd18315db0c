import { importsOf } from '../house/source-files.js'

/** Source and test files, and which tests speak of which source. */
export class Tree {
  private readonly texts: ReadonlyMap<string, string>
  private readonly importers = new Map<string, string[]>()

  constructor(files: readonly { readonly path: string; readonly code: string }[]) {
    this.texts = new Map(files.map(({ path, code }) => [path, code]))
    for (const { path, code } of files) {
      if (!path.startsWith('src/') || path.endsWith('index.ts')) continue
      for (const { from } of importsOf(path, code))
        this.importers.set(from, [...(this.importers.get(from) ?? []), path])
    }
  }

  code(path: string): string {
    return this.texts.get(path)!
  }

  /** Tests of its room, those that name something the file exports before those of what imports it; then the same of other rooms; last what holds defaults. */
  testsOf(path: string): string[] {
    const room = path.split('/')[1]
    const tests = new Set<string>()
    let level = [path]
    const seen = new Set(level)
    while (level.length > 0 && tests.size < 40) {
      const names = level.flatMap((file) => this.exportsOf(file))
      for (const test of this.testsNaming(names)) tests.add(test)
      level = level.flatMap((file) => this.importers.get(file) ?? []).filter((file) => !seen.has(file))
      for (const file of level) seen.add(file)
    }
    // Some tests put names together from pieces.
    for (const test of this.testsIn(room)) tests.add(test)
    const nearest = [...tests].sort((a, b) => Number(b.includes(`/${room}/`)) - Number(a.includes(`/${room}/`)))
    // Spans and defaults that are told are held there.
    const spans = /\bvalidity[A-Z]\w*: Validity\b/.test(this.code(path)) ? ['tests/validity/spans.test.ts'] : []
    return [...spans, ...nearest, `tests/catalogue/defaults.test.ts#${room}`]
  }

  private testsIn(room: string | undefined): string[] {
    return [...this.texts.keys()].filter((test) => test.startsWith(`tests/${room}/`) && test.endsWith('.test.ts'))
  }

  private exportsOf(path: string): string[] {
    const declared = /^export (?:async )?(?:function|const|class) (\w+)/gm
    return [...this.code(path).matchAll(declared)].map((match) => match[1]!)
  }

  private testsNaming(names: readonly string[]): string[] {
    if (names.length === 0) return []
    const naming = new RegExp(`\\b(?:${names.join('|')})\\b`)
    return [...this.texts.keys()].filter((test) => test.endsWith('.test.ts') && naming.test(this.code(test)))
  }
}
