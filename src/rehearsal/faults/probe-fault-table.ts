import type { FaultRow } from './fault-row.js'

/** Faults of probes and of the numbers that they send. Their sizes are invented. */
export const PROBE_FAULTS = {
  'probe-reads-zero': {
    sign: 'probe-dead',
    about: 'one probe falls to a flat 0.0',
    duration: 0,
    size: 0,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.instead = size
    },
  },
  'probe-reads-negative': {
    sign: 'probe-dead',
    about: 'one probe sends -0.2',
    duration: 0,
    size: -0.2,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.instead = size
    },
  },
  'probe-reads-nan': {
    sign: 'probe-dead',
    about: 'one probe sends NaN',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = Number.NaN
    },
  },
  'probe-reads-minus-999': {
    sign: 'probe-dead',
    about: 'one probe sends -999, as loggers do for no value',
    duration: 0,
    size: -999,
    unit: '1',
    act: (_, { size }, at) => {
      for (const probe of at) probe.instead = size
    },
  },
  'probe-reads-65535': {
    sign: 'probe-dead',
    about: 'one probe sends 65535, as loggers do for no value',
    duration: 0,
    size: 65535,
    unit: '1',
    act: (_, { size }, at) => {
      for (const probe of at) probe.instead = size
    },
  },
  'probe-reads-infinity': {
    sign: 'probe-dead',
    about: 'one probe sends Infinity',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = Number.POSITIVE_INFINITY
    },
  },
  'probe-reads-minus-infinity': {
    sign: 'probe-dead',
    about: 'one probe sends -Infinity',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = Number.NEGATIVE_INFINITY
    },
  },
  'probe-reads-null': {
    sign: 'not-a-number',
    about: 'one probe sends null',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = null
    },
  },
  'probe-reads-text': {
    sign: 'not-a-number',
    about: 'one probe sends its numbers as text',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.asText = true
    },
  },
  'probe-reads-words': {
    sign: 'not-a-number',
    about: 'one probe sends the text "error"',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = 'error'
    },
  },
  'probe-reads-true': {
    sign: 'not-a-number',
    about: 'one probe sends true',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.instead = true
    },
  },
  'probe-silent': {
    sign: 'probe-dead',
    about: 'one probe sends nothing',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.silent = true
    },
  },
  'probes-read-zero': {
    sign: 'probe-dead',
    about: 'all probes fall to a flat 0.0',
    duration: 0,
    size: 0,
    unit: 'm³/m³',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.instead = size
    },
  },
  'probes-read-null': {
    sign: 'not-a-number',
    about: 'all probes send null',
    duration: 0,
    size: 0,
    unit: '1',
    everywhere: true,
    act: (_, __, at) => {
      for (const probe of at) probe.instead = null
    },
  },
  'probes-silent': {
    sign: 'no-readings',
    about: 'no probe sends anything',
    duration: 0,
    size: 0,
    unit: '1',
    everywhere: true,
    act: (_, __, at) => {
      for (const probe of at) probe.silent = true
    },
  },
  'probe-frozen': {
    sign: 'probe-frozen',
    about: 'one probe repeats its last number',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.frozen = true
    },
  },
  'probes-frozen': {
    sign: 'probe-frozen',
    about: 'all probes repeat their last number',
    duration: 0,
    size: 0,
    unit: '1',
    everywhere: true,
    act: (_, __, at) => {
      for (const probe of at) probe.frozen = true
    },
  },
  'probe-frozen-dry': {
    sign: 'probe-frozen',
    about: 'one probe repeats a believable number below the lower limit',
    duration: 0,
    size: -0.05,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) {
        probe.frozen = true
        probe.offset += size
      }
    },
  },
  'probe-frozen-wet': {
    sign: 'probe-frozen',
    about: 'one probe repeats a believable number above the upper limit',
    duration: 0,
    size: 0.04,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) {
        probe.frozen = true
        probe.offset += size
      }
    },
  },
  'probes-frozen-dry': {
    sign: 'probe-frozen',
    about: 'all probes repeat a believable number below the lower limit',
    duration: 0,
    size: -0.05,
    unit: 'm³/m³',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) {
        probe.frozen = true
        probe.offset += size
      }
    },
  },
  'probe-lifted': {
    sign: 'probe-lifted',
    about: 'one probe is pulled out and reads nearly air',
    duration: 0,
    size: 0.04,
    unit: 'share in the medium',
    act: (_, { size }, at) => {
      for (const probe of at) probe.contact = size
    },
  },
  'probe-lifted-partly': {
    sign: 'probe-lifted',
    about: 'one probe stands partly in air',
    duration: 0,
    size: 0.8,
    unit: 'share in the medium',
    act: (_, { size }, at) => {
      for (const probe of at) probe.contact = size
    },
  },
  'probes-lifted-partly': {
    sign: 'probe-lifted',
    about: 'all probes stand partly in air',
    duration: 0,
    size: 0.85,
    unit: 'share in the medium',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.contact = size
    },
  },
  'probe-reinserted-wet': {
    sign: 'probe-reinserted',
    about: 'one probe is put in again and reads higher',
    duration: 0,
    size: 0.05,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.offset += size
    },
  },
  'probe-reinserted-dry': {
    sign: 'probe-reinserted',
    about: 'one probe is put in again and reads lower',
    duration: 0,
    size: -0.05,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.offset += size
    },
  },
  'probe-drifts-up': {
    sign: 'probe-drifting',
    about: 'one probe reads higher from day to day',
    duration: 0,
    size: 0.02,
    unit: 'm³/m³ a day',
    act: (_, { size, from }, at) => {
      for (const probe of at) {
        probe.driftPerDay = size
        probe.driftSince = from
      }
    },
  },
  'probe-drifts-down': {
    sign: 'probe-drifting',
    about: 'one probe reads lower from day to day',
    duration: 0,
    size: -0.02,
    unit: 'm³/m³ a day',
    act: (_, { size, from }, at) => {
      for (const probe of at) {
        probe.driftPerDay = size
        probe.driftSince = from
      }
    },
  },
  'probes-drift-up': {
    sign: 'probe-drifting',
    about: 'all probes read higher from day to day',
    duration: 0,
    size: 0.015,
    unit: 'm³/m³ a day',
    everywhere: true,
    act: (_, { size, from }, at) => {
      for (const probe of at) {
        probe.driftPerDay = size
        probe.driftSince = from
      }
    },
  },
  'probes-drift-down': {
    sign: 'probe-drifting',
    about: 'all probes read lower from day to day',
    duration: 0,
    size: -0.015,
    unit: 'm³/m³ a day',
    everywhere: true,
    act: (_, { size, from }, at) => {
      for (const probe of at) {
        probe.driftPerDay = size
        probe.driftSince = from
      }
    },
  },
  'probe-noisy': {
    sign: 'probe-noisy',
    about: 'one probe scatters',
    duration: 0,
    size: 0.04,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.noise = size
    },
  },
  'probes-noisy': {
    sign: 'probe-noisy',
    about: 'all probes scatter',
    duration: 0,
    size: 0.03,
    unit: 'm³/m³',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.noise = size
    },
  },
  'probe-spikes': {
    sign: 'probe-noisy',
    about: 'one probe sends spikes',
    duration: 0,
    size: 0.2,
    unit: 'm³/m³',
    act: (_, { size }, at) => {
      for (const probe of at) probe.spike = size
    },
  },
  'probe-of-another-zone': {
    sign: 'probes-swapped',
    about: 'one probe carries the name of a probe of another zone',
    duration: 0,
    size: 0,
    unit: '1',
    act: (_, __, at) => {
      for (const probe of at) probe.foreign = true
    },
  },
  'probe-in-percent': {
    sign: 'unit-slip',
    about: 'one probe sends percent',
    duration: 0,
    size: 100,
    unit: '1',
    act: (_, { size }, at) => {
      for (const probe of at) probe.factor = size
    },
  },
  'probes-in-percent': {
    sign: 'unit-slip',
    about: 'all probes send percent',
    duration: 0,
    size: 100,
    unit: '1',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.factor = size
    },
  },
  'probe-raw': {
    sign: 'unit-slip',
    about: 'one probe sends raw counts',
    duration: 0,
    size: 692,
    unit: '1',
    act: (_, { size }, at) => {
      for (const probe of at) {
        probe.factor = size
        probe.shift = 389
      }
    },
  },
  'probe-salt-error': {
    sign: 'salt-driven',
    about: 'one probe reads higher the saltier the pore water',
    duration: 0,
    size: 0.02,
    unit: 'm³/m³ per dS/m',
    act: (_, { size }, at) => {
      for (const probe of at) probe.perSalt = size
    },
  },
  'probes-salt-error': {
    sign: 'salt-driven',
    about: 'all probes read higher the saltier the pore water',
    duration: 0,
    size: 0.02,
    unit: 'm³/m³ per dS/m',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.perSalt = size
    },
  },
  'probe-temperature-error': {
    sign: 'temperature-driven',
    about: 'one probe reads higher the warmer the medium',
    duration: 0,
    size: 0.006,
    unit: 'm³/m³ per °C',
    act: (_, { size }, at) => {
      for (const probe of at) probe.perDegree = size
    },
  },
  'probes-temperature-error': {
    sign: 'temperature-driven',
    about: 'all probes read higher the warmer the medium',
    duration: 0,
    size: 0.006,
    unit: 'm³/m³ per °C',
    everywhere: true,
    act: (_, { size }, at) => {
      for (const probe of at) probe.perDegree = size
    },
  },
} as const satisfies Readonly<Record<string, FaultRow>>
