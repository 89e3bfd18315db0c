export {
  type DryDownInput,
  type DryDownLine,
  fitDryDown,
  type TimeToRefill,
  type TimeToRefillInput,
  timeToRefill,
} from './dry-down.js'
export { type FindShotsInput, type FoundShot, findShots } from './find-shots.js'
export { combineFlags, countFlags, type FlagCounts, QUALITY } from './flags.js'
export { type FlatLineInput, flatLineTest } from './flat-line-test.js'
export { type GrossRangeInput, grossRangeTest } from './gross-range-test.js'
export { type Plateau, type PlateauInput, plateauAfterDrain } from './plateau.js'
export { type RateOfChangeInput, rateOfChangeTest } from './rate-of-change-test.js'
export { type SpikeInput, spikeTest } from './spike-test.js'
export { findSeams, type Seam, type TimeGapInput, timeGapTest } from './time-gap-test.js'
