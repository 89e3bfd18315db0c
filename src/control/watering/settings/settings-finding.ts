import type { CodedFinding } from '../../../quantity/finding.js'

/** What the settings of a zone leave unguarded, or have most likely wrong. */
export type SettingsDoubt =
  | 'no-drain-fraction'
  | 'never-filled'
  | 'one-probe'
  | 'probes-disagree-at-once'
  | 'probes-never-disagree'
  | 'believes-nearly-everything'
  | 'band-within-noise'
  | 'shot-beyond-band'
  | 'shot-too-small-to-show'
  | 'opening-very-short'
  | 'use-unlike-medium'
  | 'limit-far-above-use'
  | 'day-and-night'
  | 'valve-needs-decisions'
  | 'pace-unknown'
  | 'shows-at-once'
  | 'old-readings-decide'
  | 'frozen-told-late'

/** Something to look at before settings water by themselves, as codes and numbers; `explainControlFinding` has the words. */
export type WateringSettingsFinding = CodedFinding<SettingsDoubt>
