import {
  type ContainerFlow,
  calibrateTwoPoint,
  centimetres,
  centimetresOfSuction,
  entriesOfRecord,
  hours,
  litres,
  minutes,
  type Reducer,
  type RichardsFlow,
  rawReading,
  runReducer,
  waterContent,
} from 'porewater'

/** A call in which an argument makes a difference, made from that in the example of its function. */
export interface Showing {
  /** The arguments instead. */
  readonly given?: (args: readonly never[]) => readonly unknown[]
  /** What to look at instead of the result. */
  readonly of?: (result: never) => unknown
}

/** The first argument with other properties, `undefined` for "not given". */
const changed =
  (more: (first: never) => object): NonNullable<Showing['given']> =>
  ([first, ...rest]) => [Object.assign({}, first, more(first!)), ...rest]

/** What a reducer says of these inputs. */
const said = (inputs: readonly object[]) => (reducer: Reducer<unknown, object, unknown>) =>
  runReducer({ reducer, inputs }).outputs

const noHumidity = changed(() => ({ maxHumidity: undefined, minHumidity: undefined, vapourPressure: undefined }))
const noRadiation = changed(() => ({ solar: undefined, sunshine: undefined }))

/** Invented: a shot every four hours, with its rise, for two days. */
const time = Array.from({ length: 576 }, (_, i) => i * 300)
const A = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t * t))
const openings = Array.from({ length: 12 }, (_, k) => 14400 * k)
const record = { time, probes: { A }, watering: { time: openings, given: openings.map(() => 0.4) } }

/** Invented: a cause that comes, goes away for ten minutes and comes again, with little more than the least weight; in the end it is shelved. */
const alarmInputs = [0, 10, 20, 30, 31, 600, 1081].map((minute) => ({
  now: 60 * minute,
  ...(minute === 600 ? { action: { name: 'no-water', action: 'shelve' } } : {}),
  diagnosis: {
    causes: [1, 2, 5].includes(minute / 10)
      ? []
      : [
          {
            code: 'no-water' as const,
            level: 'danger',
            weight: minute <= 30 ? 0.7 : 0.55,
            evidence: [],
            check: 'look-at-supply',
            since: 0,
          },
        ],
    ruledOut: [],
    cannotTell: [],
    full: { known: false, reason: 'no-trusted-probe' },
  },
  untilRefill: {
    known: true as const,
    from: 0.6,
    time: 7200 + 60 * minute,
    band50: { earliest: 7000 + 60 * minute },
    band90: { earliest: 6900 + 60 * minute },
  },
}))

/** Invented: readings every five minutes with one of them missing, then two. */
const withGaps = [0, 300, 600, 1050, 1500, 2400].map((at, i) => ({ time: at, value: 0.5 + 0.001 * i }))

const withConductivity = changed(({ points }: { points: readonly object[] }) => ({
  points: points.map((point, i) => (i > 2 ? point : { ...point, conductivity: [2, 0.3, 0.004][i] })),
}))

const calibration = calibrateTwoPoint({
  dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
  saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
})

/** Invented: the level of two probes by the minute, with a shot every hour. */
const hourlyLevel = (minute: number, i: number) =>
  waterContent(0.6 + 0.02 * Math.floor((minute + 36) / 60) - 0.0002 * (minute % 60) + 0.0007 * ((minute + i) % 3))

/** Both probes answer to a shot, then one falls silent. */
const zoneInputs = Array.from({ length: 200 }, (_, minute) => ({
  now: 60 * minute,
  open: minute % 60 === 20 || minute % 60 === 21,
  readings: ['A', 'B']
    .filter((probe) => probe === 'A' || minute < 70)
    .map((probe, i) => ({ probe, waterContent: hourlyLevel(minute, i), time: 60 * minute })),
}))

/** The same as a record. */
const silentRecord = {
  time: zoneInputs.map(({ now }) => now),
  probes: ['A', 'B'].map((name, i) => ({
    name,
    waterContent: zoneInputs.map((_, minute) => (i === 1 && minute >= 70 ? Number.NaN : hourlyLevel(minute, i))),
  })),
  shots: [1200, 4800, 8400].map((start) => ({ start, end: start + 120 })),
}

/** Water into a drained container until it drains, then an hour of drain. */
const twoSteps = (flow: ContainerFlow<unknown>) => {
  const [state, wet] = flow.step(flow.startFrom(waterContent(0.8)), {
    duration: minutes(10),
    applied: litres(3),
    demand: litres(0),
  })
  const [, later] = flow.step(state, { duration: minutes(60), applied: litres(0), demand: litres(0) })
  return [wet.drained, later.drained]
}

/** Invented: what a probe read beside the drain of the example. */
const withReadings = [0.75, 0.74, 0.73, 0.76, 0.74, 0.73].map((level) => waterContent(level))

/** What evaporates from a container that is nearly as dry as air makes it. */
const dryingOut = (flow: RichardsFlow) => {
  const state = flow.startAt(() => centimetresOfSuction(30_000))
  const [, { evaporated }] = flow.step(state, {
    duration: hours(6),
    applied: litres(0),
    demand: litres(0),
    evaporation: litres(1),
  })
  return evaporated
}

/** By function and argument: where the example of a function does not need an argument that it could do without. */
export const SHOWING: Readonly<Record<string, Showing>> = {
  'dailyReferenceETFao56 weather.aridity': { given: noHumidity },
  'dailyReferenceETAsce2005 weather.aridity': { given: noHumidity },
  'monthlyReferenceETFao56 input.aridity': { given: noHumidity },
  'dailyReferenceETFao56 weather.exposure': { given: noRadiation },
  'dailyReferenceETAsce2005 weather.exposure': { given: noRadiation },
  'monthlyReferenceETFao56 input.exposure': { given: noRadiation },
  'formatQuantity style.digits': { given: ([amount, kind]) => [amount, kind, { unit: 'mL' }] },
  'seriesFromCsv options.comment': {
    given: ([, options]) => ['# invented\nZeit;Feuchte\n19.05.2026 07:00;55,3\n', options],
  },
  'drawPanels chart.gapName': {
    given: changed(() => ({
      panels: [
        { yTitle: 'share', series: [{ name: 'a', x: [0, 0.3, 0.6, 1], y: [0, 0.3, Number.NaN, 1], draw: 'line' }] },
      ],
      gaps: [[0.3, 1]],
    })),
  },
  'watchReadings limits.gapFactor': { of: said(withGaps) },
  'zoneAlarms settings.minWeight': { of: said(alarmInputs) },
  'zoneAlarms settings.onDelay': { of: said(alarmInputs) },
  'zoneAlarms settings.offDelay': { of: said(alarmInputs) },
  'zoneAlarms settings.deadBand': { of: said(alarmInputs) },
  'zoneAlarms settings.maxShelving': { of: said(alarmInputs) },
  'zoneAlarms settings.warnAhead': { of: said(alarmInputs) },
  'alarmConditions input.minWeight': {
    given: changed(() => ({ diagnosis: alarmInputs[0]!.diagnosis })),
  },
  'probeDrift input.tolerance': {
    given: changed(() => ({ calibration })),
  },
  'fitRetention request.logConductivityUncertainty': { given: withConductivity },
  'chooseRetentionModel input.logConductivityUncertainty': { given: withConductivity },
  'reviewZone input.zone.wateringLog': { given: changed(() => ({ record })) },
  'reviewDay input.zone.wateringLog': { given: changed(() => ({ record, date: '1970-01-02' })) },
  'followZone zone.wateringLog': { of: said(entriesOfRecord(record)) },
  'watchZone settings.maxReadingAge': { of: said(zoneInputs) },
  'diagnoseRecord input.maxReadingAge': { given: changed(() => ({ record: silentRecord })) },
  'watchZone settings.responseTime': { of: said(zoneInputs) },
  'forecastLevel settings.drainTime': {
    of: (reducer: Reducer<unknown, object, unknown>) =>
      runReducer({ reducer, inputs: time.map((at, i) => ({ time: at, waterContent: A[i] })) }).outputs,
  },
  'containerFlowRichards1931 input.bypass': { of: twoSteps },
  'containerFlowRichards1931 input.tolerance': { of: twoSteps },
  'containerFlowRichards1931 input.airDry': { of: dryingOut },
  'layeredFlowRichards1931 input.airDry': { of: dryingOut },
  'layeredFlowRichards1931 input.bypass': { of: twoSteps },
  'layeredFlowRichards1931 input.tolerance': { of: twoSteps },
  'fitMediumToRecord record.guess.probeOffset': {
    given: changed(() => ({
      nodes: 5,
      tolerance: 0.01,
      probe: { height: centimetres(6), sensedHeight: centimetres(4), waterContents: withReadings },
    })),
  },
  'fitMediumToRecord record.startUncertainty': {
    given: changed(() => ({
      nodes: 5,
      tolerance: 0.01,
      start: waterContent(0.78),
      fit: ['saturatedConductivity', 'start'],
    })),
  },
  // For all arguments of its own: coarse, because it simulates a hundred times.
  fitMediumToRecord: { given: changed(() => ({ nodes: 5, tolerance: 0.01 })) },
}
