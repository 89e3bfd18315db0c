/** What is wrong at a probe, and with the numbers that it sends. */
export interface ProbeEffects {
  /** Sends nothing. */
  silent: boolean
  /** Sends the number that it sent when the fault began. */
  frozen: boolean
  /** Sends this instead of what it measures. */
  instead: number | string | boolean | null | undefined
  /** Share of the medium that its rods still touch. Unit: 1. */
  contact: number
  /** Added to what it measures. Unit: m³/m³. */
  offset: number
  /** Rise of what it adds, and since when. Unit: m³/m³ a day, s. */
  driftPerDay: number
  driftSince: number
  /** More noise. Unit: m³/m³. */
  noise: number
  /** Height of spikes, of which one reading in forty has one. Unit: m³/m³. */
  spike: number
  /** Answer to salt. Unit: m³/m³ for each dS/m of pore water above the start. */
  perSalt: number
  /** Answer to temperature. Unit: m³/m³ for each °C above 20. */
  perDegree: number
  /** Belongs to another zone. */
  foreign: boolean
  /** What it sends is `factor` × water content + `shift`. */
  factor: number
  shift: number
  /** Sends its number as text. */
  asText: boolean
}

/** Everything that can differ from a zone in which all is well. It is made anew whenever a fault begins or ends. */
export interface Effects {
  /** Share of the flow that pressure and pump give. Unit: 1. */
  supply: number
  valve: 'works' | 'open' | 'closed'
  /** Whether the valve closes by itself at the time that came with the order. */
  closesItself: boolean
  /** Share of the flow that passes the closed valve. Unit: 1. */
  weep: number
  /** Flow that a burst lets out beside the containers, as a share of the flow of the zone. Unit: 1. */
  burst: number
  /** Share of its flow that each dripper gives; the last stands for all containers without a probe. Unit: 1. */
  readonly drippers: Float64Array
  /** Share of the water that runs past the medium. Unit: 1. */
  bypass: number
  /** More of it the drier the medium: share at 0.1 m³/m³ below the start. Unit: 1. */
  repellence: number
  /** Container capacity instead of its own; zero for its own. Unit: m³/m³. */
  capacity: number
  /** Factors of use and light. Unit: 1. */
  use: number
  light: number
  /** Factor of the salts in the feed. Unit: 1. */
  feed: number
  /** Factors of what gauge and meter show. Unit: 1. */
  gauge: number
  meter: number
  feedback: 'works' | 'open' | 'closed'
  power: boolean
  /** Whether somebody calls the controller. */
  called: boolean
  readonly probes: readonly ProbeEffects[]
  /** Whether the first two probes carry each other's name. */
  swapped: boolean
  /** Share of messages that get lost; one lost in each of these spans; longest delay; share that come twice; whether old ones come again. */
  lost: number
  lostEvery: number
  delay: number
  twice: number
  replayed: boolean
  /** What the clock of the sender is ahead. Unit: s. */
  senderAhead: number
  /** The same for orders to the valve. */
  ordersLost: number
  ordersDelay: number
  /** What the clock of the controller is ahead; by what it flaps; seconds that it gains in a second, since when; what it multiplies. */
  clockAhead: number
  clockFlap: number
  clockGain: number
  clockGainSince: number
  clockFactor: number
  /** Since when it stands still; less than zero while it runs. */
  clockFrozenAt: number
  clockBroken: boolean
  /** Orders of people. */
  override: 'open' | 'closed' | null
  locked: boolean
}

/** A zone in which all is well. */
export function noEffects(probes: number): Effects {
  return {
    supply: 1,
    valve: 'works',
    closesItself: true,
    weep: 0,
    burst: 0,
    drippers: new Float64Array(probes + 1).fill(1),
    bypass: 0,
    repellence: 0,
    capacity: 0,
    use: 1,
    light: 1,
    feed: 1,
    gauge: 1,
    meter: 1,
    feedback: 'works',
    power: true,
    called: true,
    probes: Array.from({ length: probes }, noProbeEffects),
    swapped: false,
    lost: 0,
    lostEvery: 0,
    delay: 0,
    twice: 0,
    replayed: false,
    senderAhead: 0,
    ordersLost: 0,
    ordersDelay: 0,
    clockAhead: 0,
    clockFlap: 0,
    clockGain: 0,
    clockGainSince: 0,
    clockFactor: 1,
    clockFrozenAt: -1,
    clockBroken: false,
    override: null,
    locked: false,
  }
}

function noProbeEffects(): ProbeEffects {
  return {
    silent: false,
    frozen: false,
    instead: undefined,
    contact: 1,
    offset: 0,
    driftPerDay: 0,
    driftSince: 0,
    noise: 0,
    spike: 0,
    perSalt: 0,
    perDegree: 0,
    foreign: false,
    factor: 1,
    shift: 0,
    asText: false,
  }
}
