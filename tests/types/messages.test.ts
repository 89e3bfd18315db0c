import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))

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
/** Everything but the line that is asked about is read once. */
const parsed = new Map<string, ts.SourceFile | undefined>()

/** What the compiler says about a line of code that uses the package. */
function complaints(code: string): string {
  const host = ts.createCompilerHost(options)
  const read = host.getSourceFile.bind(host)
  host.getSourceFile = (name, ...rest) => {
    if (name === file) return ts.createSourceFile(name, code, ts.ScriptTarget.ES2022, true)
    if (!parsed.has(name)) parsed.set(name, read(name, ...rest))
    return parsed.get(name)
  }
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
  it.each([
    [
      'hours',
      'minutes',
      `import { type Duration, litres } from 'porewater'\nexport const d: Duration = litres(1)\n`,
      'duration in seconds, from seconds(), minutes() or scale()',
    ],
    [
      'bars',
      'kilopascals',
      `import { litres, type Pressure } from 'porewater'\nexport const p: Pressure = litres(1)\n`,
      'pressure in kilopascals, from kilopascals(), bars() or scale()',
    ],
    [
      'kelvin',
      'celsius',
      `import { litres, type Temperature } from 'porewater'\nexport const t: Temperature = litres(1)\n`,
      'temperature in degrees Celsius, from celsius(), fahrenheit() or kelvin()',
    ],
  ])('names the constructors that people mean: %s, %s', (_, __, code, named) => {
    expect(complaints(code)).toContain(named)
    expect(complaints(code)).not.toMatch(/nanoseconds|millibars/)
  })
  it('names scale() where arithmetic made a bare number of an amount', () => {
    for (const sum of ['litres(1) / 2', 'litres(1) * 2', 'litres(1) + litres(2)'])
      expect(
        complaints(`import { litres, type Volume } from 'porewater'\nexport const v: Volume = ${sum}\n`),
      ).toContain('volume in litres, from litres(), millilitres() or scale()')
  })
  it('does not offer scale() for a place on a scale', () => {
    const message = complaints(
      `import { celsius, type Temperature } from 'porewater'\nexport const t: Temperature = celsius(20) * 2\n`,
    )
    expect(message).toContain('temperature in degrees Celsius')
    expect(message).not.toContain('scale()')
  })
  it.each([
    [
      'percent(3)',
      'WaterContentChange',
      'share from fraction() or percent()',
      'waterContentChange(), percentagePoints()',
    ],
    ['decisiemensPerMetre(2)', 'DrainFraction', 'EC from decisiemensPerMetre()', 'fraction(), percent()'],
    ['gramsPerCubicCentimetre(1)', 'Volume', 'density from gramsPerCubicCentimetre()', 'litres(), millilitres()'],
    ['millimetresPerDay(2)', 'Volume', 'depth from millimetresPerDay()', 'litres(), millilitres()'],
    ['kilopascals(3)', 'SuctionHead', 'pressure in kilopascals', 'centimetresOfSuction(), kilopascalsOfSuction()'],
  ])('blames the constructor %s where a %s is wanted, and none of its kinds', (call, kind, blamed, wanted) => {
    const name = call.slice(0, call.indexOf('('))
    const message = complaints(`import { ${name}, type ${kind} } from 'porewater'\nexport const x: ${kind} = ${call}\n`)
    expect(message).toContain(blamed)
    expect(message).toContain(wanted)
    expect(message).not.toMatch(
      /air-filled|porosity as|volumetric|bulk EC|bulk density|reference evapo|vapour pressure/,
    )
    expect(message.length).toBeLessThan(600)
  })
  it('lets a constructor of several kinds stand wherever one of them is wanted', () => {
    expect(
      complaints(
        `import { percent, type DrainFraction, type UnnamedShare } from 'porewater'
export const all: { a?: DrainFraction; b: DrainFraction | undefined; c: string | DrainFraction; d: number; e: unknown } = {
  a: percent(1), b: percent(1), c: percent(2), d: percent(2), e: percent(3) }
export const list: readonly DrainFraction[] = [percent(1), percent(2)]
export const mapped: DrainFraction[] = [1, 2].map((x) => percent(x))
export const unnamed: UnnamedShare = percent(1)
export const named = percent<DrainFraction>(1)
`,
      ),
    ).toBe('')
  })
  it('says nothing about correct code', () => {
    expect(
      complaints(
        `import { add, litres, millilitres, percent, type DrainFraction, type Volume } from 'porewater'\nexport const v: Volume = add(litres(1), millilitres(5))\nexport const d: DrainFraction = percent(15)\n`,
      ),
    ).toBe('')
  })
})
