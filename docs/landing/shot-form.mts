import type * as Package from '../../src/index.js'
import { byId, make } from '../explorer/dom.mjs'

declare const porewater: typeof Package

/** One field of the form: what people type, and how it becomes a quantity. */
interface Field {
  readonly name: 'substrateVolume' | 'rise' | 'drainFraction' | 'emitterFlow' | 'emitters' | 'maxRunTime'
  readonly label: string
  readonly unit: string
  readonly maker: string
  readonly start: string
}

const FIELDS: readonly Field[] = [
  { name: 'substrateVolume', label: 'Volume of medium', unit: 'L', maker: 'litres', start: '10' },
  {
    name: 'rise',
    label: 'Water content should rise by',
    unit: 'percentage points',
    maker: 'percentagePoints',
    start: '3',
  },
  { name: 'drainFraction', label: 'Share that should drain', unit: '%', maker: 'percent', start: '20' },
  { name: 'emitterFlow', label: 'Flow of one emitter', unit: 'L/h', maker: 'litresPerHour', start: '2' },
  { name: 'emitters', label: 'Emitters in a container', unit: '', maker: '', start: '2' },
  { name: 'maxRunTime', label: 'Valve opens for at most', unit: 'min', maker: 'minutes', start: '15' },
]

type Making = Readonly<Record<string, (value: number) => number>>

export function startShotForm(): void {
  byId('shot').replaceChildren(...FIELDS.map(row))
  byId('shot').addEventListener('input', update)
  byId('shot').addEventListener('submit', (event) => event.preventDefault())
  byId('copy').addEventListener('click', async () => {
    try {
      await navigator.clipboard.writeText(byId('code').textContent ?? '')
      byId('copied').textContent = 'Copied.'
    } catch {
      byId('copied').textContent = 'This browser does not let a page copy; mark the code instead.'
    }
  })
  update()
}

function row({ name, label, unit, start }: Field): HTMLElement {
  const input = make('input', { id: name, name, value: start, inputMode: 'decimal', autocomplete: 'off' })
  input.setAttribute('aria-describedby', `${name}-error`)
  const error = make('span', { id: `${name}-error`, className: 'refusal' })
  return make(
    'p',
    {},
    make('label', { htmlFor: name }, label),
    make('span', { className: 'field' }, input, make('span', {}, unit)),
    error,
  )
}

/** What is typed, as a number; a comma is read as the sign of decimals, as half of the world writes it. */
function typed(name: string): number {
  const text = byId<HTMLInputElement>(name).value.trim().replace(',', '.')
  return text === '' ? Number.NaN : Number(text)
}

function update(): void {
  const making = porewater as unknown as Making
  const input: Record<string, number> = {}
  let whole = true
  for (const { name, maker } of FIELDS) {
    const value = typed(name)
    const made = porewater.attempt(() => (maker === '' ? value : (making[maker]?.(value) as number)))
    tell(name, made.ok ? '' : Number.isFinite(value) ? made.error.message : `Give a number: ${made.error.hint}.`)
    if (made.ok) input[name] = made.value
    else whole = false
  }
  const result = whole ? porewater.attempt(() => porewater.sizeShot(input as never)) : undefined
  if (result !== undefined && !result.ok) {
    const { error } = result
    const place = 'argument' in error ? error.argument : undefined
    if (FIELDS.some(({ name }) => name === place)) tell(place as string, error.message)
    else byId('details').textContent = error.message
  }
  showCode()
  if (result?.ok) showShot(result.value)
  else {
    byId('volume').textContent = '–'
    byId('for').textContent = ''
    byId('details').textContent = 'A field needs another number; see the words beside it.'
    byId('findings').replaceChildren()
  }
}

function tell(name: string, words: string): void {
  byId(`${name}-error`).textContent = words
  byId(name).setAttribute('aria-invalid', String(words !== ''))
}

function showShot(shot: ReturnType<typeof porewater.sizeShot>): void {
  const { inMillilitres, inSeconds } = porewater
  const millilitres = (volume: typeof shot.volume) => `${inMillilitres(volume).toFixed(0)} mL`
  const seconds = Math.round(inSeconds(shot.runTime))
  byId('volume').textContent = millilitres(shot.volume)
  byId('for').textContent = `in ${Math.floor(seconds / 60)} min ${seconds % 60} s`
  byId('details').textContent =
    `${millilitres(shot.perEmitter)} from each emitter; ${millilitres(shot.retained)} should stay, ${millilitres(shot.expectedDrain)} drain.`
  byId('findings').replaceChildren(
    ...shot.findings.map((finding) =>
      make('li', { className: finding.level }, porewater.explainIrrigationFinding(finding).message),
    ),
  )
}

function showCode(): void {
  const makers = FIELDS.map(({ maker }) => maker).filter(Boolean)
  const names = ['inMillilitres', ...makers, 'sizeShot'].sort((a, b) => (a < b ? -1 : 1))
  const lines = FIELDS.map(({ name, maker }) => {
    const value = Number.isNaN(typed(name)) ? 'NaN' : String(typed(name))
    return `  ${name}: ${maker === '' ? value : `${maker}(${value})`},`
  })
  byId('code').textContent =
    `import {\n  ${names.slice(0, 4).join(', ')},\n  ${names.slice(4).join(', ')},\n} from 'porewater'\n\n` +
    `const shot = sizeShot({\n${lines.join('\n')}\n})\nconsole.log(inMillilitres(shot.volume)) // mL`
}
