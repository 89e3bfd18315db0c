/**
 * Draws the pictures of the guides, next to them, from invented data, and one from errors that were measured: `npx tsx docs/tools/plots.ts`. With a folder as argument it
 * writes there instead.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  centimetres,
  centimetresOfSuction,
  cylinderContainer,
  type DayPlanRequest,
  type DrainEC,
  fitCalibration,
  fitDryDown,
  fitRetention,
  formVanGenuchten1980,
  fraction,
  hours,
  instant,
  minutes,
  type Observation,
  percent,
  planDay,
  rawReading,
  rehearsalScenario,
  rehearse,
  waterContent,
} from 'porewater'
import {
  chartCalibration,
  chartDrain,
  chartDryDown,
  chartPlan,
  chartRehearsal,
  chartRetention,
  chartWaterByHeight,
  drawPanels,
} from 'porewater/chart'
import { bagDay } from './bag-day.js'
import { dayInMedium } from './day-in-medium.js'

/** 19 May 2026, midnight where clocks are two hours ahead. */
const MIDNIGHT = Date.UTC(2026, 4, 18, 22) / 1000
const AHEAD = 2

/** Noise that is the same each time, between -1 and 1. */
function wobble(i: number): number {
  return Math.sin(i * 12.9898) * 0.6 + Math.sin(i * 78.233 + 1) * 0.4
}

function retention(): string {
  // The readings of the guide.
  const readings = [
    [1, 0.893],
    [5, 0.829],
    [10, 0.747],
    [15, 0.668],
    [20, 0.617],
    [30, 0.529],
    [50, 0.44],
    [70, 0.383],
    [100, 0.338],
    [200, 0.262],
    [300, 0.231],
  ] as const
  const points = readings.map(([s, w]) => ({ suction: centimetresOfSuction(s), waterContent: waterContent(w) }))
  const fit = fitRetention({ points, form: formVanGenuchten1980 })
  return chartRetention({
    title: 'Retention curve and a drained pot, 20 cm wide and 18 cm high (invented)',
    curves: [{ name: 'van Genuchten fit', medium: fit.model, points }],
    container: cylinderContainer({ diameter: centimetres(20), height: centimetres(18) }),
  })
}

/** The last night of the record of the guide. */
function dryDown(): string {
  const start = Date.UTC(2026, 4, 20, 20, 30) / 1000
  const time = Array.from({ length: 42 }, (_, i) => start + i * 300)
  const content = time.map((_, i) =>
    i > 14 && i < 19 ? Number.NaN : 0.592 - (0.0018 / 12) * i + 0.0004 * Math.sin((822 + i) ** 2),
  )
  return chartDryDown({
    title: 'A night without water and its forecast (invented)',
    time,
    waterContent: content,
    fit: fitDryDown({ time, waterContent: content }),
    refillPoint: waterContent(0.575),
    hoursFromUtc: 0,
    maxStep: 660,
  })
}

function calibration(): string {
  // The samples of the guide.
  const samples = [
    [320, 0.03],
    [410, 0.1],
    [500, 0.27],
    [655, 0.49],
    [780, 0.58],
    [1010, 0.86],
  ].map(([r, w]) => ({ reading: rawReading(r as number), waterContent: waterContent(w as number) }))
  return chartCalibration({
    title: 'A line through six samples of one medium (invented)',
    calibration: fitCalibration({ samples, form: 'line', porosity: fraction(0.94) }),
    readingTitle: 'reading, raw',
  })
}

/** The request of the guide. */
const requestOfDay: DayPlanRequest = {
  ...bagDay,
  start: instant(MIDNIGHT),
  container: { ...bagDay.container, drainLag: minutes(15) },
  refillPoint: waterContent(0.595),
  firstShot: instant(MIDNIGHT + 7.5 * 3600),
  lastShot: instant(MIDNIGHT + 17 * 3600),
}

function plan(): string {
  const day = planDay(requestOfDay)
  const time = Array.from(day.time)
  return chartPlan({
    title: 'A planned day and what came of it (invented)',
    plan: day,
    request: requestOfDay,
    readings: {
      time,
      // Without that shot the bag stays drier by it, until the next ones fill it.
      waterContent: time.map((t, i) => {
        const missed = day.shots[4]?.time ?? Number.NaN
        const next = day.shots[6]?.time ?? Number.NaN
        return i > 40 && i < 45
          ? Number.NaN
          : day.waterContent[i]! - (t > missed && t <= next ? 0.022 : 0) + 0.0006 * wobble(i)
      }),
    },
    // A valve that did not open at noon.
    given: day.shots
      .filter((_, i) => i !== 4)
      .map(({ time: at, volume }, i) => ({ time: at + 60, millilitres: volume * 1000 * (0.96 + 0.02 * wobble(i)) })),
    hoursFromUtc: AHEAD,
    maxStep: 900,
  })
}

function drain(): string {
  const days = Array.from({ length: 21 }, (_, i) => i)
  return chartDrain({
    title: 'Three weeks of drain and salt (invented)',
    time: days.map((i) => MIDNIGHT + (i + 0.5) * 86400),
    drainFraction: days.map((i) =>
      i === 9 ? Number.NaN : 0.25 - 0.011 * Math.min(i, 12) + 0.03 * wobble(i) + (i > 13 ? 0.16 : 0),
    ),
    feedEC: days.map((i) => 2.4 + 0.05 * wobble(i + 3)),
    drainEC: days.map((i) =>
      i === 9 ? Number.NaN : 3 + 0.13 * Math.min(i, 13) - (i > 13 ? 0.16 * (i - 13) : 0) + 0.12 * wobble(i),
    ),
    wantedFraction: percent(25),
    maxDrainEC: 4.5 as DrainEC,
    hoursFromUtc: AHEAD,
  })
}

/** Errors that `tests/measured/permittivity-50MHz.test.ts` found on five soils; the readings themselves are not part of this project. */
function errorsOnRealSoils(): string {
  const errors = [
    ['Topp 1980', 0.099],
    ['other soil', 0.093],
    ['one for all', 0.053],
    ['2 points, root', 0.034],
    ['2 points, line', 0.03],
    ['own line', 0.019],
    ['own parabola', 0.015],
  ] as const
  return drawPanels({
    title: 'What an own calibration is worth: error on five soils at 50 MHz (measured)',
    alternative: `Root mean square errors in m³/m³: ${errors.map(([name, error]) => `${name} ${error}`).join(', ')}.`,
    xTitle: 'what turns permittivity into water content',
    xRange: [-0.5, errors.length - 0.5],
    xTicks: errors.map(([text], x) => ({ x, text })),
    panels: [
      {
        yTitle: 'RMSE, m³/m³',
        yRange: [0, 0.1],
        series: [{ name: 'RMSE', x: errors.map((_, i) => i), y: errors.map(([, error]) => error), draw: 'bars' }],
      },
    ],
    width: 960,
    height: 320,
  })
}

/** The logic of the guide, which believes the first probe, and a probe that falls to zero. */
function flood(): string {
  const scenario = rehearsalScenario('coir-dust')
  const controller = {
    reducer: {
      start: { last: 1 },
      step: (state: { last: number }, reading: unknown) => {
        const last = typeof reading === 'number' ? reading : state.last
        return [{ last }, last < 0.7] as const
      },
    },
    input: ({ readings }: Observation) => readings.find(({ probe }) => probe === 0)?.value,
    order: (open: boolean) => ({ open, closeAfter: 60 }),
  }
  const faults = [{ fault: 'probe-reads-zero' as const, from: hours(30) }]
  return chartRehearsal({
    title: 'A logic that believes its probe (invented)',
    outcome: rehearse({ zone: scenario.zone, limits: scenario.limits, controller, days: 7, seed: 1, faults }),
    lower: scenario.lower,
    upper: scenario.upper,
    hoursFromUtc: 0,
  })
}

/** Every picture by its file name. */
export const PLOTS: Readonly<Record<string, () => string>> = {
  'what-your-container-holds-curve.svg': retention,
  'learn-the-dry-down-forecast.svg': dryDown,
  'probe-to-water-content-calibration.svg': calibration,
  'probe-to-water-content-errors.svg': errorsOnRealSoils,
  'plan-a-day-outcome.svg': plan,
  'drain-and-salts-weeks.svg': drain,
  'water-on-the-move-stone-wool.svg': () => chartWaterByHeight(dayInMedium('stone wool')),
  'water-on-the-move-coir.svg': () => chartWaterByHeight(dayInMedium('coir')),
  'water-on-the-move-peat.svg': () => chartWaterByHeight(dayInMedium('peat')),
  'rehearse-your-logic-flood.svg': flood,
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const folder = process.argv[2] ?? fileURLToPath(new URL('../guides/', import.meta.url))
  mkdirSync(folder, { recursive: true })
  for (const [name, draw] of Object.entries(PLOTS)) {
    writeFileSync(`${folder}/${name}`, `${draw()}\n`)
    process.stdout.write(`${name}\n`)
  }
}
