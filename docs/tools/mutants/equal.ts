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
  {
    path: 'src/flow/salt/transport.ts',
    line: 'byBelow[e] = flow * (flow > 0 ? upstream : 1 - upstream) + exchange',
    was: 'flow > 0',
    becomes: 'flow >= 0',
    why: 'no flow carries no salt either way',
  },
  {
    path: 'src/flow/salt/transport.ts',
    line: 'byAbove[e] = flow * (flow > 0 ? 1 - upstream : upstream) - exchange',
    was: 'flow > 0',
    becomes: 'flow >= 0',
    why: 'no flow carries no salt either way',
  },
  {
    path: 'src/flow/column/table/cubic.ts',
    line: 'const newton = slope < 0 ? x - over / slope : -1',
    was: 'slope < 0',
    becomes: 'slope <= 0',
    why: 'over a slope of nothing a move has no end or is no number: outside of both ends, as -1 is',
  },
  {
    path: 'src/record/dry-down/find-climbs.ts',
    line: 'if (x < low) low = x',
    was: 'x < low',
    becomes: 'x <= low',
    why: 'the lowest becomes what it was, and from it nothing has risen',
  },
  {
    path: 'src/record/dry-down/find-climbs.ts',
    line: 'else if (x - low > rise) rise = x - low',
    was: 'x - low > rise',
    becomes: 'x - low >= rise',
    why: 'the largest rise becomes what it was',
  },
  {
    path: 'src/record/dry-down/exponential-search.ts',
    line: 'ux += u * (x[i]! - meanX)',
    was: 'x[i]! - meanX',
    becomes: 'x[i]! + meanX',
    why: 'what u differs by from its mean adds up to nothing, times a constant too',
  },
  {
    path: 'src/record/dry-down/exponential-search.ts',
    line: 'for (let k = 0; k < 40; k++) {',
    was: 'k < 40',
    becomes: 'k <= 40',
    why: 'after forty halvings one more moves no digit that is told',
  },
  {
    path: 'src/record/dry-down/slope-change.ts',
    line: 'if (own > 0 && (shared * shared) / own > max) {',
    was: 'own > 0',
    becomes: 'true',
    why: 'at a reading between the edges a hinge is never a straight line: what it has of its own is above zero',
  },
  {
    path: 'src/record/forecast/clock-rates.ts',
    line: 'for (let j = 0; j < BINS && falls[k] === null; j++) k = (k + BINS - 1) % BINS',
    was: 'j < BINS',
    becomes: 'j <= BINS',
    why: 'where no half hour of the day was seen, none is found by one look more',
  },
  {
    path: 'src/record/forecast/level-state.ts',
    line: 'const isOff = falls.some((fall) => fall !== null && Math.abs(fall) > MAX_KEPT)',
    was: 'fall !== null',
    becomes: 'true',
    why: 'the size of null is zero',
  },
  {
    path: 'src/record/local-time.ts',
    line: 'while (k > 0 && shown - offsets[k]!.ahead < offsets[k]!.from) k--',
    was: 'shown - offsets[k]!.ahead < offsets[k]!.from',
    becomes: 'shown - offsets[k]!.ahead <= offsets[k]!.from',
    why: 'the next line goes on again to an entry that begins at this very moment',
  },
  {
    path: 'src/record/quality/repeats.ts',
    line: 'let [above, below] = [newest, newest]',
    was: '[newest, newest]',
    becomes: '[]',
    why: 'a place that is no number has no distance, and is the nearer of none',
  },
  {
    path: 'src/record/quality/repeats.ts',
    line: 'const up = repeats[k]! > repeats[newest]!',
    was: 'repeats[k]! > repeats[newest]!',
    becomes: 'repeats[k]! <= repeats[newest]!',
    why: 'both sides are treated alike: only their names change places',
  },
  {
    path: 'src/record/compare/compare-probes.ts',
    line: 'const usual = others.length > 0 ? medianInPlace(others) : Number.NaN',
    was: 'others.length > 0',
    becomes: 'true',
    why: 'the median of nothing is no number',
  },
]
