import {
  controlWatering,
  hours,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  type WateringDecision,
  type WateringInput,
  type WateringSettings,
  type WateringState,
  waterContent,
} from 'porewater'

/** An invented zone: 10 L of medium, shots of 0.2 L in 3 min, 4 L in 24 h at most, 2 L on a usual day, water from 7 to 18 o'clock. */
export const settings: WateringSettings = {
  lower: waterContent(0.5),
  upper: waterContent(0.6),
  minBelievable: waterContent(0.2),
  maxBelievable: waterContent(0.8),
  substrateVolume: litres(10),
  flow: litresPerHour(4),
  shot: millilitres(200),
  maxRunTime: minutes(5),
  maxPerDay: litres(4),
  usualPerDay: litres(2),
  minRest: minutes(10),
  probeLag: minutes(15),
  maxReadingAge: minutes(20),
  maxUnchanged: hours(4),
  maxShotsWithoutRise: 4,
  allowedHours: [{ from: hours(7), to: hours(18) }],
  valveClosesByItself: true,
  inDoubt: 'timed-shots',
}

/** Midnight of an invented day. */
export const MIDNIGHT = 20_000 * 86400
export const clock = (hour: number) => MIDNIGHT + 3600 * hour

/** A moment with one reading that was just taken. */
export function moment(now: number, level: unknown, more: Partial<WateringInput> = {}): WateringInput {
  return { now, readings: [{ waterContent: level as number, time: now }], locked: false, ...more }
}

export interface Told {
  readonly now: number
  readonly decision: WateringDecision
}

/** Decides at even steps over a stretch of time. */
export function decide(
  from: number,
  until: number,
  step: number,
  input: (now: number, at: number) => WateringInput,
  changed: Partial<WateringSettings> = {},
  state?: WateringState,
): { readonly told: readonly Told[]; readonly state: WateringState } {
  const reducer = controlWatering({ ...settings, ...changed })
  let held = state ?? reducer.start
  const told: Told[] = []
  for (let now = from, at = 0; now < until; now += step, at++) {
    const [next, decision] = reducer.step(held, input(now, at))
    held = next
    told.push({ now, decision })
  }
  return { told, state: held }
}

/** Moments at which the valve was opened. */
export function openings(told: readonly Told[]): number[] {
  return told
    .filter(({ decision }, i) => decision.open && decision.opening !== told[i - 1]?.decision.opening)
    .map(({ now }) => now)
}

/** Water of the openings that began in the 24 hours up to a moment, at the flow of `settings`. Unit: L. */
export function givenUpTo(told: readonly Told[], now: number): number {
  const begun = openings(told).filter((at) => at <= now && at > now - 86400)
  const lasting = told.filter(({ now: at }) => begun.includes(at))
  return lasting.reduce((sum, { decision }) => sum + (decision.closeAfter / 3600) * settings.flow, 0)
}

/** A state an hour and a half old: the clock runs, the probe is believed, nothing was given. */
export function settled(level = 0.55, changed: Partial<WateringSettings> = {}): { state: WateringState; now: number } {
  const { state } = decide(clock(8), clock(9.5), 60, (now, i) => moment(now, level + 0.001 * (i % 2)), changed)
  return { state, now: clock(9.5) }
}
