import { createContext } from 'node:vm'
import { catalogue } from 'porewater/catalogue'
import { beforeEach, describe, expect, it } from 'vitest'
import { runExample } from '../../docs/tools/examples.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { completions } from '../../src/repl/complete.js'
import { isUnfinished, readLine } from '../../src/repl/line.js'
import { Session } from '../../src/repl/session.js'

let session = new Session()
let context = createContext({})
const shown = (line: string) => session.enter(line, context).shown
const SHOT = "shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: '15 %' })"

beforeEach(() => {
  session = new Session()
  context = createContext({ ...session.names })
})

it('knows every public name of the package, and none of its own commands hides one', () => {
  expect(Object.keys(publicNames).filter((name) => !(name in session.names))).toEqual([])
  for (const command of ['help', 'find', 'sources', 'plot', 'table', 'lesson'])
    expect(publicNames, command).not.toHaveProperty(command)
})

describe('results and their units', () => {
  it('shows the unit of a call, and of a name that was given to one', () => {
    expect(shown('waterContentTopp1980(20)')).toBe('0.3454 m³/m³')
    expect(shown('const theta = waterContentTopp1980(20)')).toBe('0.3454 m³/m³')
    expect(shown('theta')).toBe('0.3454 m³/m³')
    expect(shown("celsius('68 °F')")).toBe('20 °C')
    expect(shown("parseQuantity('2 kPa', 'SuctionHead')")).toMatch(/ cm$/)
  })
  it('says when an input lies outside the span where the formula was measured, once a line', () => {
    expect(shown('waterContentTopp1980(60)')).toMatch(
      /^\d\.\d+ m³\/m³\nCaution: waterContentTopp1980: apparent 60 is outside \[3, 40\], where/,
    )
    expect(shown('waterContentTopp1980(40)')).not.toMatch(/Caution/)
    expect(shown('plot(waterContentTopp1980, 2, 60)').match(/Caution/g)).toHaveLength(1)
  })
  it('keeps plain numbers plain, and claims no unit that it does not know', () => {
    expect(session.enter(`const shot = ${SHOT}`, context).value).toBe((0.03 * 11) / (1 - 0.15))
    expect(context.shot).toBeTypeOf('number')
    expect(shown('shot * 2')).toBe('0.776471')
    expect(shown('litres(20)')).toBe('20 L')
    expect(shown('20')).toBe('20')
    expect(shown('Math.sqrt(litres(1))')).toBe('1')
    shown('const v = litres(2)')
    expect(shown('v = 3')).toBe('3')
    expect(shown('v')).toBe('3')
    shown('var w = litres(2)')
    shown('w++')
    expect(shown('w')).toBe('3')
  })
  it('shows the units inside of a result', () => {
    const lines = shown("const pot = cylinderContainer({ diameter: '20 cm', height: '20 cm' })")
    expect(lines).toMatch(/height +20 cm/)
    // 20 cm across and high: π times 10² times 20 cm³.
    expect(lines).toMatch(/volume +6\.28319 L/)
    expect(shown('pot.volume')).toBe('6.28319 L')
  })
  it('lets a name be given again', () => {
    shown('const a = litres(1)')
    expect(shown('let a = seconds(2)')).toBe('2 s')
    expect(shown('a')).toBe('2 s')
  })
})

describe('text in arguments', () => {
  it('is read by the kind of the argument', () => {
    expect(shown(SHOT)).toBe('0.388235 L')
    expect(shown("shotVolume({ substrateVolume: '11000 mL', rise: 0.03, drainFraction: percent(15) })")).toBe(
      '0.388235 L',
    )
    expect(shown("shiftTemperature('20 °C', '9 °F')")).toBe('25 °C')
    expect(shown("inMinutes('3 h')")).toBe('180 min')
    expect(shown("litres('1 US gal')")).toBe('3.78541 L')
    expect(shown("dayLengthFao56({ latitude: '-20 °', day: 246 })")).toMatch(/ h$|^\d/)
    expect(shown("instant('2026-05-19T02:00+02:00')")).toBe('1779148800 s')
  })
  it('reads lists and objects in objects', () => {
    expect(shown("sum(['1 L', '2 L'].map((text) => litres(text)))")).toBe('3')
  })
  it('gives the same as the library for every example of the documentation', async () => {
    const problems: string[] = []
    for (const entry of catalogue) {
      const checked = await runExample(entry.example, session.names).catch((error) => [
        { line: 0, expected: '', problem: String(error) },
      ])
      problems.push(...checked.flatMap((check) => (check.problem ? [`${entry.name}: ${check.problem}`] : [])))
    }
    expect(problems).toEqual([])
  })
})

describe('refusals', () => {
  it.each([
    [
      "shotVolume({ substrateVolume: '11 cm', rise: 0.03, drainFraction: 0.15 })",
      /^Refused: substrateVolume \(Volume\): "11 cm" has the unit "cm", which is one of Length; .* L, mL/,
    ],
    [
      'shotVolume({ substrateVolume: 11, rise: 3, drainFraction: 0.15 })',
      /^Refused: rise is 3 m³\/m³, outside \[0, 1\]/,
    ],
    ['shotVolume({ substrateVolum: 11, rise: 0.03, drainFraction: 0.15 })', /did you mean substrateVolume\?/],
    ['shotVolume({ substrateVolume: 11, rise: 0.03 })', /^Refused: drainFraction: is missing/],
    ['shotVolume(11)', /takes its arguments by name; it is called as shotVolume\(\{/],
    ['shotVolume()', /is missing; it is called as shotVolume\(\{/],
    ['shotVolum()', /^ReferenceError: shotVolum is not defined\. Close to it: shotVolume$/],
    ["dayOfInstant('yesterday')", /such as 2026-05-19T06:00Z/],
    ["runTime({ volume: '1 L', emitterFlow: '2 L/h', emitters: 'two' })", /plain number, without a unit/],
    ['1 +', /^SyntaxError: /],
    ['throw 3', /^Error: 3$/],
  ])('%s', (line, told) => {
    const said = shown(line)
    expect(said).toMatch(told)
    expect(said).not.toMatch(/\n|\bat .*:\d+:\d+/)
  })
})

describe('help, search, sources', () => {
  it('explains a function with equation, domain, source and example', () => {
    const help = shown('help(waterContentTopp1980)')
    expect(help).toMatch(/θ = -5\.3 × 10⁻² \+ 2\.92 × 10⁻² ε/)
    expect(help).toMatch(/\[1\.880712, 81\.44688\]/)
    expect(help).toMatch(/Valid for: Mineral soils/)
    expect(help).toMatch(/Water Resources Research 16:574-582/)
    expect(help).toMatch(/\/\/ => 0\.3454/)
    expect(shown("help('shotVolum')")).toMatch(/Close to it: shotVolume/)
    expect(shown('help()')).toMatch(/lesson\(\)/)
  })
  it('has help for every function of the package', () => {
    for (const { name, summary } of catalogue) {
      const help = shown(`help(${name})`)
      expect(help, name).toContain(`${name}(`)
      expect(help.replace(/\s+/g, ' '), name).toContain(summary.replace(/\s+/g, ' '))
    }
  })
  it('finds by word', () => {
    expect(shown("find('drain')")).toMatch(/drainageAfterShot/)
    expect(shown('find()')).toMatch(/^Refused: /)
    expect(shown("find('xyzzy')")).toMatch(/No function/)
  })
  it('lists sources', () => {
    expect(shown('sources()')).toMatch(
      /Topp, G\. C\., Davis, J\. L\. and Annan, A\. P\. \(1980\), Electromagnetic determination .*, Water Resources Research 16:574-582/,
    )
    expect(shown('sources(waterContentTopp1980)')).toMatch(/^Topp/)
    expect(shown("sources('xyzzy')")).toMatch(/No source/)
  })
})

describe('plots and tables', () => {
  it('plots a function with its units, and says in words what is seen', () => {
    const plot = shown('plot(waterContentTopp1980, 3, 40)')
    expect(plot).toMatch(/^waterContentTopp1980 \(m³\/m³\) against apparent/)
    expect(plot).toMatch(/Rises: 0\.0297661 m³\/m³ at 3, 0\.5102 m³\/m³ at 40/)
    const rows = plot.split('\n')
    expect(Math.max(...rows.slice(0, -1).map((row) => row.length))).toBeLessThanOrEqual(72)
    // A rising curve starts in the lowest row on the left and ends in the highest on the right.
    expect(rows[1]).toMatch(/│ +[⠀-⣿]+$/)
    expect(rows[14]).toMatch(/│[⠀-⣿]/)
  })
  it('plots one argument of several over a range in its unit', () => {
    const plot = shown(`plot((x) => ${SHOT.replace("'3 points'", 'x')}, '1 points', '10 points')`)
    expect(plot).toMatch(/^shotVolume \(L\) against x \(points\)/)
    // The volume is proportional to the rise.
    expect(plot).toMatch(/0\.129412 L at 1 points, 1\.29412 L at 10 points/)
  })
  it('says what was refused and does not hide it', () => {
    expect(shown('plot(waterContentTopp1980, -5, 40)')).toMatch(
      /\d+ of \d+ points refused\. Refused: apparent permittivity|points refused/,
    )
    expect(shown('plot(waterContentTopp1980, 200, 300)')).toMatch(/Nothing to plot: all/)
    expect(shown('table(waterContentTopp1980, -10, 90, 3)')).toMatch(/refused/)
  })
  it('makes a table of the numbers', () => {
    const rows = shown('table(waterContentTopp1980, 10, 30, 3)').split('\n')
    expect(rows).toHaveLength(4)
    expect(rows[2]).toMatch(/20 +0\.3454$/)
  })
  it.each([
    'plot(shotVolume, 1, 2)',
    'plot(3, 1, 2)',
    'plot(waterContentTopp1980, 40, 3)',
    'plot(waterContentTopp1980)',
    "plot((x) => litres(x), '1 L', '2 mL')",
    'table(waterContentTopp1980, 3, 40, 1e9)',
  ])('%s is refused in one line', (line) => {
    expect(shown(line)).toMatch(/^Refused: .*$/)
  })
  it('draws a flat curve, too', () => {
    expect(shown('plot((x) => 5, 0, 1)')).toMatch(/Does not change: 5 at 0, 5 at 1/)
  })
})

describe('reading a line', () => {
  it('knows a call, a kept call and a path from anything else', () => {
    expect(readLine('const a = f(g(1), ")")')).toEqual({ assigned: 'a', callee: 'f' })
    expect(readLine('f(1);')).toEqual({ callee: 'f' })
    expect(readLine('a.b')).toEqual({ path: ['a', 'b'] })
    expect(readLine('f(1) * 2')).toEqual({})
    expect(readLine('f(1) + f(2)')).toEqual({})
    expect(readLine('a === f(1)')).toEqual({})
    expect(readLine('(x) => f(x)')).toEqual({})
  })
  it('waits for brackets that are open, not for those in strings', () => {
    for (const line of ['f(', '[1,', '`a', 'f({ a: 1,']) expect(isUnfinished(line), line).toBe(true)
    for (const line of ['f()', '"("', "'['", '1 // (', ')']) expect(isUnfinished(line), line).toBe(false)
  })
})

describe('completion', () => {
  const names = ['shotVolume', 'shotsPerDay', 'litres']
  it('completes names and the keys of an open argument', () => {
    expect(completions('sho', names)).toEqual([['shotVolume', 'shotsPerDay'], 'sho'])
    expect(completions('shotVolume({ sub', names)).toEqual([['substrateVolume: '], 'sub'])
    expect(completions('shotVolume({ rise: 0.03, ', names)?.[0]).toEqual(['drainFraction: ', 'substrateVolume: '])
    expect(completions('shotVolume({ rise: lit', names)).toEqual([['litres'], 'lit'])
    expect(completions("find('sho", names)).toBeUndefined()
    expect(completions('', names)).toBeUndefined()
  })
})
