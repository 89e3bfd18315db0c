import { causesOf } from './causes.js'
import { type DayAgain, dayAgain, type Example } from './day.js'
import { DAY, gapsOf } from './facts.js'
import { amount, between, clock, mean, valuesOf } from './raw.js'
import { toldIn } from './told.js'

const percent = (share: number) => (100 * share).toFixed(1)
const litres = (volume: number) => volume.toFixed(2)
const hours = (seconds: number) => (seconds / 3600).toFixed(1)
const time = (t: number) => clock(t).split(':')

/** What each part of the report of a day should tell, in the order of its sentences. */
export function reportAgain(example: Example): Map<string, string[]> {
  const day = dayAgain(example)
  return new Map([
    [`${day.setup.title}, ${example.date}`, head(day)],
    ['What was read', whatWasRead(day)],
    ['What the probes say', whatProbesSay(day)],
    ['What the container holds', whatContainerHolds(day)],
    ['Feed and drain', feedAndDrain(day)],
    ['Demand', demand(day)],
    ['What to look at', whatToLookAt(day)],
    ['Forecast, if nobody waters', forecast(day)],
    ['What may be wrong', whatMayBeWrong(day)],
    ['Proposal for the next day', [...levelAndUse(day), ...shots(day), ...different(day)]],
    ['Before you act on it', []],
  ])
}

function head({ setup, leftOut }: DayAgain): string[] {
  const refused = (name: string, count: number) => (count > 0 ? [...toldIn(name), String(count), '0', '0'] : [])
  return [
    ...toldIn(setup.about),
    ...refused('', leftOut.readings),
    ...(setup.climate ? refused(setup.climate.file, leftOut.weather) : []),
  ]
}

function whatWasRead({ today, probes, day }: DayAgain): string[] {
  return [
    String(today.length),
    ...probes.flatMap(({ name, counts: { doubtful, wrong, missing, outside } }) => [
      ...toldIn(name),
      ...[today.length - doubtful - wrong - missing, doubtful, wrong, missing].map(String),
      ...(outside > 0 ? [String(outside)] : []),
    ]),
    ...probes.flatMap(({ name, points }) =>
      gapsOf(points, day).flatMap(([from, to]) => [...toldIn(name), ...time(from), ...time(to)]),
    ),
  ]
}

function whatProbesSay(all: DayAgain): string[] {
  const { openings, pause, probes } = all
  return [
    ...(openings.length > 0 ? [String(openings.length)] : []),
    ...[...time(pause[0]), ...time(pause[1]), hours(pause[1] - pause[0])],
    ...probes.flatMap((_, p) => whatProbeSays(all, p)),
  ]
}

function whatProbeSays(
  { probes, levels, seen, nights, openings, unseen, forecasts, day }: DayAgain,
  p: number,
): string[] {
  const { name, points, full } = probes[p]!
  const values = valuesOf(between(points, day, day + DAY))
  const shots = seen[p]!
  const night = nights[p]!
  const above = levels.lasts[p]! - levels.refills[p]!
  const when = forecasts[p]!.until
  return [
    ...[...toldIn(name), percent(Math.min(...values)), percent(Math.max(...values))],
    ...(openings.length > 0 ? [openings.length - unseen[p]!.length, openings.length] : [shots.length]).map(String),
    ...[...time(shots[0]!.start.t), ...time(shots.at(-1)!.start.t)],
    percent(mean(shots.map(({ start, peak }) => peak.x - start.x))),
    ...[percent(full.level), percent(full.spread), String(full.shots)],
    ...[...time(night.from), ...time(night.to), night.fall < 0 ? 'rose' : 'fell', percent(Math.abs(night.fall))],
    ...[(100 * Math.abs(night.perHour)).toFixed(2), percent(night.morning)],
    ...[
      percent(levels.refills[p]!),
      percent(levels.lasts[p]!),
      percent(Math.abs(above)),
      above < 0 ? 'below' : 'above',
    ],
    ...(above < 0 ? [] : typeof when === 'object' ? [when.time, ...when.ninety].map(hours) : ['not known']),
  ]
}

function whatContainerHolds({ zone, levels: { bench }, root }: DayAgain): string[] {
  const volume = amount(zone.container.substrateVolume)
  const medium = bench && [
    ...[...toldIn(zone.medium.name), percent(bench.porosity), String(amount(zone.container.height))],
    ...[percent(bench.capacity), percent(bench.porosity - bench.capacity)],
    ...[String(volume), (bench.capacity * volume).toFixed(1)],
  ]
  return [...(medium ?? ['not known']), ...[Math.min(...root), Math.max(...root), mean(root)].map((x) => x.toFixed(1))]
}

function feedAndDrain({ zone, water: { entries, given, drained, stored, use, salts } }: DayAgain): string[] {
  return [
    ...[litres(given), String(entries.length), litres(drained), percent(drained / given)],
    ...[litres(Math.abs(stored)), stored < 0 ? 'came out of' : 'went into'],
    ...[litres(use), litres(use / zone.container.plants)],
    ...(salts ? [salts.feed, salts.drain].map(litres) : ['not known', 'not known']),
  ]
}

function demand({ zone, demand: { et, plant, container } }: DayAgain): string[] {
  const crop = [String(zone.cropCoefficient), litres(zone.cropCoefficient * et)]
  // FAO-56 is named twice.
  return ['56', litres(et), ...crop, litres(plant), litres(container), '56']
}

function whatToLookAt({ probes, unseen, levels: { lasts }, water, demand: { container }, root }: DayAgain) {
  const { salts, use } = water
  const apart = Math.max(...lasts) - Math.min(...lasts)
  const [low, high] = [Math.min(...root), Math.max(...root)]
  return [
    // To look at; what follows are notes.
    ...(use > 1.6 * container || use < 0.6 * container
      ? [litres(use), ((100 * use) / container).toFixed(0), litres(container)]
      : []),
    ...probes.flatMap(({ name }, p) =>
      unseen[p]!.length > 0 ? [...toldIn(name), 'rose', ...unseen[p]!.flatMap(time)] : [],
    ),
    ...(apart > 0.05 ? [percent(apart)] : []),
    ...(salts ? [salts.feed / salts.drain, water.drained / water.given].map((x) => (100 * x).toFixed(0)) : []),
    // Fruiting vegetables have it good from 18 to 25 °C: common practice, no source.
    ...(low < 18 ? [low.toFixed(1), 'cool'] : []),
    ...(high > 25 ? [high.toFixed(1), 'warm'] : []),
  ]
}

function forecast({ zone, probes, forecasts, next }: DayAgain): string[] {
  const used = (fall: number) =>
    toldIn(` ${(1000 * Math.max(0, fall) * amount(zone.container.substrateVolume)).toFixed(0)}`)
  return [
    ...['5', '10', '9', '10'],
    ...probes.flatMap(({ name }, p) => {
      const when = forecasts[p]!.until
      return [
        ...toldIn(name),
        ...(typeof when === 'object' ? [when.time, ...when.half, ...when.ninety].map(hours) : [when]),
      ]
    }),
    ...probes.flatMap(({ name }, p) => {
      const { hour } = forecasts[p]!
      return [
        ...toldIn(name),
        ...(hour === 'not known' ? [hour] : [hour.fall, ...hour.half, ...hour.ninety].flatMap(used)),
      ]
    }),
    ...(next ? [next.use, ...next.half, ...next.ninety].map(litres) : ['not known']),
  ]
}

/** Without the single openings nothing is told of causes. */
function whatMayBeWrong({ openings, today, probes, setup }: DayAgain): string[] {
  if (openings.length === 0) return []
  const { jumps, silence } = causesOf(today, probes, setup)
  return [
    // A probe that jumped may have moved, or have been lifted: two causes with one proof.
    ...jumps.flatMap(({ t, by }) => {
      const proof = [
        ...time(t),
        'jump',
        ...toldIn(` ${String(Number((100 * by).toPrecision(3))).replace('-', '−')}`),
        '0',
      ]
      return [...proof, ...proof]
    }),
    ...(silence ? [...time(silence.t), 'silence', String(Number((silence.by / 60).toPrecision(3)))] : []),
  ]
}

function levelAndUse({ levels: { full, refill, now }, use, next }: DayAgain): string[] {
  return [...[full, refill, now].map(percent), litres(use), ...(next ? next.ninety.map(litres) : [])]
}

function shots({ plan, zone: { limits, emitters, container } }: DayAgain): string[] {
  const millilitres = (volume: number) => (1000 * volume).toFixed(0)
  const largest = Math.max(...plan.openings.map((one) => one.litres))
  const large = amount(container.substrateVolume) / 10
  return [
    ...[String(plan.openings.length), litres(plan.given), String(amount(limits.maxPerDay))],
    ...[percent(plan.share), percent(amount(limits.drainFraction))],
    ...plan.openings.flatMap(({ at, litres: water, seconds, why, level }, i) => {
      const whole = Math.round(seconds)
      return [
        ...[String(i + 1), ...time(at), millilitres(water), millilitres(water / emitters.count)],
        ...[String(Math.floor(whole / 60)), String(whole % 60).padStart(2, '0')],
        ...(why === 'at the refill point' ? [percent(level), why] : [why, percent(level)]),
      ]
    }),
    ...(largest > large ? [largest, large].map((x) => String(Number(x.toPrecision(3)))) : []),
  ]
}

function different({ plan, water, done, day }: DayAgain): string[] {
  const { openings, given, share } = plan
  const change = given / water.given - 1
  const drain = water.drained / water.given
  return [
    ...(openings.length === done.length ? [] : [String(openings.length), String(done.length)]),
    ...(Math.abs(change) > 0.02
      ? [litres(given), litres(water.given), change < 0 ? '−' : '+', Math.abs(100 * change).toFixed(0)]
      : []),
    ...(Math.abs(share - drain) > 0.01 ? [percent(share), percent(drain)] : []),
    ...[0, -1].flatMap((k) => {
      const [will, was] = [openings.at(k)!.at, done.at(k)! - day]
      return Math.abs(will - was) < 900 ? [] : [...time(will), ...time(was)]
    }),
  ]
}
