import { nearestNames } from '../../src/catalogue/nearest-names.js'
import { drawPanels } from '../../src/chart/panels.js'
import { argumentsOf } from './arguments-of.js'
import { byId, make } from './dom.mjs'
import type { Equation, Input } from './equation.js'
import { answer, FORMS, type Form, showForm } from './forms.mjs'
import { snippetOf } from './snippet.js'

/** The package, as its one-file build leaves it for a page. */
declare const porewater: Readonly<Record<string, (...values: unknown[]) => unknown>>

type Values = Record<string, number | undefined>

const TITLES: Readonly<Record<string, string>> = {
  dielectric: 'Probes: permittivity and EC',
  medium: 'Growing media',
  irrigation: 'Irrigation, drain and salts',
  demand: 'Demand of plants',
  air: 'Air, radiation and light',
  water: 'Water',
  flow: 'Flow in a container',
  probe: 'Calibration of probes',
  record: 'Records',
  control: 'Control',
  uncertainty: 'Uncertainty',
  quantity: 'Units',
}
const STEPS = 160
const FIRST = 'waterContentTopp1980'

const equations: readonly Equation[] = JSON.parse(byId('equations').textContent ?? '[]')
let equation = equations[0] as Equation
let values: Values = {}
let over = ''
let ends: [from: number, to: number] = [0, 1]
let form: Form | undefined
/** A curve that stays while inputs or the equation change. */
let kept: { readonly equation: Equation; readonly values: Values; readonly over: string } | undefined

/** What the package gives for these values, or its own words for why it gives nothing. */
function work(of: Equation, at: Values): { value: number } | { refusal: string } {
  const numberFor = ({ path, optional }: Input) => at[path] ?? (optional ? undefined : Number.NaN)
  try {
    const value = porewater[of.name]?.(...argumentsOf(of, numberFor))
    return typeof value === 'number' && Number.isFinite(value)
      ? { value }
      : { refusal: 'There is no finite number for these inputs.' }
  } catch (error) {
    return { refusal: (error as Error).message }
  }
}

/** A number with six digits, as people write it. */
function short(value: number): string {
  const size = Math.abs(value)
  const text =
    size !== 0 && (size < 1e-4 || size >= 1e9) ? value.toExponential(5) : String(Number(value.toPrecision(6)))
  return text.replace(/^-/, '−')
}

function withUnit(name: string, unit: string): string {
  return unit === '1' || unit === '' ? name : `${name}, ${unit}`
}

/** A long name with places where a line may end. */
function breakable(name: string): (string | Node)[] {
  return name.split(/(?<=[a-z])(?=[A-Z0-9])/).flatMap((part, i) => (i === 0 ? [part] : [make('wbr'), part]))
}

/** What the list was last made for; another equation only moves its mark. */
let listed: string | undefined

function listEquations(words: string): void {
  if (listed !== words) makeList(words)
  listed = words
  const list = byId('list')
  for (const link of list.querySelectorAll('[aria-current]')) link.removeAttribute('aria-current')
  for (const group of list.querySelectorAll<HTMLDetailsElement>('details'))
    group.open = words.trim() !== '' || group.dataset.topic === equation.topic
  const current = list.querySelector<HTMLElement>(`a[href="#${form?.id ?? equation.name}"]`)
  current?.setAttribute('aria-current', 'page')
  const side = byId('picker').parentElement
  if (current !== null && side !== null && words === '') side.scrollTop = current.offsetTop - side.clientHeight / 2
}

function makeList(words: string): void {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean)
  const found = equations.filter((one) => {
    const text = `${one.name} ${one.summary} ${one.sources.join(' ')} ${one.unit} ${TITLES[one.topic]}`.toLowerCase()
    return wanted.every((word) => text.includes(word))
  })
  const count = (all: readonly Equation[], units: boolean) =>
    all.filter(({ topic }) => (topic === 'quantity') === units).length
  byId('found').textContent =
    `${count(found, false)} of ${count(equations, false)} equations, ${count(found, true)} of ${count(equations, true)} unit conversions`
  const forms = FORMS.filter(({ title, about }) =>
    wanted.every((word) => `${title} ${about}`.toLowerCase().includes(word)),
  )
  const formLinks = forms.map(({ id, title }) => make('li', {}, make('a', { href: `#${id}` }, title)))
  const groups = Object.keys(TITLES).flatMap((topic) => {
    const inside = found.filter((one) => one.topic === topic)
    if (inside.length === 0) return []
    const items = inside.map(({ name }) => make('li', {}, make('a', { href: `#${name}` }, ...breakable(name))))
    const group = make(
      'details',
      {},
      make('summary', {}, `${TITLES[topic]} (${inside.length})`),
      make('ul', {}, ...items),
    )
    group.dataset.topic = topic
    return [group]
  })
  byId('list').replaceChildren(...(formLinks.length === 0 ? [] : [make('ul', {}, ...formLinks)]), ...groups)
}

function show(): void {
  document.title = `${equation.name} · porewater`
  byId('name').replaceChildren(...breakable(equation.name))
  byId('summary').textContent = equation.summary
  byId('formula').innerHTML = equation.formula || `<p>${escapeHtml(equation.procedure || 'A conversion of units.')}</p>`
  byId('inputs').replaceChildren(make('h2', {}, 'Inputs'), ...equation.inputs.map(inputRow))
  byId('result-name').textContent = equation.result
  byId('unit').textContent = equation.unit === '1' ? '' : equation.unit
  const choices = equation.inputs.map(({ path, label }) => make('option', { value: path }, label))
  byId('over').replaceChildren(...choices)
  byId<HTMLSelectElement>('over').value = over
  byId('description').innerHTML = equation.description.map((part) => `<p>${part}</p>`).join('')
  const facts: [string, readonly string[]][] = [
    ['Valid for', equation.validity === '' ? [] : [equation.validity]],
    ['Steps', equation.formula !== '' && equation.procedure !== '' ? [equation.procedure] : []],
    ['Source', equation.sources],
  ]
  byId('facts').replaceChildren(
    ...facts.flatMap(([name, lines]) =>
      lines.length === 0 ? [] : [make('dt', {}, name), ...lines.map((line) => make('dd', {}, plain(line)))],
    ),
  )
  byId<HTMLAnchorElement>('page').href = `../api/functions/${equation.topic}.${equation.name}.html`
  showEnds()
  update()
}

function plain(text: string): string {
  return text.replace(/`/g, '')
}

function escapeHtml(text: string): string {
  return make('i', {}, plain(text)).innerHTML
}

function inputRow(input: Input): HTMLElement {
  const id = `input-${input.path}`
  const number = make('input', { id, type: 'number', step: input.integers ? '1' : 'any', name: input.path })
  const slider = make('input', { type: 'range', name: `${input.path}-slider` })
  slider.setAttribute('aria-label', `${input.label}, slider`)
  number.setAttribute('aria-describedby', `${id}-about`)
  slider.min = String(input.from)
  slider.max = String(input.to)
  slider.step = input.integers ? '1' : String((input.to - input.from) / 400)
  const value = values[input.path]
  number.value = value === undefined ? '' : String(value)
  slider.value = String(value ?? input.from)
  const change = (text: string) => {
    values[input.path] = text === '' ? undefined : Number(text)
    update()
  }
  number.addEventListener('input', () => {
    slider.value = number.value
    change(number.value)
  })
  slider.addEventListener('input', () => {
    number.value = String(Number(Number(slider.value).toPrecision(6)))
    change(number.value)
  })
  const range = input.range === '' || /^any/.test(input.range) ? '' : ` Accepted: ${input.range}.`
  const about = `${plain(input.text)}${input.optional ? ' May be left out.' : ''}${range}`
  return make(
    'div',
    { className: 'input' },
    make('label', { htmlFor: id }, input.label),
    make('div', { className: 'row' }, number, make('span', {}, input.unit === '1' ? '' : input.unit)),
    slider,
    make('p', { className: 'quiet', id: `${id}-about` }, about.trim()),
  )
}

function showEnds(): void {
  byId<HTMLInputElement>('from').value = String(ends[0])
  byId<HTMLInputElement>('to').value = String(ends[1])
}

/** Number, curve, table and address from the present inputs. */
function update(): void {
  const result = work(equation, values)
  const number = byId('number')
  const known = 'value' in result
  number.textContent = known ? short(result.value) : '–'
  number.dataset.value = known ? String(result.value) : ''
  byId('digits').textContent = known ? `All digits: ${result.value}` : ''
  byId('refusal').textContent = known ? '' : result.refusal
  byId('cautions').replaceChildren(...(known ? cautions() : []).map((text) => make('li', {}, text)))
  byId('example').textContent = snippetOf(equation, values)
  drawCurve()
  remember()
}

/** What lies outside the span in which the authors measured, in the words of the library. */
function cautions(): string[] {
  const record = (porewater as unknown as Record<string, unknown>)[equation.measuredBy]
  if (record === undefined) return []
  const asked = equation.inputs.filter(({ path, measured }) => measured !== undefined && values[path] !== undefined)
  const inside = Object.fromEntries(asked.map(({ path }) => [path.split('.').pop() as string, values[path]]))
  const findings = porewater.validityOf?.(record, inside) as readonly unknown[]
  return findings.map(
    (finding) => (porewater.explainQuantityFinding?.(finding) as { message: string } | undefined)?.message ?? '',
  )
}

/** The parts of the axis on which nobody measured. */
function unmeasured(input: Input): [number, number][] {
  if (input.measured === undefined) return []
  const [min, max] = input.measured
  const parts: [number, number][] = [
    [ends[0], Math.min(min, ends[1])],
    [Math.max(max, ends[0]), ends[1]],
  ]
  return parts.filter(([from, to]) => to > from)
}

/** The kept curve, where it has the axes of the present one. */
function keptSeries(
  input: Input,
  x: readonly number[],
): { name: string; x: readonly number[]; y: number[]; draw: 'line'; look: number }[] {
  const old = kept?.equation.inputs.find(({ path }) => path === kept?.over)
  if (kept === undefined || old === undefined) return []
  const { equation: of, values: at, over: path } = kept
  if (old.unit !== input.unit || of.unit !== equation.unit) {
    byId('kept').textContent = `${of.name} is kept; its axes are others than those of this curve.`
    return []
  }
  byId('kept').textContent = `${of.name} is drawn beside it.`
  const y = x.map((value) => {
    const result = work(of, { ...at, [path]: value })
    return 'value' in result ? result.value : Number.NaN
  })
  return [{ name: `kept: ${of.name}`, x, y, draw: 'line', look: 2 }]
}

function drawCurve(): void {
  const input = equation.inputs.find(({ path }) => path === over)
  const [from, to] = ends
  if (input === undefined || !(to > from)) {
    byId('curve').replaceChildren(make('p', {}, 'Give an axis whose lower end comes first.'))
    byId('table').replaceChildren()
    return
  }
  const whole = input.integers && to - from <= 400
  const count = whole ? Math.floor(to) - Math.ceil(from) : STEPS
  const x = Array.from({ length: count + 1 }, (_, i) =>
    whole ? Math.ceil(from) + i : from + ((to - from) * i) / STEPS,
  )
  const at = (value: number) => work(equation, { ...values, [over]: value })
  const y = x.map((value) => {
    const result = at(value)
    return 'value' in result ? result.value : Number.NaN
  })
  const here = values[over]
  const about = plain(input.text).replace(/\.$/, '')
  const now = work(equation, values)
  const name = equation.result.replace(/\.$/, '')
  const known = y.filter(Number.isFinite)
  const alternative =
    known.length === 0
      ? 'No value on this axis.'
      : `From ${short(known[0]!)} to ${short(known[known.length - 1]!)} ${equation.unit === '1' ? '' : equation.unit}; lowest ${short(Math.min(...known))}, highest ${short(Math.max(...known))}.`
  const width = Math.max(320, Math.min(940, Math.round(byId('curve').clientWidth) || 640))
  byId('curve').innerHTML = drawPanels({
    title: `${equation.name} over ${input.label}`,
    alternative,
    xTitle: withUnit(about.length > 60 ? input.label : about, input.unit),
    xRange: [from, to],
    marks: here === undefined || !('value' in now) ? [] : [{ name: short(now.value), x: here }],
    gaps: unmeasured(input),
    gapName: 'nobody measured here',
    panels: [
      {
        yTitle: withUnit(name.length > 40 ? 'result' : name, equation.unit),
        series: [
          {
            name: kept === undefined ? 'curve' : equation.name,
            x,
            y,
            draw: whole && count < 60 ? 'points' : 'line',
            look: 0,
          },
          ...(here !== undefined && 'value' in now
            ? [{ name: '', x: [here], y: [now.value], draw: 'points' as const, look: 1 }]
            : []),
          ...keptSeries(input, x),
        ],
      },
    ],
    width,
    height: width < 500 ? 300 : 360,
  })
  const rows = Array.from({ length: 11 }, (_, i) => Math.round((count * i) / 10))
  const line = (i: number) =>
    make('tr', {}, make('td', {}, short(x[i]!)), make('td', {}, Number.isFinite(y[i]) ? short(y[i]!) : 'refused'))
  byId('table').replaceChildren(
    make(
      'table',
      {},
      make(
        'thead',
        {},
        make(
          'tr',
          {},
          make('th', { scope: 'col' }, withUnit(input.label, input.unit)),
          make('th', { scope: 'col' }, withUnit('result', equation.unit)),
        ),
      ),
      make('tbody', {}, ...[...new Set(rows)].map(line)),
    ),
  )
}

/** The address holds what differs from a fresh page. */
function remember(): void {
  const parts = new URLSearchParams()
  for (const { path } of equation.inputs) parts.set(path, values[path] === undefined ? '' : String(values[path]))
  parts.set('over', over)
  parts.set('from', String(ends[0]))
  parts.set('to', String(ends[1]))
  history.replaceState(null, '', `#${equation.name}?${parts}`)
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text.replace(/\?.*$/, '')) + (/\?.*$/.exec(text)?.[0] ?? '')
  } catch {
    return text
  }
}

/** An address that leads nowhere says so, with names that are near. */
function sayUnknown(name: string): void {
  const near =
    name === '' ? [] : nearestNames(name, [...equations.map((one) => one.name), ...FORMS.map(({ id }) => id)])
  const links = near.flatMap((one, i) => [i === 0 ? ' Near to it: ' : ', ', make('a', { href: `#${one}` }, one)])
  byId('unknown').replaceChildren(
    ...(name === ''
      ? []
      : [
          `There is no equation “${name.slice(0, 60)}” here.`,
          ...links,
          `${near.length > 0 ? '.' : ''} This is ${FIRST} instead.`,
        ]),
  )
}

/** Takes equation and inputs from the address; what is missing or no number comes from the example. */
function readAddress(): void {
  const [name = '', query = ''] = decoded(location.hash.slice(1)).split('?')
  form = FORMS.find(({ id }) => id === name)
  byId('form').hidden = form === undefined
  byId('equation').hidden = form !== undefined
  const found = equations.find((one) => one.name === name)
  sayUnknown(found === undefined && form === undefined ? name : '')
  equation = found ?? equations.find((one) => one.name === FIRST) ?? (equations[0] as Equation)
  if (form !== undefined) {
    document.title = `${form.title} · porewater`
    listEquations(byId<HTMLInputElement>('search').value)
    showForm(form)
    return
  }
  const parts = new URLSearchParams(query)
  values = {}
  for (const { path, value } of equation.inputs) {
    const text = parts.get(path)
    values[path] = text === '' ? undefined : text === null || Number.isNaN(Number(text)) ? value : Number(text)
  }
  const axis = equation.inputs.find(({ path }) => path === parts.get('over')) ?? (equation.inputs[0] as Input)
  over = axis.path
  const end = (key: string, other: number) => {
    const text = parts.get(key)
    return text === null || text === '' || !Number.isFinite(Number(text)) ? other : Number(text)
  }
  ends = [end('from', axis.from), end('to', axis.to)]
  listEquations(byId<HTMLInputElement>('search').value)
  show()
}

for (const id of ['inputs', 'axis']) byId(id).addEventListener('submit', (event) => event.preventDefault())
byId('search').addEventListener('input', () => listEquations(byId<HTMLInputElement>('search').value))
byId('over').addEventListener('change', () => {
  over = byId<HTMLSelectElement>('over').value
  const axis = equation.inputs.find(({ path }) => path === over) as Input
  ends = [axis.from, axis.to]
  showEnds()
  update()
})
for (const [i, id] of ['from', 'to'].entries())
  byId(id).addEventListener('input', () => {
    const text = byId<HTMLInputElement>(id).value
    ends[i as 0 | 1] = text === '' ? Number.NaN : Number(text)
    update()
  })
byId('keep').addEventListener('click', () => {
  kept = { equation, values: { ...values }, over }
  byId('drop').hidden = false
  byId('kept').textContent = `${equation.name} is kept with these inputs. Change them, or pick another equation.`
  drawCurve()
})
byId('drop').addEventListener('click', () => {
  kept = undefined
  byId('drop').hidden = true
  byId('kept').textContent = ''
  byId('keep').focus()
  drawCurve()
})
byId('copy').addEventListener('click', async () => {
  try {
    await navigator.clipboard.writeText(location.href)
    byId('copied').textContent = 'Copied.'
  } catch {
    byId('copied').textContent = 'This browser does not let a page copy; take it from the address line.'
  }
})
addEventListener('hashchange', () => {
  if (location.hash === '#main') return
  readAddress()
  if (!wide.matches) byId<HTMLDetailsElement>('picker').open = false
  scrollTo(0, 0)
  byId('main').focus({ preventScroll: true })
})
let drawnWidth = innerWidth
addEventListener('resize', () => {
  if (innerWidth !== drawnWidth) form === undefined ? drawCurve() : answer(form)
  drawnWidth = innerWidth
})
const wide = matchMedia('(min-width: 60rem)')
const unfold = () => {
  byId<HTMLDetailsElement>('picker').open = wide.matches
}
wide.addEventListener('change', unfold)
unfold()
readAddress()
