/**
 * What units cost while typing: 300 calls are checked against the typings of the built package, and against the same typings in which
 * every quantity is a plain number. Needs `npm run build`.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { compare, report } from './timing.js'

const dist = fileURLToPath(new URL('../dist/', import.meta.url))
const OPTIONS: ts.CompilerOptions = {
  strict: true,
  noEmit: true,
  skipLibCheck: true,
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  lib: ['lib.es2022.d.ts'],
  types: [],
}

/** A hundred times three calls: constructors are counted as arguments, as in any program. */
const CALLS = `import { litres, litresPerHour, percent, runTime, shotVolume, sizeShot, waterContentChange } from './index.js'
${Array.from(
  { length: 100 },
  (_, i) => `
const volume${i} = shotVolume({ substrateVolume: litres(${i + 1}), rise: waterContentChange(0.03), drainFraction: percent(15) })
const time${i} = runTime({ volume: volume${i}, emitterFlow: litresPerHour(2), emitters: 2 })
const shot${i} = sizeShot({ substrateVolume: litres(${i + 1}), rise: waterContentChange(0.02), drainFraction: percent(20), emitterFlow: litresPerHour(2), emitters: 2 })`,
).join('')}
export const sum = time0 + shot99.volume
`

/** Typings without kinds: what a library that takes and gives plain numbers would ship. */
function plainNumbers(text: string): string {
  return text
    .replace(/number & Kind<[^;]*?>(?=;)/g, 'number')
    .replace(/<Q = \w+>\(value: number\): Made<[^;]*>;/g, '(value: number): number;')
}

/** A check of the calls by a compiler that has read all files, as an editor has; how many complaints there are. */
function checker(edit: (text: string) => string): () => number {
  const files = new Map<string, ts.SourceFile>()
  const host = ts.createCompilerHost(OPTIONS)
  const page = `${dist}calls.ts`
  const read = (name: string): string | undefined => {
    if (name === page) return CALLS
    const text = ts.sys.readFile(name)
    return text !== undefined && name.startsWith(dist) ? edit(text) : text
  }
  host.fileExists = (name) => name === page || ts.sys.fileExists(name)
  host.getSourceFile = (name, language) => {
    const known = files.get(name)
    if (known !== undefined) return known
    const text = read(name)
    if (text === undefined) return undefined
    const file = ts.createSourceFile(name, text, language, true)
    files.set(name, file)
    return file
  }
  return () => {
    const program = ts.createProgram([page], OPTIONS, host)
    const found = program.getSemanticDiagnostics(program.getSourceFile(page))
    if (found.length > 0) throw new Error(ts.flattenDiagnosticMessageText(found[0]!.messageText, '\n'))
    return found.length
  }
}

/** Kinds that are left in the typings, to be sure that the plain ones are plain. */
export function kindsLeft(): number {
  const typings = readdirSync(dist, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.d.ts'))
  return typings
    .map((name) => plainNumbers(readFileSync(`${dist}${name}`, 'utf8')))
    .reduce((sum, text) => sum + (text.match(/number & Kind</g) ?? []).length, 0)
}

export function run(quick: boolean): void {
  if (!existsSync(`${dist}index.d.ts`)) {
    process.stdout.write('types of 300 calls: needs npm run build\n\n')
    return
  }
  if (kindsLeft() > 0) throw new Error(`${kindsLeft()} kinds are left in the plain typings`)
  const timings = compare(
    [
      { name: 'plain numbers', run: checker(plainNumbers) },
      { name: 'quantities', run: checker((text) => text) },
    ],
    quick ? 3 : 15,
  )
  report('300 calls checked by the compiler', timings)
}
