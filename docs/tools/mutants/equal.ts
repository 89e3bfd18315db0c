/** A change after which the code does the same, so that no test can notice it. */
export interface EqualChange {
  readonly path: string
  /** The line of code that is changed, without the space around it. */
  readonly line: string
  readonly was: string
  readonly becomes: string
  readonly why: string
}

/** Read and decided; a survivor that stands here does not count, and one that a test notices after all is told. */
export const EQUAL_CHANGES: readonly EqualChange[] = [
  {
    path: 'src/record/quality/wmo-step-test.ts',
    line: 'for (let i = 0; i < value.length; i++) {',
    was: 'i < value.length',
    becomes: 'i <= value.length',
    why: 'a list of flags has no place behind its end: what is written there vanishes',
  },
  {
    path: 'src/medium/curves/fredlund-xing-uncorrected.ts',
    line: 'if (theta === saturated) return 0 as SuctionHead',
    was: 'theta === saturated',
    becomes: 'false',
    why: 'at saturation the formula gives the exponential of minus infinity, which is zero too',
  },
  {
    path: 'src/medium/fit/fit-statistics.ts',
    line: 'if (logSaturated !== undefined && connection !== undefined) {',
    was: 'connection !== undefined',
    becomes: 'true',
    why: 'both stand at the end of a place, or neither',
  },
  {
    path: 'src/medium/container/container-water.ts',
    line: 'for (let step = middle - early; step > 0 && early - step > from; step *= 5) places.push(early - step)',
    was: 'early - step > from',
    becomes: 'early - step >= from',
    why: 'a place at the bottom of the container is left out by what follows',
  },
  {
    path: 'src/medium/container/rewetted-capacity.ts',
    line: 'const curve = (s: SuctionHead) => (s < dry ? whileWetting(s) : medium.waterContent(s))',
    was: 's < dry',
    becomes: 's <= dry',
    why: 'where it turned both curves hold the same',
  },
  {
    path: 'src/flow/salt/solute.ts',
    line: 'for (let i = 0; i < nodes; i++) third[i]! += SECOND * dt * rates[i]!',
    was: 'i < nodes',
    becomes: 'i <= nodes',
    why: 'a typed array has no place behind its end: what is written there vanishes',
  },
  {
    path: 'src/schema/csv/table-times.ts',
    line: "if (zone === 'Z' || zone === 'UTC') return 0",
    was: "zone === 'Z'",
    becomes: 'false',
    why: 'of Z no digits are left, and no hours are zero too',
  },
  {
    path: 'src/schema/csv/csv-cells.ts',
    line: 'if (known.size < MAX_KNOWN) known.set(field, value)',
    was: 'known.size < MAX_KNOWN',
    becomes: 'known.size >= MAX_KNOWN',
    why: 'what is not kept is read again, to the same number',
  },
  {
    path: 'src/medium/curves/van-genuchten-form.ts',
    line: 'return x > 0 ? x + Math.log1p(Math.exp(-x)) : Math.log1p(Math.exp(x))',
    was: 'x > 0',
    becomes: 'x >= 0',
    why: 'at zero both forms are the logarithm of two',
  },
  {
    path: 'src/demand/crop/coefficient-curve.ts',
    line: 'if (day < full) return (initial + ((day - rise) / (full - rise)) * (middle - initial)) as CropCoefficient',
    was: 'day < full',
    becomes: 'day <= full',
    why: 'on that day the line has come to the middle',
  },
]
