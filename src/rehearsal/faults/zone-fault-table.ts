import type { FaultRow } from './fault-row.js'

/** Faults of messages, water, power, clock, gauges, medium and weather, and deeds of people. Their sizes are invented. */
export const ZONE_FAULTS = {
  'probes-swapped': {
    sign: 'probes-swapped',
    about: 'the first two probes carry the name of each other',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.swapped = true
    },
  },
  'messages-lost': {
    sign: 'messages-late',
    about: 'half of the messages get lost',
    duration: 0,
    size: 0.5,
    unit: 'share',
    act: (effects, { size }) => {
      effects.lost = Math.max(effects.lost, size)
    },
  },
  'messages-lost-nearly-all': {
    sign: 'no-readings',
    about: 'nineteen of twenty messages get lost',
    duration: 0,
    size: 0.95,
    unit: 'share',
    act: (effects, { size }) => {
      effects.lost = Math.max(effects.lost, size)
    },
  },
  'message-lost-now-and-then': {
    sign: 'none',
    about: 'all messages of one poll get lost every two hours',
    duration: 0,
    size: 2,
    unit: 'h',
    act: (effects, { size }) => {
      effects.lostEvery = size * 3600
    },
  },
  'messages-late': {
    sign: 'messages-late',
    about: 'messages come late by up to 40 minutes, and in any order',
    duration: 0,
    size: 2400,
    unit: 's',
    act: (effects, { size }) => {
      effects.delay = Math.max(effects.delay, size)
    },
  },
  'messages-very-late': {
    sign: 'messages-late',
    about: 'messages come late by up to four hours, and in any order',
    duration: 0,
    size: 14400,
    unit: 's',
    act: (effects, { size }) => {
      effects.delay = Math.max(effects.delay, size)
    },
  },
  'messages-out-of-order': {
    sign: 'none',
    about: 'messages overtake each other within five minutes',
    duration: 0,
    size: 300,
    unit: 's',
    act: (effects, { size }) => {
      effects.delay = Math.max(effects.delay, size)
    },
  },
  'messages-twice': {
    sign: 'none',
    about: 'half of the messages come twice',
    duration: 0,
    size: 0.5,
    unit: 'share',
    act: (effects, { size }) => {
      effects.twice = size
    },
  },
  'messages-replayed': {
    sign: 'messages-late',
    about: 'a buffer sends old messages again, with their old times',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.replayed = true
    },
  },
  'sender-ahead': {
    sign: 'clock',
    about: 'the clock of the sender is an hour ahead',
    duration: 0,
    size: 3600,
    unit: 's',
    act: (effects, { size }) => {
      effects.senderAhead += size
    },
  },
  'sender-behind': {
    sign: 'clock',
    about: 'the clock of the sender is an hour behind',
    duration: 0,
    size: -3600,
    unit: 's',
    act: (effects, { size }) => {
      effects.senderAhead += size
    },
  },
  'orders-lost': {
    sign: 'orders-lost',
    about: 'a third of the orders to the valve get lost',
    duration: 0,
    size: 0.33,
    unit: 'share',
    act: (effects, { size }) => {
      effects.ordersLost = size
    },
  },
  'orders-late': {
    sign: 'orders-lost',
    about: 'orders reach the valve up to five minutes late',
    duration: 0,
    size: 300,
    unit: 's',
    act: (effects, { size }) => {
      effects.ordersDelay = size
    },
  },
  'controller-not-called': {
    sign: 'none',
    about: 'nobody calls the controller for three hours',
    duration: 3,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.called = false
    },
  },
  'one-dripper-clogged': {
    sign: 'clogged-emitter',
    about: 'the dripper at one probe is clogged',
    duration: 0,
    size: 0,
    unit: 'share left',
    act: (effects, { size, place }) => {
      effects.drippers[place] = size
    },
  },
  'one-dripper-half-clogged': {
    sign: 'clogged-emitter',
    about: 'the dripper at one probe gives half',
    duration: 0,
    size: 0.5,
    unit: 'share left',
    act: (effects, { size, place }) => {
      effects.drippers[place] = size
    },
  },
  'unprobed-drippers-clogged': {
    sign: 'partial-water',
    about: 'a third of the drippers without a probe is clogged',
    duration: 0,
    size: 0.67,
    unit: 'share left',
    act: (effects, { size }) => {
      effects.drippers[effects.drippers.length - 1] = size
    },
  },
  'all-drippers-clogged': {
    sign: 'partial-water',
    about: 'all drippers give four tenths',
    duration: 0,
    size: 0.4,
    unit: 'share left',
    act: (effects, { size }) => {
      for (let i = 0; i < effects.drippers.length; i++) effects.drippers[i]! *= size
    },
  },
  'no-water': {
    sign: 'no-water',
    about: 'the supply is dry for six hours',
    duration: 6,
    size: 0,
    unit: 'share left',
    act: (effects, { size }) => {
      effects.supply *= size
    },
  },
  'low-pressure': {
    sign: 'partial-water',
    about: 'the pressure gives half of the flow',
    duration: 0,
    size: 0.5,
    unit: 'share left',
    act: (effects, { size }) => {
      effects.supply *= size
    },
  },
  'very-low-pressure': {
    sign: 'partial-water',
    about: 'the pressure gives a fifth of the flow for a day',
    duration: 24,
    size: 0.2,
    unit: 'share left',
    act: (effects, { size }) => {
      effects.supply *= size
    },
  },
  'pump-cut': {
    sign: 'no-water',
    about: 'the pump stops for four hours',
    duration: 4,
    size: 0,
    unit: '1',
    act: (effects, { size }) => {
      effects.supply *= size
    },
  },
  'valve-stuck-open': {
    sign: 'valve-stuck-open',
    about: 'the valve stays open for six hours, whatever is ordered',
    duration: 6,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.valve = 'open'
    },
  },
  'valve-stuck-closed': {
    sign: 'no-water',
    about: 'the valve stays closed for six hours, whatever is ordered',
    duration: 6,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.valve = 'closed'
    },
  },
  'valve-weeps': {
    sign: 'leak',
    about: 'the closed valve lets four hundredths of the flow pass',
    duration: 0,
    size: 0.04,
    unit: 'share of the flow',
    act: (effects, { size }) => {
      effects.weep = size
    },
  },
  'valve-does-not-close-itself': {
    sign: 'valve-does-not-close',
    about: 'the valve does not close by itself, only when it is told',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.closesItself = false
    },
  },
  'line-burst': {
    sign: 'leak',
    about: 'a burst lets half of the flow out and halves the pressure',
    duration: 24,
    size: 0.5,
    unit: 'share of the flow',
    act: (effects, { size }) => {
      effects.burst = size
      effects.supply *= 1 - size
    },
  },
  'power-cut': {
    sign: 'power',
    about: 'no power for two hours; then all starts again from the stored state',
    duration: 2,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.power = false
    },
  },
  'restart-whole': {
    sign: 'restart',
    about: 'restarts from the stored state, every twelve hours',
    duration: 0,
    size: 12,
    unit: 'h',
    once: 'restart-whole',
    act: () => {},
  },
  'restart-partial': {
    sign: 'restart',
    about: 'restarts from a stored state with fields lost, nulled or retyped, every twelve hours',
    duration: 0,
    size: 12,
    unit: 'h',
    once: 'restart-partial',
    act: () => {},
  },
  'restart-empty': {
    sign: 'restart',
    about: 'restarts without a state, every twelve hours',
    duration: 0,
    size: 12,
    unit: 'h',
    once: 'restart-empty',
    act: () => {},
  },
  'restart-old': {
    sign: 'restart',
    about: 'restarts from a state stored a day before, every twelve hours',
    duration: 0,
    size: 12,
    unit: 'h',
    once: 'restart-old',
    act: () => {},
  },
  'clock-jumps-ahead': {
    sign: 'clock',
    about: 'the clock jumps ahead by a day',
    duration: 0,
    size: 86400,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockAhead += size
    },
  },
  'clock-jumps-back': {
    sign: 'clock',
    about: 'the clock jumps back by a day',
    duration: 0,
    size: -86400,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockAhead += size
    },
  },
  'clock-jumps-half-a-day': {
    sign: 'clock',
    about: 'the clock jumps ahead by eleven hours',
    duration: 0,
    size: 39600,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockAhead += size
    },
  },
  'clock-summer-time': {
    sign: 'clock',
    about: 'the clock is put forward by an hour',
    duration: 0,
    size: 3600,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockAhead += size
    },
  },
  'clock-winter-time': {
    sign: 'clock',
    about: 'the clock is put back by an hour',
    duration: 0,
    size: -3600,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockAhead += size
    },
  },
  'clock-flaps': {
    sign: 'clock',
    about: 'the clock flaps by a day from call to call',
    duration: 0,
    size: 86400,
    unit: 's',
    act: (effects, { size }) => {
      effects.clockFlap = size
    },
  },
  'clock-frozen': {
    sign: 'clock',
    about: 'the clock stands still',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects, { from }) => {
      effects.clockFrozenAt = from
    },
  },
  'clock-in-milliseconds': {
    sign: 'clock',
    about: 'the clock counts milliseconds',
    duration: 0,
    size: 1000,
    unit: '1',
    act: (effects, { size }) => {
      effects.clockFactor = size
    },
  },
  'clock-starts-in-1970': {
    sign: 'clock',
    about: 'the clock starts again at 1970',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.clockAhead = Number.NEGATIVE_INFINITY
    },
  },
  'clock-is-nan': {
    sign: 'clock',
    about: 'the clock gives NaN',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.clockBroken = true
    },
  },
  'clock-fast': {
    sign: 'clock',
    about: 'the clock gains two minutes in an hour',
    duration: 0,
    size: 0.0333,
    unit: 's/s',
    act: (effects, { size, from }) => {
      effects.clockGain = size
      effects.clockGainSince = from
    },
  },
  'drain-gauge-dead': {
    sign: 'drain-gauge',
    about: 'the drain gauge shows nothing',
    duration: 0,
    size: 0,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.gauge = size
    },
  },
  'drain-gauge-counts-double': {
    sign: 'drain-gauge',
    about: 'the drain gauge counts each spoon twice',
    duration: 0,
    size: 2,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.gauge = size
    },
  },
  'flow-meter-dead': {
    sign: 'flow-meter',
    about: 'the flow meter shows nothing',
    duration: 0,
    size: 0,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.meter = size
    },
  },
  'flow-meter-counts-double': {
    sign: 'flow-meter',
    about: 'the flow meter counts each pulse twice',
    duration: 0,
    size: 2,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.meter = size
    },
  },
  'feedback-says-open': {
    sign: 'valve-feedback',
    about: 'the contact at the valve always says open',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.feedback = 'open'
    },
  },
  'feedback-says-closed': {
    sign: 'valve-feedback',
    about: 'the contact at the valve always says closed',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.feedback = 'closed'
    },
  },
  channelling: {
    sign: 'channelling',
    about: 'half of the water runs past the medium',
    duration: 0,
    size: 0.5,
    unit: 'share',
    act: (effects, { size }) => {
      effects.bypass = Math.max(effects.bypass, size)
    },
  },
  'water-repellent': {
    sign: 'channelling',
    about: 'the medium takes the less water the drier it is',
    duration: 0,
    size: 0.6,
    unit: 'share',
    act: (effects, { size }) => {
      effects.repellence = Math.max(effects.repellence, size)
    },
  },
  'capacity-low': {
    sign: 'capacity-low',
    about: 'the container holds less than the lower limit, as when it is tilted',
    duration: 0,
    size: -0.06,
    unit: 'm³/m³ from the start',
    act: (effects, { size }) => {
      effects.capacity = size
    },
  },
  'heat-wave': {
    sign: 'demand-high',
    about: 'plants use 1.8 times as much for two days',
    duration: 48,
    size: 1.8,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.use *= size
    },
  },
  'cloudy-days': {
    sign: 'none',
    about: 'light and use fall to 0.35 for two days',
    duration: 48,
    size: 0.35,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.use *= size
      effects.light *= size
    },
  },
  'roots-lost': {
    sign: 'use-falls',
    about: 'plants use four tenths, in full light',
    duration: 0,
    size: 0.4,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.use *= size
    },
  },
  'feed-too-strong': {
    sign: 'feed-tank',
    about: 'the feed carries 1.8 times the salts',
    duration: 0,
    size: 1.8,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.feed = size
    },
  },
  'feed-plain-water': {
    sign: 'feed-tank',
    about: 'the feed is plain water',
    duration: 0,
    size: 0.15,
    unit: 'factor',
    act: (effects, { size }) => {
      effects.feed = size
    },
  },
  'water-by-hand': {
    sign: 'water-by-hand',
    about: 'somebody waters by hand, past the valve',
    duration: 0,
    size: 0.5,
    unit: 'L a container',
    once: 'hand',
    act: () => {},
  },
  acknowledged: {
    sign: 'none',
    about: 'somebody acknowledges everything',
    duration: 0,
    size: 0,
    unit: '1',
    once: 'acknowledge',
    act: () => {},
  },
  'override-open': {
    sign: 'none',
    about: 'somebody orders open and goes home',
    duration: 0,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.override = 'open'
    },
  },
  'override-closed': {
    sign: 'none',
    about: 'somebody orders closed for three hours',
    duration: 3,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.override = 'closed'
    },
  },
  locked: {
    sign: 'none',
    about: 'somebody works at the zone for two hours and has locked it',
    duration: 2,
    size: 0,
    unit: '1',
    act: (effects) => {
      effects.locked = true
    },
  },
} as const satisfies Readonly<Record<string, FaultRow>>
