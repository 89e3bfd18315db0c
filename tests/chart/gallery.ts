import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  cropCoefficient,
  cylinderContainer,
  type DayPlanRequest,
  type DrainEC,
  fitCalibration,
  fitDryDown,
  hours,
  instant,
  latitude,
  litres,
  litresPerHour,
  metresAboveSeaLevel,
  minutes,
  perCentimetre,
  percent,
  planDay,
  plantsPerSquareMetre,
  rawReading,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  reviewZone,
  seconds,
  vanGenuchten1980,
  waterContent,
  waterContentChange,
  type Zone,
} from 'porewater'
import {
  chartCalibration,
  chartDay,
  chartDrain,
  chartDryDown,
  chartPlan,
  chartRehearsal,
  chartRetention,
  chartReview,
  chartSeason,
  chartWaterByHeight,
} from 'porewater/chart'
import { bagDay } from '../../docs/tools/bag-day.js'

const START = 1779148800
const DAY = 86400
const coir = vanGenuchten1980({
  residual: waterContent(0.12),
  saturated: waterContent(0.93),
  alpha: perCentimetre(0.1),
  n: 1.6,
})

/** A picture of every kind with awkward names and numbers, at a width. All data are invented. */
export const GALLERY: Readonly<Record<string, (width: number) => string>> = {
  day: (width) => chartDay({ ...day(), width }),
  'day without shots': (width) => chartDay({ ...day(), shots: [], width }),
  drain: (width) =>
    chartDrain({
      title: 'Bench 3, three weeks in May (invented)',
      time: Array.from({ length: 21 }, (_, i) => START + (i + 0.5) * DAY),
      drainFraction: Array.from({ length: 21 }, (_, i) => 0.2 + 0.1 * Math.sin(i)),
      feedEC: Array.from({ length: 21 }, () => 2.2),
      drainEC: Array.from({ length: 21 }, (_, i) => 3 + 0.05 * i),
      wantedFraction: percent(25),
      maxDrainEC: 4.5 as DrainEC,
      hoursFromUtc: 2,
      width,
    }),
  'dry-down': (width) => {
    const night = {
      time: Array.from({ length: 80 }, (_, i) => START + 600 * i),
      waterContent: Array.from({ length: 80 }, (_, i) => 0.6 - 0.0006 * i + 0.0004 * Math.sin(7 * i)),
    }
    const fit = fitDryDown(night)
    const refillPoint = waterContent(0.52)
    return chartDryDown({
      ...night,
      title: 'A night (invented)',
      fit,
      refillPoint,
      hoursFromUtc: 0,
      maxStep: 900,
      width,
    })
  },
  plan: (width) => chartPlan({ ...plan(), width }),
  calibration: (width) => {
    const samples = [
      [300, 0.02],
      [520, 0.2],
      [760, 0.41],
      [905, 0.58],
      [1100, 0.78],
    ].map(([r, w]) => ({ reading: rawReading(r as number), waterContent: waterContent(w as number) }))
    const calibration = fitCalibration({ samples, form: 'line', porosity: percent(92) })
    return chartCalibration({ title: 'Probe 7 in coir (invented)', calibration, readingTitle: 'reading, mV', width })
  },
  retention: (width) =>
    chartRetention({
      title: 'Coir dust and a fine sand in a pot of 18 cm (invented)',
      curves: [
        {
          name: 'coir dust',
          medium: coir,
          points: [{ suction: centimetresOfSuction(10), waterContent: waterContent(0.8) }],
        },
        {
          name: 'a fine sand',
          medium: vanGenuchten1980({
            residual: waterContent(0.05),
            saturated: waterContent(0.4),
            alpha: perCentimetre(0.08),
            n: 3,
          }),
        },
      ],
      container: cylinderContainer({ diameter: centimetres(20), height: centimetres(18) }),
      porosity: percent(95),
      width,
    }),
  rehearsal: (width) => {
    const scenario = rehearsalScenario('coir-dust')
    const faults = [
      { fault: 'valve-stuck-open' as const, from: hours(33), until: hours(39) },
      { fault: 'probe-frozen-wet' as const, from: hours(50) },
    ]
    const outcome = rehearse({
      zone: scenario.zone,
      limits: scenario.limits,
      controller: rehearsedWatering(scenario),
      days: 4,
      seed: 1,
      faults,
    })
    const { lower, upper } = scenario
    const stressBelow = scenario.limits.stressBelow
    return chartRehearsal({ title: 'Four days (invented)', outcome, lower, upper, stressBelow, hoursFromUtc: 0, width })
  },
  'water by height': (width) =>
    chartWaterByHeight({ title: 'A shot runs through (invented)', moments: moments(), width }),
  review: (width) => chartReview({ ...reviewed(), width }),
  season: (width) => chartSeason({ title: 'Nine days of bench 4 (invented)', days: season(), hoursFromUtc: 0, width }),
}

function day() {
  const time = Array.from({ length: 289 }, (_, i) => START + 300 * i)
  const value = time.map((_, i) => (i > 120 && i < 140 ? Number.NaN : 0.58 + 0.02 * Math.sin(i / 9)))
  return {
    title: 'Bench 3: a day with a gap, two probes and their limits (invented)',
    time,
    waterContent: [
      { name: 'probe A at the dripper', value },
      { name: 'probe B', value: value.map((one) => one - 0.02) },
    ],
    shots: [8, 10, 12, 14, 15.5].map((hour) => ({ time: START + hour * 3600, millilitres: 150 + hour })),
    refillPoint: waterContent(0.575),
    fullPoint: waterContent(0.579),
    below: [{ axis: 'root zone, °C', name: 'root zone', value: time.map((_, i) => 20 + Math.sin(i / 40)) }],
    hoursFromUtc: 0,
    maxStep: 900,
  }
}

function plan() {
  const request: DayPlanRequest = {
    ...bagDay,
    demand: new Array(144).fill(0.02),
    drainFraction: percent(20),
    lastShot: instant(START + 17 * 3600),
    maxPerDay: litres(8),
  }
  const made = planDay(request)
  const readings = { time: made.time, waterContent: made.waterContent.map((one, i) => one - 0.004 * Math.sin(i / 20)) }
  const given = made.shots.map(({ time }) => ({ time: (time as number) + 300, millilitres: 180 }))
  return { title: 'Bench 3 (invented)', plan: made, request, readings, given, hoursFromUtc: 0, maxStep: 900 }
}

function moments() {
  const flow = containerFlowRichards1931({
    container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
    medium: coir,
    saturatedConductivity: centimetresPerHour(60),
  })
  let state = flow.startAt((height) => centimetresOfSuction(height + 10))
  const all = [{ time: minutes(0), profile: flow.profile(state), drained: litres(0) }]
  for (let i = 1; i <= 8; i++) {
    const [next, after] = flow.step(state, {
      duration: minutes(15),
      applied: litres(i === 2 ? 0.6 : 0),
      demand: litres(0),
    })
    state = next
    all.push({ time: minutes(15 * i), profile: flow.profile(state), drained: after.drained })
  }
  return all
}

const zone: Zone = {
  name: 'bench 4',
  container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
  plantDensity: plantsPerSquareMetre(2.5),
  cropCoefficient: cropCoefficient(1),
  emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
  probes: [{ name: 'A' }, { name: 'B' }],
  place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
  readingStep: minutes(5),
  limits: {
    maxPerDay: litres(8),
    minRunTime: minutes(2),
    maxRunTime: minutes(20),
    minRest: minutes(20),
    drainFraction: percent(20),
    allowedFall: waterContentChange(0.03),
    lowerLimit: waterContent(0.1),
    minBelievable: waterContent(0.05),
    maxBelievable: waterContent(0.9),
    minRise: waterContentChange(0.01),
    firstShotAfterLight: hours(1),
    lastShotBeforeDark: hours(3),
  },
}

function recordOf(days: number) {
  const time = Array.from({ length: 288 * days }, (_, i) => i * 300)
  const A = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t * t))
  const B = time.map((t) => 0.57 - (0.022 * (t % 14400)) / 14400 + 0.0004 * Math.cos(t * t))
  const every = Array.from({ length: 6 * days }, (_, i) => i * 14400)
  const watering = {
    time: every,
    given: every.map(() => 0.35),
    drained: every.map(() => 0.07),
    feedEC: every.map(() => 2.2),
    drainEC: every.map((_, i) => 3 + i / 60),
  }
  return { time, probes: { A, B }, watering }
}

export function season() {
  return reviewZone({ zone, record: recordOf(9) }).days
}

export function reviewed() {
  const record = recordOf(2)
  const day = reviewZone({ zone, record }).days[1]!
  const curves = Object.entries(record.probes).map(([name, value]) => ({ name, value }))
  return { title: 'Bench 4 (invented)', day, time: record.time, waterContent: curves, hoursFromUtc: 0, maxStep: 900 }
}
