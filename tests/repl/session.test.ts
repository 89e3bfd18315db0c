import { mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createContext } from 'node:vm'
import { catalogue } from 'porewater/catalogue'
import { beforeEach, describe, expect, it } from 'vitest'
import { publicNames } from '../../docs/tools/public-names.js'
import { isUnfinished } from '../../src/repl/code/parsed.js'
import { completions } from '../../src/repl/complete.js'
import { Measured } from '../../src/repl/held/measured.js'
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
  it('prints results with their unit after arithmetic, and text in quotes', () => {
    expect(Number(session.enter(`const shot = ${SHOT}`, context).value)).toBe((0.03 * 11) / (1 - 0.15))
    expect(context.shot).toBeInstanceOf(Measured)
    expect(shown('shot * 2')).toBe('0.776471 L')
    expect(shown('-shot / 2')).toBe('-0.194118 L')
    expect(shown("shot + '300 mL'")).toBe('0.688235 L')
    expect(shown('shot / litres(2)')).toBe('0.194118')
    expect(shown('inMillilitres(shot) / 2')).toBe('194.118 mL')
    expect(shown('litres(inMillilitres(shot))')).toBe('0.388235 L')
    expect(shown("celsius(20) + '9 °F'")).toBe('25 °C')
    expect(shown('celsius(20) - celsius(15)')).toBe('5 K')
    expect(shown('(waterContent(0.4) + waterContent(0.5)) / 2')).toBe('0.45 m³/m³')
    expect(shown('1 - percent(15)')).toBe('0.85')
    expect(shown('litres(20)')).toBe('20 L')
    expect(shown('20')).toBe('20')
    expect(shown("'20'")).toBe("'20'")
    // biome-ignore lint/suspicious/noTemplateCurlyInString: the person has typed it
    expect(shown('`${shot}`')).toBe("'0.388235 L'")
    expect(shown('JSON.stringify({ v: litres(2) })')).toBe(`'{"v":2}'`)
    expect(shown('Math.sqrt(squareMetres(4))')).toBe('200 cm')
    expect(shown('Math.cbrt(litres(8))')).toBe('20 cm')
    expect(shown('Math.sqrt(litres(1))')).toBe('1 L^0.5')
    expect(shown('Math.pow(centimetres(10), 3)')).toBe('1 L')
    expect(shown('Math.sqrt(percent(25))')).toBe('0.5')
    expect(shown('Math.log(litres(2))')).toMatch(/^Refused: Math\.log: has no meaning for 2 L; divide by/)
    expect(shown('Math.log(litres(2) / litres(1))')).toBe('0.693147')
    expect(shown('Math.log(inLitres(litres(2)))')).toBe('0.693147')
    expect(shown("Math.max(shot, '1 L')")).toBe('1 L')
    expect(shown('[litres(1), litres(2)]')).toBe('[ 1 L, 2 L ]')
    shown('let v = litres(2)')
    expect(shown("v += '1 L'")).toBe('3 L')
    expect(shown('v')).toBe('3 L')
    expect(shown('v = 3')).toBe('3')
  })
  it('tells the unit of a product by its dimensions, and takes it where a kind of that dimension belongs', () => {
    shown(`const shot = ${SHOT}`)
    // 0.388235 L in 360 s are 3.88235 L/h.
    expect(shown("shot / '360 s'")).toMatch(/^Refused: 0\.388235 L \/ '360 s': mixes two kinds/)
    expect(shown('const flow = shot / seconds(360)')).toBe('3.88235 L/h')
    expect(shown('runTime({ volume: shot, emitterFlow: flow, emitters: 1 })')).toBe('360 s')
    expect(shown('litres(6) / centimetres(10)')).toBe('0.06 m²')
    expect(shown('litres(2) * litres(3)')).toBe('6 L²')
    expect(shown('litres(10) * waterContent(0.4)')).toBe('4 L')
  })
  it('counts in plain numbers as before', () => {
    expect(shown('let n = 0; for (let i = 0; i < 4; i++) n += i; n')).toBe('6')
    expect(shown("'a' + 1")).toBe("'a1'")
    expect(shown('[3, 1, 2].sort((a, b) => a - b)')).toBe('[ 1, 2, 3 ]')
    expect(shown('{ a: 1 }')).toMatch(/^ {2}a {2}1$/)
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
    expect(shown("sum(['1 L', '2 L'].map((text) => litres(text)))")).toBe('3 L')
    expect(shown("add(litres(3), '200 mL')")).toBe('3.2 L')
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
    [
      'shotVolume({ substrateVolume: metres(11.25), rise: 0.03, drainFraction: 0.15 })',
      /^Refused: substrateVolume \(Volume\): 1125 cm is a length; give a volume in L, mL/,
    ],
    [
      'shotVolume({ substrateVolume: 11, rise: 0.03, drainFraction: seconds(3) })',
      /drainFraction \(DrainFraction\): 3 s is a duration/,
    ],
    ['add(litres(3), seconds(4))', /^Refused: b \(Volume\): 4 s is a duration; give a volume/],
    ['add(litres(3), 4)', /^Refused: amount: 4 has no unit beside 3 L; write it with one, such as '4 L'/],
    ["add(litres(3), '4 s')", /^Refused: Volume from text: "4 s" has the unit "s"/],
    ['sum([litres(3), seconds(4)])', /^Refused: amounts \(Volume\): 4 s is a duration/],
    ["litres(3) + '3 s'", /^Refused: 3 L \+ '3 s': mixes two kinds; 3 L is a volume/],
    ['litres(3) + seconds(3)', /mixes two kinds; 3 L is a volume, 3 s is a duration/],
    ['litres(3) < seconds(3)', /mixes two kinds/],
    ['litres(3) + 1', /has a number without a unit; write the unit, such as '1 L'/],
    ['scale(litres(3), seconds(3))', /^Refused: factor: 3 s is a duration; give a plain number/],
    ['celsius(20) * 2', /20 °C: is a temperature, a place on a scale, and is not multiplied/],
    ['seconds(litres(3))', /^Refused: value: 3 L is a volume; give a number in s/],
    ['percent<DrainFraction>(15) + seconds(1)', /mixes two kinds/],
    [
      "vanGenuchten1980({ saturated: '90 %', residual: '10 %', alpha: 0.1, n: 2 }).waterContent(litres(3))",
      /waterContent \(SuctionHead\): 3 L is a volume/,
    ],
    ["import { readFileSync } from 'node:fs'", /^Refused: import: "node:fs" is not here/],
    ["import { litre } from 'porewater'", /there is no litre in porewater/],
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
    expect(shown('help()')).toMatch(/ten minutes/)
  })
  it('answers commands in plain words', () => {
    for (const line of ['help', '?']) expect(shown(line)).toBe(shown('help()'))
    for (const line of ['help shotVolume', 'shotVolume?', 'shotVolume ?', '?shotVolume'])
      expect(shown(line)).toBe(shown('help(shotVolume)'))
    expect(shown('help shotVolum')).toMatch(/Close to it: shotVolume/)
    expect(shown('find drain')).toBe(shown("find('drain')"))
    expect(shown("find 'drain'")).toBe(shown("find('drain')"))
    expect(shown('sources waterContentTopp1980')).toBe(shown('sources(waterContentTopp1980)'))
    expect(shown('lesson')).toMatch(/Step 1 of 10/)
    expect(shown('lesson hint')).toMatch(/waterContentTopp1980\(20\)/)
    for (const line of ['quit', 'exit', 'exit()', '.exit']) expect(session.enter(line, context).ends).toBe(true)
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
    expect(shown("find('VWC')")).toMatch(/^ {2}waterContent /)
    expect(shown("find('runoff')")).toMatch(/drainFraction/)
    expect(shown("find('leak')")).toMatch(/findClimbs/)
    expect(shown("find('how big is a shot')")).toMatch(/^ {2}sizeShot /)
    expect(shown('find how much should drain')).toMatch(/drainFraction/)
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
  it('plots methods of a model over their own axis, whatever they are called', () => {
    shown("const m = vanGenuchten1980({ saturated: '90 %', residual: '10 %', alpha: 0.1, n: 2 })")
    // 0.1 + 0.8 / sqrt(1 + 1) and 0.1 + 0.8 / sqrt(1 + 100), by the published equation.
    expect(shown("m.waterContent('10 cm')")).toBe('0.665685 m³/m³')
    expect(shown("m.waterContent('1 kPa')")).toBe(shown('m.waterContent(kilopascalsOfSuction(1))'))
    expect(shown('plot(m.waterContent, 0, 100)')).toMatch(
      /^waterContent \(m³\/m³\) against x \(cm\)[\s\S]*Falls: 0\.9 m³\/m³ at 0 cm, 0\.179603 m³\/m³ at 100 cm/,
    )
    expect(shown('help(m.waterContent)')).toMatch(/suction head \(cm\)[\s\S]*water content \(m³\/m³\)/)
  })
  it('plots several curves, on a logarithmic axis if wanted', () => {
    shown("const m = vanGenuchten1980({ saturated: '90 %', residual: '10 %', alpha: 0.1, n: 2 })")
    const plot = shown("plot([m.waterContent, (h) => m.waterContent(h) / 2], '1 cm', '1000 cm', { log: 'x' })")
    expect(plot).toMatch(/^a, b \(m³\/m³\) against x \(cm\), logarithmic x\n/)
    expect(plot).toMatch(/ a$/m)
    expect(plot).toMatch(/ b$/m)
    expect(plot).toMatch(/^a waterContent: Falls/m)
    expect(plot).toMatch(/^b: Falls: 0\.448015 m³\/m³ at 1 cm/m)
    expect(shown("plot(m.waterContent, 0, 100, { log: 'x' })")).toMatch(/^Refused: range: from 0 has no logarithm/)
    expect(shown('plot([m.waterContent, m.suction], 0.2, 0.8)')).toMatch(/^Refused: curves: are in m³\/m³ and cm/)
    expect(shown("plot(m.waterContent, 1, 10, { log: 'z' })")).toMatch(/^Refused: log/)
  })
  it('saves a picture, and never over another file', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'porewater-plot-')), 'curve.svg')
    expect(shown(`plot(waterContentTopp1980, 3, 40, { save: ${JSON.stringify(file)} })`)).toMatch(
      /\nSaved as .*curve\.svg\.$/,
    )
    const picture = readFileSync(file, 'utf8')
    expect(picture).toMatch(/^<svg[\s\S]*<title>waterContentTopp1980<\/title>/)
    expect(picture).toMatch(/Rises: 0\.0297661 m³\/m³ at 3/)
    expect(shown(`plot(waterContentTopp1980, 3, 40, { save: ${JSON.stringify(file)} })`)).toMatch(
      /^Refused: save: .*EEXIST/,
    )
    expect(shown("plot(waterContentTopp1980, 3, 40, { save: 'curve.png' })")).toMatch(/^Refused: save/)
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
  it('completes the units of the argument', () => {
    expect(completions("shotVolume({ substrateVolume: '11 ", names)).toEqual([
      ['L', 'mL', 'cm³', 'm³', 'US gal', 'US fl oz'],
      '',
    ])
    expect(completions("shotVolume({ rise: 0.03, substrateVolume: '11 m", names)).toEqual([['mL', 'm³'], 'm'])
    expect(completions("shiftTemperature('20 °", names)?.[0]).toContain('°C')
    expect(completions("'3 kP", names)?.[0]).toContain('kPa')
  })
})
