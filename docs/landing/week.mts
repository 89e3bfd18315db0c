import { chartRehearsal } from '../../src/chart/rehearsal.js'
import type * as Package from '../../src/index.js'
import { byId, make } from '../explorer/dom.mjs'

declare const porewater: typeof Package

const MEDIA = ['coir-dust', 'stone-wool', 'sphagnum-peat-moss', 'pine-bark'] as const
const inWords = (code: string) => code.replace(/-/g, ' ')
const SEED = 1
const DAYS = 7
/** Hours of the week that pass in a second while it is watched. */
const SPEED = 12
let outcome: Package.RehearsalOutcome | undefined
let timer = 0

export function startWeek(): void {
  byId('medium').replaceChildren(...MEDIA.map((name) => make('option', { value: name }, inWords(name))))
  const faults = porewater.rehearsalFaults().map(({ fault, about }) => make('option', { value: fault }, about))
  byId('fault').replaceChildren(make('option', { value: '' }, 'none: a healthy week'), ...faults)
  byId<HTMLSelectElement>('fault').value = 'valve-stuck-open'
  byId('rehearsal').addEventListener('change', rehearse)
  byId('hour').addEventListener('input', () => {
    pause()
    showHour()
  })
  byId('play').addEventListener('click', () => (timer === 0 ? play() : pause()))
  let width = innerWidth
  addEventListener('resize', () => {
    if (innerWidth !== width) draw()
    width = innerWidth
  })
  rehearse()
}

const chosen = (id: string) => byId<HTMLSelectElement>(id).value

/** The week is worked out after the page has said so, for it takes a moment. */
function rehearse(): void {
  pause()
  byId('about').textContent = 'Rehearsing the week …'
  byId('picture').setAttribute('aria-busy', 'true')
  setTimeout(() => {
    const scenario = porewater.rehearsalScenario(chosen('medium') as (typeof MEDIA)[number])
    const fault = chosen('fault') as Package.FaultName | ''
    const from = porewater.hours(24 * (Number(chosen('from')) - 1) + 9)
    const kind = porewater.rehearsalFaults().find((one) => one.fault === fault)
    const until = kind !== undefined && kind.duration > 0 ? { until: porewater.hours(from / 3600 + kind.duration) } : {}
    const result = porewater.attempt(() => {
      const zone = { zone: scenario.zone, limits: scenario.limits, days: DAYS, seed: SEED }
      const faults = fault === '' ? {} : { faults: [{ fault, from, ...until }] }
      return chosen('who') === 'person'
        ? porewater.rehearse({ ...zone, ...faults, controller: porewater.carefulPerson(scenario) })
        : porewater.rehearse({ ...zone, ...faults, controller: porewater.rehearsedWatering(scenario) })
    })
    byId('picture').removeAttribute('aria-busy')
    if (result.ok) {
      outcome = result.value
      byId('about').textContent =
        kind === undefined ? 'Nothing goes wrong this week.' : `From 09:00 of day ${chosen('from')}: ${kind.about}.`
      draw()
    } else byId('about').textContent = result.error.message
  }, 30)
}

function draw(): void {
  if (outcome === undefined) return
  const scenario = porewater.rehearsalScenario(chosen('medium') as (typeof MEDIA)[number])
  const width = Math.max(300, Math.min(1100, Math.round(byId('chart').clientWidth)))
  byId('picture').innerHTML = chartRehearsal({
    title: `A week in ${inWords(chosen('medium'))} (invented)`,
    outcome,
    lower: scenario.lower,
    upper: scenario.upper,
    stressBelow: scenario.limits.stressBelow,
    hoursFromUtc: 0,
    width,
  })
  showOutcome(outcome)
  showHour()
}

function showOutcome(week: Package.RehearsalOutcome): void {
  const litres = (volume: number) => `${volume.toFixed(1)} L`
  const facts = [
    `${week.openings.length} openings gave ${litres(week.given)} to a container; ${litres(week.drained)} drained, plants used ${litres(week.used)}.`,
    `Water content between ${(week.driest * 100).toFixed(1)} and ${(week.wettest * 100).toFixed(1)} %.`,
    ...week.findings.map((finding) => porewater.explainRehearsalFinding(finding).message),
  ]
  byId('outcome').replaceChildren(...facts.map((text) => make('li', {}, text)))
  const rows = week.alarms.map(({ time, alarm, right }) =>
    make('tr', {}, make('td', {}, moment(time)), make('td', {}, inWords(alarm)), make('td', {}, right ? 'yes' : 'no')),
  )
  const head = ['when', 'alarm', 'names something that is wrong'].map((text) => make('th', { scope: 'col' }, text))
  byId('alarms').replaceChildren(
    rows.length === 0
      ? make('p', {}, 'No alarm was raised.')
      : make('table', {}, make('thead', {}, make('tr', {}, ...head)), make('tbody', {}, ...rows)),
  )
}

function moment(seconds: number): string {
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  return `day ${Math.floor(seconds / 86400) + 1}, ${two((seconds % 86400) / 3600)}:${two((seconds % 3600) / 60)}`
}

/** The state of the zone at the hour of the slider, in numbers and as a line in the picture. */
function showHour(): void {
  const course = outcome?.course
  if (outcome === undefined || course == null) return
  const seconds = Number(byId<HTMLInputElement>('hour').value) * 3600
  const at = Math.min(course.time.length - 1, Math.floor(seconds / course.step))
  const midnight = Math.floor(seconds / 86400) * Math.round(86400 / course.step)
  const content = (value: number | undefined) =>
    value === undefined || Number.isNaN(value) ? 'no reading' : `${(value * 100).toFixed(1)} %`
  const today = (counted: Float64Array) => `${(((counted[at] ?? 0) - (counted[midnight] ?? 0)) * 1000).toFixed(0)} mL`
  const heard = outcome.alarms.filter(({ time }) => time <= seconds)
  const facts: [string, string][] = [
    ['Time', moment(seconds)],
    ['True water content', content(course.waterContent[at])],
    ...course.readings.map((values, i): [string, string] => [`Probe ${i + 1} says`, content(values[at])]),
    ['Given today', today(course.given)],
    ['Drained today', today(course.drained)],
    ['Last alarm', heard.length === 0 ? 'none' : inWords(heard[heard.length - 1]?.alarm ?? '')],
  ]
  byId('now').replaceChildren(
    ...facts.map(([name, value]) => make('div', {}, make('dt', {}, name), make('dd', {}, value))),
  )
  placeCursor(seconds / ((course.time.at(-1) ?? 0) + course.step - (course.time[0] ?? 0)))
}

/** Over the axes of the picture, wherever its margins put them. */
function placeCursor(share: number): void {
  const axis = byId('picture').querySelector<SVGPathElement>('path.axis')
  const all = [...byId('picture').querySelectorAll<SVGPathElement>('path.axis')]
  if (axis === null) return
  const whole = byId('chart').getBoundingClientRect()
  const box = axis.getBoundingClientRect()
  const bottom = all[all.length - 1]?.getBoundingClientRect().bottom ?? box.bottom
  const cursor = byId('cursor')
  cursor.hidden = false
  cursor.style.left = `${box.left - whole.left + box.width * Math.min(1, share)}px`
  cursor.style.top = `${box.top - whole.top}px`
  cursor.style.height = `${bottom - box.top}px`
}

function play(): void {
  const slider = byId<HTMLInputElement>('hour')
  if (Number(slider.value) >= 168) slider.value = '0'
  byId('play').textContent = 'Pause'
  timer = window.setInterval(() => {
    slider.value = String(Math.min(168, Number(slider.value) + SPEED / 10))
    showHour()
    if (Number(slider.value) >= 168) pause()
  }, 100)
}

function pause(): void {
  clearInterval(timer)
  timer = 0
  byId('play').textContent = 'Watch the week'
}
