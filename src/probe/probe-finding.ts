import type { CodedFinding } from '../quantity/finding.js'

/** What to mind about probes, their samples or their calibration. `explainProbeFinding` puts it into words. */
export type ProbeFinding = CodedFinding<ProbeCode> & {
  /** Places in the list of samples, counted from 0: the wetter one, and the one behind it that should not be drier. Unit: 1. Range: any. */
  readonly samples?: readonly number[]
}

/** What may be found out about probes. */
export type ProbeCode =
  // Calibrating.
  | 'reading-falls-with-water'
  | 'little-water-between'
  | 'samples-out-of-order'
  | 'one-sample-decides'
  | 'not-dry-yet'
  // Reading.
  | 'outside-calibration'
  | 'beyond-turning-point'
  | 'below-zero'
  | 'above-porosity'
  // Drift, temperature and salt.
  | 'gain-changed'
  | 'drifted'
  | 'slope-not-proven'
  | 'outside-no-use-record'
  // Several probes.
  | 'few-probes'
  | 'reads-nothing'
  | 'probe-apart'
  | 'probes-disagree'
  | 'probes-missing'
  // Inserting.
  | 'cut-a-slit'
  | 'air-gap'
  | 'stone-or-lump'
  | 'compaction'
  | 'before-roots'
  | 'same-place'
  | 'mains-off'
