import { chartPlan } from '../../src/chart/plan.js'
import { chartRetention } from '../../src/chart/retention.js'
import type * as Package from '../../src/index.js'
import { byId, make } from './dom.mjs'

declare const porewater: typeof Package

/** A number of a form: what people type, and the constructor that makes a quantity of it; empty for a plain number. */
interface Field {
  readonly name: string
  readonly label: string
  readonly unit: string
  readonly maker: string
  readonly start: number
}

/** What comes out of a form: facts in words, findings, a picture, the function behind it. */
interface Answer {
  readonly facts: readonly (readonly [name: string, value: string])[]
  readonly findings: readonly string[]
  readonly picture?: (width: number) => string
}

/** A procedure that has more than one number as its result. */
export interface Form {
  readonly id: string
  readonly title: string
  readonly about: string
  readonly page: string
  readonly fields: readonly Field[]
  readonly work: (values: Readonly<Record<string, never>>) => Answer
}

const field = (name: string, label: string, unit: string, maker: string, start: number): Field => ({
  name,
  label,
  unit,
  maker,
  start,
})
const millilitres = (litres: number) => `${(litres * 1000).toFixed(0)} mL`
const inTime = (seconds: number) => `${Math.floor(Math.round(seconds) / 60)} min ${Math.round(seconds) % 60} s`

export const FORMS: readonly Form[] = [
  {
    id: 'form-shot',
    title: 'A shot',
    about: 'Volume, run time and drain of one shot, and what to beware of.',
    page: 'irrigation.sizeShot',
    fields: [
      field('substrateVolume', 'volume of medium', 'L', 'litres', 10),
      field('rise', 'water content should rise by', 'percentage points', 'percentagePoints', 3),
      field('drainFraction', 'share that should drain', '%', 'percent', 20),
      field('emitterFlow', 'flow of one emitter', 'L/h', 'litresPerHour', 2),
      field('emitters', 'emitters in a container', '', '', 2),
      field('lineFill', 'time to fill the line', 's', 'seconds', 10),
      field('maxRunTime', 'valve opens for at most', 'min', 'minutes', 15),
    ],
    work: (values) => {
      const shot = porewater.sizeShot(values as never)
      return {
        facts: [
          ['volume', millilitres(shot.volume)],
          ['from each emitter', millilitres(shot.perEmitter)],
          ['valve open', inTime(shot.runTime)],
          ['should stay', millilitres(shot.retained)],
          ['should drain', millilitres(shot.expectedDrain)],
        ],
        findings: [
          ...shot.findings.map((finding) => porewater.explainIrrigationFinding(finding).message),
          shot.caution,
        ],
      }
    },
  },
  {
    id: 'form-day',
    title: "A day's plan",
    about: 'When to open the valve on a day whose use follows the sun, and what should come of it.',
    page: 'irrigation.planDay',
    fields: [
      field('substrateVolume', 'volume of medium', 'L', 'litres', 14),
      field('containerCapacity', 'container capacity', '% by volume', 'percent', 62),
      field('waterContent', 'water content at midnight', '% by volume', 'percent', 60),
      field('refillPoint', 'refill point', '% by volume', 'percent', 59),
      field('fullPoint', 'full point', '% by volume', 'percent', 62),
      field('use', 'use of the day, a container', 'L', 'litres', 3),
      field('drainFraction', 'share that should drain', '%', 'percent', 20),
      field('emitters', 'emitters in a container', '', '', 2),
      field('emitterFlow', 'flow of one emitter', 'L/h', 'litresPerHour', 2),
      field('maxPerDay', 'at most in the day', 'L', 'litres', 8),
    ],
    work: planned,
  },
  {
    id: 'form-retention',
    title: 'A retention curve',
    about: 'How a medium holds water against suction, and what a drained pot of it holds.',
    page: 'medium.vanGenuchten1980',
    fields: [
      field('residual', 'residual water content', '% by volume', 'percent', 12),
      field('saturated', 'saturated water content', '% by volume', 'percent', 93),
      field('alpha', 'alpha', '1/cm', 'perCentimetre', 0.1),
      field('n', 'n', '', '', 1.6),
      field('height', 'height of the pot', 'cm', 'centimetres', 18),
      field('diameter', 'diameter of the pot', 'cm', 'centimetres', 20),
    ],
    work: (values) => {
      const { height, diameter, ...curve } = values as Record<string, never>
      const medium = porewater.vanGenuchten1980(curve as never)
      const container = porewater.cylinderContainer({ diameter, height } as never)
      const capacity = porewater.containerCapacity({ container, medium })
      const litres = porewater.inLitres(container.volume)
      return {
        facts: [
          ['container capacity', `${(capacity * 100).toFixed(1)} %`],
          ['water in the drained pot', `${(litres * capacity).toFixed(2)} L of ${litres.toFixed(2)} L`],
          ['air in it', `${((medium.saturated - capacity) * 100).toFixed(1)} %`],
        ],
        findings: [],
        picture: (width) =>
          chartRetention({
            title: 'Retention curve and drained pot',
            curves: [{ name: 'medium', medium }],
            container,
            width,
          }),
      }
    },
  },
]

const DAY = 86400

/** The course of the day is that of a clear sky from six to twenty. */
function planned(values: Readonly<Record<string, number>>): Answer {
  const start = porewater.instant(20000 * DAY)
  const sun = Array.from({ length: 144 }, (_, i) => Math.max(0, Math.sin((Math.PI * (i / 6 - 6)) / 14)))
  const total = sun.reduce((sum, one) => sum + one, 0)
  const { substrateVolume, containerCapacity, use = 0, ...rest } = values
  const request = {
    ...rest,
    start,
    step: porewater.minutes(10),
    demand: sun.map((one) => (use * one) / total),
    container: {
      substrateVolume,
      containerCapacity,
      minWaterContent: porewater.waterContent(0.1),
      bypass: porewater.fraction(0.1),
      drainLag: porewater.minutes(10),
    },
    firstShot: porewater.instant(start + 7 * 3600),
    lastShot: porewater.instant(start + 17 * 3600),
    lineFill: porewater.seconds(8),
    minRunTime: porewater.minutes(1),
    maxRunTime: porewater.minutes(15),
    minRest: porewater.minutes(20),
    trigger: { by: 'level' },
  } as unknown as Package.DayPlanRequest
  const plan = porewater.planDay(request)
  return {
    facts: [
      ['shots', String(plan.shots.length)],
      ['water given', `${plan.applied.toFixed(2)} L`],
      ['of it drains', `${(plan.drainFraction * 100).toFixed(0)} %`],
      ['falls overnight by', `${(plan.overnightDryDown * 100).toFixed(1)} points`],
    ],
    findings: [...plan.findings.map((finding) => porewater.explainIrrigationFinding(finding).message), plan.caution],
    picture: (width) => chartPlan({ title: 'A day planned', plan, request, hoursFromUtc: 0, maxStep: 900, width }),
  }
}

/** Draws a form in place of an equation; each number is refused beside its own field. */
export function showForm(form: Form): void {
  const inputs = form.fields.map(({ name, label, unit, start }) => {
    const input = make('input', {
      id: `form-${name}`,
      name,
      value: String(start),
      inputMode: 'decimal',
      autocomplete: 'off',
    })
    input.setAttribute('aria-describedby', `form-${name}-error`)
    return make(
      'p',
      {},
      make('label', { htmlFor: `form-${name}` }, label),
      make('span', { className: 'row' }, input, make('span', {}, unit)),
      make('span', { id: `form-${name}-error`, className: 'refusal' }),
    )
  })
  byId('form').replaceChildren(
    make('h1', {}, form.title),
    make('p', { className: 'lead' }, form.about),
    make('form', { id: 'form-inputs', noValidate: true }, ...inputs),
    make('dl', { id: 'form-facts' }),
    make('p', { id: 'form-refusal', className: 'refusal', role: 'alert' }),
    make('div', { id: 'form-picture' }),
    make('ul', { id: 'form-findings' }),
    make('p', {}, make('a', { href: `../api/functions/${form.page}.html` }, 'Its documentation')),
  )
  byId('form-inputs').addEventListener('submit', (event) => event.preventDefault())
  byId('form-inputs').addEventListener('input', () => answer(form))
  answer(form)
}

export function answer(form: Form): void {
  const making = porewater as unknown as Readonly<Record<string, (value: number) => number>>
  const values: Record<string, number> = {}
  let whole = true
  for (const { name, maker } of form.fields) {
    const text = byId<HTMLInputElement>(`form-${name}`).value.trim().replace(',', '.')
    const value = text === '' ? Number.NaN : Number(text)
    const made = porewater.attempt(() => (maker === '' ? value : (making[maker]?.(value) as number)))
    tell(
      name,
      made.ok
        ? Number.isNaN(value)
          ? 'Give a number.'
          : ''
        : Number.isNaN(value)
          ? `Give a number: ${made.error.hint}.`
          : made.error.message,
    )
    if (made.ok && !Number.isNaN(value)) values[name] = made.value
    else whole = false
  }
  const result = whole ? porewater.attempt(() => form.work(values as never)) : undefined
  let elsewhere = ''
  if (result !== undefined && !result.ok) {
    const place = 'argument' in result.error ? (result.error.argument ?? '') : ''
    const own = form.fields.find(({ name }) => place === name || place.endsWith(`.${name}`))
    if (own === undefined) elsewhere = result.error.message
    else tell(own.name, result.error.message)
  }
  byId('form-refusal').textContent = elsewhere
  const shown = result?.ok ? result.value : undefined
  byId('form-facts').replaceChildren(
    ...(shown?.facts ?? []).map(([name, value]) => make('div', {}, make('dt', {}, name), make('dd', {}, value))),
  )
  byId('form-findings').replaceChildren(...(shown?.findings ?? []).map((text) => make('li', {}, text)))
  const width = Math.max(300, Math.min(940, byId('form-picture').clientWidth || 640))
  byId('form-picture').innerHTML = shown?.picture?.(width) ?? ''
}

function tell(name: string, words: string): void {
  byId(`form-${name}-error`).textContent = words
  byId(`form-${name}`).setAttribute('aria-invalid', String(words !== ''))
}
