/** Words that ask and do not say what about. */
const EMPTY = new Set(
  `a an and any are as at be big by can could do does for from get give given go goes has have how i if in into is it its large
  let long many may me much my need needs of off on or one our out should so some tell that the their them then there these
  they this to too up us was we what when where which who whose why will with would you your`.split(/\s+/),
)

/** Other spellings of the same word, after its ending was taken off. */
const SPELLINGS: Readonly<Record<string, string>> = {
  vapor: 'vapour',
  liter: 'litr',
  meter: 'metr',
  fertilizer: 'fertiliser',
  color: 'colour',
  center: 'centr',
  mold: 'mould',
}

/** Several ways to write the same thing. */
const SAME: readonly (readonly string[])[] = [
  ['VWC', 'volumetric water content', 'water content'],
  ['VPD', 'vapour pressure deficit'],
  ['evapotranspiration', 'ET', 'ETo', 'ET0', 'ETc'],
  ['dry-down', 'drydown', 'dry-back', 'dryback'],
  ['EC', 'electrical conductivity'],
  ['DLI', 'daily light integral'],
  ['PPFD', 'photon flux density'],
  ['stone wool', 'rock wool', 'rockwool', 'mineral wool'],
  ['coir', 'coco', 'cocopeat', 'coconut fibre'],
  ['emitter', 'dripper'],
  ['clogged', 'blocked', 'plugged'],
  ['runoff', 'run off', 'leachate', 'drain', 'drainage water', 'effluent', 'overdrain'],
]

/** Words of the trade that lie near each other: a search for one of a row finds the others too, after those that use its own words. */
const NEAR: readonly (readonly string[])[] = [
  ['VWC', 'moisture', 'wetness'],
  ['size', 'big', 'large'],
  ['VPD', 'humidity deficit'],
  ['evapotranspiration', 'transpiration', 'water use', 'demand'],
  ['EC', 'conductivity', 'salinity', 'salt', 'TDS'],
  ['PPFD', 'PAR'],
  ['drain', 'leaching'],
  ['medium', 'media', 'substrate', 'potting mix', 'soil'],
  ['emitter', 'drip'],
  ['leak', 'stuck valve', 'burst', 'flood', 'weeps'],
  ['shot', 'irrigation event', 'pulse', 'irrigate'],
  ['container', 'pot', 'bag', 'slab', 'plug', 'cube', 'tray'],
  ['field capacity', 'container capacity', 'full point'],
  ['refill point', 'trigger', 'setpoint', 'threshold', 'too dry'],
  ['suction', 'tension', 'matric potential', 'water potential', 'pF'],
  ['feed', 'nutrient solution', 'fertigation', 'nutrient', 'fertiliser'],
  ['spot check', 'hand meter', 'hand probe'],
  ['probe', 'sensor', 'TDR', 'FDR'],
  ['alarm', 'alert', 'warning'],
  ['weather', 'climate'],
  ['run time', 'valve time'],
  ['simulate', 'rehearse', 'rehearsal', 'simulation', 'dry run'],
  ['calibrate', 'calibration'],
  ['convert', 'conversion'],
  ['greenhouse', 'glasshouse', 'under cover'],
  ['uniformity', 'evenness', 'catch can'],
]

/** A word without its ending, so that `drains`, `drained` and `drainage` meet. Rough, and the same for what is sought and what is there. */
export function stem(word: string): string {
  let rest = word.replace(/['’]s$/, '')
  if (/\d/.test(rest)) return rest
  if (rest.length > 4) rest = rest.replace(/ies$/, 'y')
  if (rest.length > 3 && !/(?:ss|us|is)$/.test(rest)) rest = rest.replace(/s$/, '')
  if (rest.length > 5 && /(?:ing|ed)$/.test(rest))
    rest = rest.replace(/(?:ing|ed)$/, '').replace(/([bdgmnprt])\1$/, '$1')
  if (rest.length > 3) rest = rest.replace(/e$/, '')
  if (rest.length > 5) rest = rest.replace(/(?:ion|ag)$/, '')
  return SPELLINGS[rest] ?? rest
}

/** The words of a text in order, without endings; `waterContent` counts as two. */
export function wordsOf(text: string): string[] {
  return (
    text
      .replace(/([a-z])([A-Z])/g, '$1 $2')
      .replace(/([A-Z])([A-Z][a-z])/g, '$1 $2')
      .replace(/([A-Za-z])(\d{3,})/g, '$1 $2')
      .toLowerCase()
      .match(/[\p{L}\p{N}]+(?:['’]s)?/gu) ?? []
  ).map(stem)
}

/** Whether a word says what a search is about. */
function says(word: string): boolean {
  return !EMPTY_STEMS.has(word)
}

const EMPTY_STEMS = new Set([...EMPTY].map(stem))

/** A way to say a thing, as a row of words, and what it weighs against the way that was typed. */
export interface Way {
  readonly words: readonly string[]
  readonly share: number
}
/** One thing that is looked for, in all its ways; the one that was typed comes first. */
export type Term = readonly Way[]

type Rows = readonly (readonly (readonly string[])[])[]
const ROWS: readonly (readonly [share: number, rows: Rows])[] = [
  [0.9, SAME.map((row) => row.map(wordsOf))],
  [0.35, NEAR.map((row) => row.map(wordsOf))],
]

/** What a search looks for, by the field's words. */
export function termsOf(query: string): Term[] {
  const words = wordsOf(query)
  const terms: Term[] = []
  for (let at = 0; at < words.length; ) {
    const typed = wayFrom(words, at)
    if (typed.length > 0) terms.push(waysOf(typed))
    else if (says(words[at]!)) terms.push([{ words: [words[at]!], share: 1 }])
    at += Math.max(1, typed.length)
  }
  return terms
}

/** The longest way of any row that the words say here; empty where none does. */
function wayFrom(words: readonly string[], at: number): readonly string[] {
  let best: readonly string[] = []
  for (const [, rows] of ROWS)
    for (const way of rows.flat())
      if (way.length > best.length && way.every((word, i) => words[at + i] === word)) best = way
  return best
}

function waysOf(typed: readonly string[]): Term {
  const said = typed.join(' ')
  const ways: Way[] = [{ words: typed, share: 1 }]
  for (const [share, rows] of ROWS)
    for (const row of rows)
      if (row.some((way) => way.join(' ') === said))
        for (const words of row) if (words.join(' ') !== said) ways.push({ words, share })
  return ways
}
