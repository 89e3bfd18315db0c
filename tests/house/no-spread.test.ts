import { catchTest, flowVariation, minutes } from 'porewater'
import { drawPanels } from 'porewater/chart'
import { DocumentError, resolveSenml } from 'porewater/schema'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { parse, sourceFiles } from '../../docs/tools/house/source-files.js'

/** Spreads of a list into a call or a `new`: from about 125,000 entries the engine has no room for the arguments. */
function spreadsIn(path: string, code: string): string[] {
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
      for (const one of node.arguments ?? [])
        if (ts.isSpreadElement(one)) found.push(`${path} ${one.expression.getText()}`)
      if (ts.isPropertyAccessExpression(node.expression) && node.expression.name.text === 'apply')
        found.push(`${path} ${node.getText()}`)
    }
    ts.forEachChild(node, visit)
  }
  visit(parse(path, code))
  return found.map((one) => one.replace(/\s+/g, ' '))
}

/** Lists that are short by their making, and why. */
const SHORT: Readonly<Record<string, string>> = {
  'src/catalogue/find-entries.ts places.filter(([, text]) => beginsWord(text, word)).map(([worth]) => worth)':
    'the places of an entry where a word may stand: six',
  "src/chart/frame.ts lines.map((line, i) => lettering(line, 17, width, { x: 16, y: 26 + 21 * i, 'font-weight': 600 }))":
    'the lines of a title: at most two',
  'src/chart/lettering.ts whole': 'none or one',
  'src/chart/panel.ts axisTitle(panel.yTitle, top, tall)': 'the lines of a title: at most two',
  'src/control/check/reading.ts doubts': 'at most one doubt of each kind',
  'src/control/check/reading.ts tooSoon(facts, after)': 'none or one',
  'src/control/diagnosis/suspect/suspect-probe.ts unbelievable(probe.bad, name, zone)': 'at most two causes',
  'src/control/diagnosis/suspect/suspect-probe.ts moved(state, probe, i, recent, now, zone)':
    'at most one cause of each kind',
  'src/control/diagnosis/suspect/suspect-probe.ts jumped(step, name, recent.riseOf(i, 3))': 'at most two causes',
  'src/control/diagnosis/suspect/suspect-probe.ts deaf(state, i, name, recent, stepped, now)': 'at most two causes',
  "src/irrigation/plan/plan-compromises.ts wideOf('dry-down', 'overnightDryDown', peak - end, wanted, 'm³/m³')":
    'none or one',
  'src/medium/fit/fit-problem.ts conductionRanges(form, conducting.length)': 'at most two parameters',
  "src/probe/apply-no-use-correction.ts outside('bulkEC', salt, correction.bulkEC, 'dS/m')": 'none or one',
  'src/probe/check-placement.ts ends.map(toSide)': 'the two ends of a body',
  'src/probe/check-placement.ts ends.map(([, , depth]) => height - depth)': 'the two ends of a body',
  'src/probe/placement-shapes.ts apart': 'three coordinates',
  'src/probe/placement-shapes.ts r.map((value, i) => value - t * d[i]!)': 'three coordinates',
  'src/quantity/explained.ts given': 'what a sentence needs beside its finding: none or one',
  'src/repl/held/functions.ts plain': 'the arguments of one call that somebody typed',
  'src/repl/held/functions.ts own': 'the arguments of one call that somebody typed',
  'src/repl/held/give.ts each.reverse()': 'the alternatives of a type',
  'src/repl/held/give.ts one.apply(owner, given)': 'the arguments of one call that somebody typed',
  'src/repl/held/maths.ts (values as number[])': 'the arguments of one call that somebody typed',
  'src/repl/held/maths.ts (values as never[])': 'the arguments of one call that somebody typed',
  'src/repl/help.ts paragraphs(entry.description)': 'the documentation of one function',
  "src/repl/help.ts entry.equation.split('\\n').map((line) => ` ${readableTex(line)}`)":
    'the documentation of one function',
  'src/repl/help.ts entry.arguments.map((field) => ` ${fieldText(field)}`)': 'the documentation of one function',
  "src/repl/help.ts entry.example.split('\\n').map((line) => ` ${line}`)": 'the documentation of one function',
  'src/repl/one-shot.ts given': 'the arguments of one public function',
  'src/repl/one-shot.ts cautionsOf(entry, given)': 'the arguments of one public function',
  'src/repl/readable-tex.ts pieceOf(token, reader)': 'the pieces of one sign of an equation',
  'src/repl/session.ts plain': 'the arguments of one call that somebody typed',
  'src/repl/session.ts given': 'the arguments of one call that somebody typed',
  'src/repl/sources.ts rest.map((one) => one.text)': 'the sources of one function',
  'src/schema/csv/text-from-bytes.ts units.subarray(i, i + 8192)': 'cut into 8,192 at a time',
  'src/schema/csv/tidy-csv.ts wrong': 'the first thing that is wrong in one row',
}

describe('a list of the caller', () => {
  it('is nowhere spread into a call', () => {
    expect(sourceFiles().length).toBeGreaterThan(400)
    const spreads = sourceFiles().flatMap(({ path, code }) => spreadsIn(path, code))
    expect(spreads.filter((one) => SHORT[one] === undefined)).toEqual([])
    expect(Object.keys(SHORT).filter((one) => !spreads.includes(one))).toEqual([])
  })
  it.each([
    'Math.max(...x)',
    'list.push(...x)',
    'String.fromCharCode(...x)',
    'new Date(...x)',
    'Math.max.apply(null, x)',
  ])('would be found in %s', (call) => {
    expect(spreadsIn('src/x/y.ts', `export const most = (x: number[]) => ${call}`)).toHaveLength(1)
  })
  it('may be longer than a call has room for', () => {
    const flows = Float64Array.from({ length: 300_000 }, (_, i) => 1 + (i % 2))
    expect(flowVariation(flows)).toBe(0.5)
    expect(catchTest({ catches: flows, duration: minutes(10) }).christiansen).toBeCloseTo(2 / 3, 9)
  })
  it('may be longer in a picture and in a message, too', () => {
    const many = Array.from({ length: 150_000 }, (_, i) => i)
    const svg = drawPanels({
      title: 'Invented',
      alternative: 'A line with many marks.',
      xTitle: 'time, h',
      xRange: [0, 150_000],
      width: 400,
      height: 200,
      panels: [{ yTitle: 'share', series: [{ name: 'level', x: [0, 150_000], y: [0.4, 0.5], draw: 'line' }] }],
      marks: many.map((x) => ({ x, name: '' })),
    })
    expect(svg).toContain('</svg>')
    const unknown = Object.fromEntries(many.map((i) => [`x${i}_`, 1]))
    expect(() => resolveSenml([{ n: 'a', v: 1, t: 1, ...unknown }])).toThrow(DocumentError)
  })
})
