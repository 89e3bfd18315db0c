import type { FaultName } from 'porewater'

/** A cause, the faults that show it, and the hours within which the guide promises that it is named first or second. */
export interface Promised {
  readonly cause: string
  readonly faults: readonly FaultName[]
  readonly hours: number
  /** Named too seldom to be promised; the hours are then those for which it was watched. */
  readonly unreliable?: true
}

export const PROMISES: readonly Promised[] = [
  { cause: 'no-water', faults: ['no-water', 'pump-cut', 'valve-stuck-closed'], hours: 16 },
  {
    cause: 'partial-water',
    faults: ['low-pressure', 'all-drippers-clogged', 'very-low-pressure', 'unprobed-drippers-clogged'],
    hours: 16,
  },
  { cause: 'valve-stuck-open', faults: ['valve-stuck-open'], hours: 0.5 },
  { cause: 'leak-between-shots', faults: ['valve-weeps'], hours: 1 },
  { cause: 'line-leak', faults: ['line-burst'], hours: 18 },
  { cause: 'clogged-dripper', faults: ['one-dripper-clogged'], hours: 24 },
  { cause: 'clogged-dripper', faults: ['one-dripper-half-clogged'], hours: 36 },
  { cause: 'channelling', faults: ['channelling'], hours: 24 },
  { cause: 'channelling', faults: ['water-repellent'], hours: 48 },
  { cause: 'watered-by-hand', faults: ['water-by-hand'], hours: 1 },
  {
    cause: 'probe-dead',
    faults: [
      'probe-reads-zero',
      'probe-reads-negative',
      'probe-reads-nan',
      'probe-reads-minus-999',
      'probe-reads-65535',
      'probe-reads-infinity',
      'probe-reads-null',
      'probe-reads-text',
      'probe-silent',
      'probes-read-zero',
      'probes-read-null',
    ],
    hours: 0.5,
  },
  { cause: 'no-readings', faults: ['probes-silent'], hours: 0.5 },
  { cause: 'no-readings', faults: ['messages-very-late'], hours: 1.5 },
  { cause: 'no-readings', faults: ['messages-lost', 'messages-lost-nearly-all'], hours: 2 },
  { cause: 'probe-lifted', faults: ['probe-lifted', 'probe-lifted-partly', 'probes-lifted-partly'], hours: 0.5 },
  {
    cause: 'probe-frozen',
    faults: ['probe-frozen', 'probes-frozen', 'probe-frozen-dry', 'probe-frozen-wet', 'probes-frozen-dry'],
    hours: 0.5,
  },
  { cause: 'probe-drifting', faults: ['probe-drifts-up', 'probe-drifts-down'], hours: 48 },
  { cause: 'probe-drifting', faults: ['probes-drift-up', 'probes-drift-down'], hours: 72 },
  { cause: 'probe-noisy', faults: ['probe-noisy', 'probes-noisy'], hours: 3 },
  // One reading of forty is a spike, and two of them within two hours are told: in one zone of ten that takes seven hours.
  { cause: 'probe-noisy', faults: ['probe-spikes'], hours: 10 },
  { cause: 'probes-swapped', faults: ['probes-swapped'], hours: 24 },
  { cause: 'probes-swapped', faults: ['probe-of-another-zone'], hours: 24 },
  { cause: 'probe-reinserted', faults: ['probe-reinserted-dry'], hours: 0.5 },
  { cause: 'probe-reinserted', faults: ['probe-reinserted-wet'], hours: 0.5 },
  { cause: 'salt-driven', faults: ['probe-salt-error'], hours: 216, unreliable: true },
  { cause: 'salt-driven', faults: ['probes-salt-error'], hours: 216 },
  { cause: 'temperature-driven', faults: ['probe-temperature-error', 'probes-temperature-error'], hours: 30 },
  { cause: 'unit-slip', faults: ['probe-in-percent', 'probes-in-percent', 'probe-raw'], hours: 0.5 },
  { cause: 'feed-tank-wrong', faults: ['feed-too-strong', 'feed-plain-water'], hours: 0.5 },
  { cause: 'drain-gauge-wrong', faults: ['drain-gauge-dead', 'drain-gauge-counts-double'], hours: 48 },
  { cause: 'flow-meter-wrong', faults: ['flow-meter-dead', 'flow-meter-counts-double'], hours: 16 },
  {
    cause: 'clock-wrong',
    faults: [
      'clock-jumps-ahead',
      'clock-jumps-back',
      'clock-jumps-half-a-day',
      'clock-summer-time',
      'clock-winter-time',
      'clock-flaps',
      'clock-frozen',
      'clock-in-milliseconds',
      'clock-starts-in-1970',
      'clock-is-nan',
      'sender-ahead',
      'sender-behind',
    ],
    hours: 2,
  },
  { cause: 'clock-wrong', faults: ['clock-fast'], hours: 4 },
  { cause: 'power-cut', faults: ['power-cut'], hours: 2.5 },
]

/** Share of histories in which the promise must hold. */
export const SHARE = 0.9
/** A zone is watched for so long before something goes wrong. Unit: d. */
export const WARM_UP = 3
/** Healthy zones are watched beside for so long, with these times between two calls. Unit: d, s. */
export const HEALTHY_DAYS = 21
export const HEALTHY_POLLS = [60, 300, 900] as const
