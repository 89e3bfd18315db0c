import type { CropCoefficient, DepletionFraction, Length } from '../../quantity/generated/kinds.js'
import { CROP_NAMES, cropNamed } from './crop-names-fao56.js'

/** What the tables of FAO-56 (1998) say of a crop: no stress, good husbandry, the standard climate (45 % lowest humidity, 2 m/s). */
export interface TabledCrop {
  /** Name in the tables. */
  readonly crop: string
  /** Single coefficient of the initial stage; it depends on wetting. Unit: 1. */
  readonly initialCoefficient: CropCoefficient
  /** Single coefficient of the mid-season. Unit: 1. */
  readonly middleCoefficient: CropCoefficient
  /** Single coefficient at the end, lowest and highest. Unit: 1. */
  readonly endCoefficient: readonly [CropCoefficient, CropCoefficient]
  /** Basal coefficient of the initial stage. Unit: 1. */
  readonly initialBasal: CropCoefficient
  /** Basal coefficient of the mid-season. Unit: 1. */
  readonly middleBasal: CropCoefficient
  /** Basal coefficient at the end, lowest and highest. Unit: 1. */
  readonly endBasal: readonly [CropCoefficient, CropCoefficient]
  /** Height of the plants, lowest and highest. Unit: cm. */
  readonly height: readonly [Length, Length]
  /** Depth of the roots in field soil, lowest and highest. Unit: cm. */
  readonly rootDepth: readonly [Length, Length]
  /** Depletion fraction for 5 mm/d. Unit: 1. */
  readonly depletionFraction: DepletionFraction
}

type Pair = readonly [number, number]
type Row = readonly [string, number, number, Pair, number, number, Pair, Pair, Pair, number]

/** Crop; Kc ini, mid, end; Kcb ini, mid, end; height and root depth in m; p. */
const ROWS: readonly Row[] = [
  ['broccoli', 0.7, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.3, 0.3], [0.4, 0.6], 0.45],
  ['Brussels sprouts', 0.7, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.4, 0.4], [0.4, 0.6], 0.45],
  ['cabbage', 0.7, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.4, 0.4], [0.5, 0.8], 0.45],
  ['carrot', 0.7, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.3, 0.3], [0.5, 1.0], 0.35],
  ['cauliflower', 0.7, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.4, 0.4], [0.4, 0.7], 0.45],
  ['celery', 0.7, 1.05, [1.0, 1.0], 0.15, 0.95, [0.9, 0.9], [0.6, 0.6], [0.3, 0.5], 0.2],
  ['garlic', 0.7, 1.0, [0.7, 0.7], 0.15, 0.9, [0.6, 0.6], [0.3, 0.3], [0.3, 0.5], 0.3],
  ['lettuce', 0.7, 1.0, [0.95, 0.95], 0.15, 0.9, [0.9, 0.9], [0.3, 0.3], [0.3, 0.5], 0.3],
  ['onion, dry', 0.7, 1.05, [0.75, 0.75], 0.15, 0.95, [0.65, 0.65], [0.4, 0.4], [0.3, 0.6], 0.3],
  ['onion, green', 0.7, 1.0, [1.0, 1.0], 0.15, 0.9, [0.9, 0.9], [0.3, 0.3], [0.3, 0.6], 0.3],
  ['onion, seed', 0.7, 1.05, [0.8, 0.8], 0.15, 1.05, [0.7, 0.7], [0.5, 0.5], [0.3, 0.6], 0.35],
  ['spinach', 0.7, 1.0, [0.95, 0.95], 0.15, 0.9, [0.85, 0.85], [0.3, 0.3], [0.3, 0.5], 0.2],
  ['radish', 0.7, 0.9, [0.85, 0.85], 0.15, 0.85, [0.75, 0.75], [0.3, 0.3], [0.3, 0.5], 0.3],
  ['eggplant', 0.6, 1.05, [0.9, 0.9], 0.15, 1.0, [0.8, 0.8], [0.8, 0.8], [0.7, 1.2], 0.45],
  ['sweet pepper', 0.6, 1.05, [0.9, 0.9], 0.15, 1.0, [0.8, 0.8], [0.7, 0.7], [0.5, 1.0], 0.3],
  ['sweet pepper, on supports', 0.6, 1.15, [0.9, 0.9], 0.15, 1.1, [0.8, 0.8], [1.5, 2], [0.5, 1.0], 0.3],
  ['tomato', 0.6, 1.15, [0.7, 0.9], 0.15, 1.1, [0.6, 0.8], [0.6, 0.6], [0.7, 1.5], 0.4],
  ['tomato, on supports', 0.6, 1.2, [0.7, 0.9], 0.15, 1.15, [0.6, 0.8], [1.5, 2], [0.7, 1.5], 0.4],
  ['cantaloupe', 0.5, 0.85, [0.6, 0.6], 0.15, 0.75, [0.5, 0.5], [0.3, 0.3], [0.9, 1.5], 0.45],
  ['cucumber, fresh market', 0.6, 1.0, [0.75, 0.75], 0.15, 0.95, [0.7, 0.7], [0.3, 0.3], [0.7, 1.2], 0.5],
  ['cucumber, on supports', 0.6, 1.15, [0.75, 0.75], 0.15, 1.1, [0.7, 0.7], [1.5, 2], [0.7, 1.2], 0.5],
  ['cucumber, machine harvest', 0.5, 1.0, [0.9, 0.9], 0.15, 0.95, [0.8, 0.8], [0.3, 0.3], [0.7, 1.2], 0.5],
  ['pumpkin and winter squash', 0.5, 1.0, [0.8, 0.8], 0.15, 0.95, [0.7, 0.7], [0.4, 0.4], [1.0, 1.5], 0.35],
  ['squash, zucchini', 0.5, 0.95, [0.75, 0.75], 0.15, 0.9, [0.7, 0.7], [0.3, 0.3], [0.6, 1.0], 0.5],
  ['sweet melon', 0.5, 1.05, [0.75, 0.75], 0.15, 1.0, [0.7, 0.7], [0.4, 0.4], [0.8, 1.5], 0.4],
  ['watermelon', 0.4, 1.0, [0.75, 0.75], 0.15, 0.95, [0.7, 0.7], [0.4, 0.4], [0.8, 1.5], 0.4],
  ['table beet', 0.5, 1.05, [0.95, 0.95], 0.15, 0.95, [0.85, 0.85], [0.4, 0.4], [0.6, 1.0], 0.5],
  ['potato', 0.5, 1.15, [0.75, 0.75], 0.15, 1.1, [0.65, 0.65], [0.6, 0.6], [0.4, 0.6], 0.35],
  ['sweet potato', 0.5, 1.15, [0.65, 0.65], 0.15, 1.1, [0.55, 0.55], [0.4, 0.4], [1.0, 1.5], 0.65],
  ['green bean', 0.5, 1.05, [0.9, 0.9], 0.15, 1.0, [0.8, 0.8], [0.4, 0.4], [0.5, 0.7], 0.45],
  ['green bean, on supports', 0.5, 1.15, [0.9, 0.9], 0.15, 1.1, [0.8, 0.8], [1.5, 2], [0.5, 0.7], 0.45],
  ['dry bean and pulses', 0.4, 1.15, [0.35, 0.35], 0.15, 1.1, [0.25, 0.25], [0.4, 0.4], [0.6, 0.9], 0.45],
  ['dry bean, on supports', 0.4, 1.2, [0.35, 0.35], 0.15, 1.15, [0.25, 0.25], [1.5, 2], [0.6, 0.9], 0.45],
  ['pea, fresh', 0.5, 1.15, [1.1, 1.1], 0.15, 1.1, [1.05, 1.05], [0.5, 0.5], [0.6, 1.0], 0.35],
  ['pea, on supports', 0.5, 1.2, [1.1, 1.1], 0.15, 1.15, [1.05, 1.05], [1.5, 2], [0.6, 1.0], 0.35],
  ['artichoke', 0.5, 1.0, [0.95, 0.95], 0.15, 0.95, [0.9, 0.9], [0.7, 0.7], [0.6, 0.9], 0.45],
  ['asparagus', 0.5, 0.95, [0.3, 0.3], 0.15, 0.9, [0.2, 0.2], [0.2, 0.8], [1.2, 1.8], 0.45],
  ['mint', 0.6, 1.15, [1.1, 1.1], 0.4, 1.1, [1.05, 1.05], [0.6, 0.8], [0.4, 0.8], 0.4],
  ['strawberry', 0.4, 0.85, [0.75, 0.75], 0.3, 0.8, [0.7, 0.7], [0.2, 0.2], [0.2, 0.3], 0.2],
  ['turf grass, cool season', 0.9, 0.95, [0.95, 0.95], 0.85, 0.9, [0.9, 0.9], [0.1, 0.1], [0.5, 1.0], 0.4],
  ['turf grass, warm season', 0.8, 0.85, [0.85, 0.85], 0.75, 0.8, [0.8, 0.8], [0.1, 0.1], [0.5, 1.0], 0.5],
  ['banana, first year', 0.5, 1.1, [1.0, 1.0], 0.15, 1.05, [0.9, 0.9], [3, 3], [0.5, 0.9], 0.35],
  ['banana, second year', 1.0, 1.2, [1.1, 1.1], 0.6, 1.1, [1.05, 1.05], [4, 4], [0.5, 0.9], 0.35],
  ['coffee, bare ground', 0.9, 0.95, [0.95, 0.95], 0.8, 0.9, [0.9, 0.9], [2, 3], [0.9, 1.5], 0.4],
  ['palm trees', 0.95, 1.0, [1.0, 1.0], 0.85, 0.9, [0.9, 0.9], [8, 8], [0.7, 1.1], 0.65],
  ['pineapple, bare soil', 0.5, 0.3, [0.3, 0.3], 0.15, 0.25, [0.25, 0.25], [0.6, 1.2], [0.3, 0.6], 0.5],
  ['tea, non-shaded', 0.95, 1.0, [1.0, 1.0], 0.9, 0.95, [0.9, 0.9], [1.5, 1.5], [0.9, 1.5], 0.4],
  ['berries (bushes)', 0.3, 1.05, [0.5, 0.5], 0.2, 1.0, [0.4, 0.4], [1.5, 1.5], [0.6, 1.2], 0.5],
  ['grapes, table or raisin', 0.3, 0.85, [0.45, 0.45], 0.15, 0.8, [0.4, 0.4], [2, 2], [1.0, 2.0], 0.35],
  ['grapes, wine', 0.3, 0.7, [0.45, 0.45], 0.15, 0.65, [0.4, 0.4], [1.5, 2], [1.0, 2.0], 0.45],
  ['hops', 0.3, 1.05, [0.85, 0.85], 0.15, 1.0, [0.8, 0.8], [5, 5], [1.0, 1.2], 0.5],
  ['citrus, bare ground, 70% canopy', 0.7, 0.65, [0.7, 0.7], 0.65, 0.6, [0.65, 0.65], [4, 4], [1.2, 1.5], 0.5],
  ['citrus, bare ground, 50% canopy', 0.65, 0.6, [0.65, 0.65], 0.6, 0.55, [0.6, 0.6], [3, 3], [1.1, 1.5], 0.5],
  ['citrus, bare ground, 20% canopy', 0.5, 0.45, [0.55, 0.55], 0.45, 0.4, [0.5, 0.5], [2, 2], [0.8, 1.1], 0.5],
  ['citrus, ground cover, 70% canopy', 0.75, 0.7, [0.75, 0.75], 0.75, 0.7, [0.75, 0.75], [4, 4], [1.2, 1.5], 0.5],
  ['citrus, ground cover, 50% canopy', 0.8, 0.8, [0.8, 0.8], 0.75, 0.75, [0.75, 0.75], [3, 3], [1.1, 1.5], 0.5],
  ['citrus, ground cover, 20% canopy', 0.85, 0.85, [0.85, 0.85], 0.8, 0.8, [0.85, 0.85], [2, 2], [0.8, 1.1], 0.5],
  ['apple, cherry, pear; bare ground, frost', 0.45, 0.95, [0.7, 0.7], 0.35, 0.9, [0.65, 0.65], [4, 4], [1.0, 2.0], 0.5],
  ['stone fruit; bare ground, frost', 0.45, 0.9, [0.65, 0.65], 0.35, 0.85, [0.6, 0.6], [3, 3], [1.0, 2.0], 0.5],
  ['avocado, bare ground', 0.6, 0.85, [0.75, 0.75], 0.5, 0.8, [0.7, 0.7], [3, 3], [0.5, 1.0], 0.7],
  ['kiwi', 0.4, 1.05, [1.05, 1.05], 0.2, 1.0, [1.0, 1.0], [3, 3], [0.7, 1.3], 0.35],
  ['olive, 40-60% cover', 0.65, 0.7, [0.7, 0.7], 0.55, 0.65, [0.65, 0.65], [3, 5], [1.2, 1.7], 0.65],
  ['conifer trees', 1.0, 1.0, [1.0, 1.0], 0.95, 0.95, [0.95, 0.95], [10, 10], [1.0, 1.5], 0.7],
]

/**
 * Coefficients, height, root depth and depletion fraction of a crop from the tables of FAO-56, edition of 1998.
 *
 * Rows that end in "on supports" are footnote 2 of Tables 12 and 17: plants on supports of 1.5 to 2 m, with the mid-season values and the
 * height of the footnote and the other values of the plants without supports. A root depth of field soil means nothing in a container. The
 * revised edition of the paper (2025) has other tables, which are not in here.
 *
 * @param crop - Name in the tables, as `tabledCropNames()` lists it; or a name of `tabledStagesFao56()` that belongs to one crop only.
 * @procedure Looks the crop up by its name or its name in the table of stages.
 * @returns Values of the tables, a pair where a range is printed.
 * @throws `InputError` for a name that is not listed, or that stands for several crops (which it lists).
 * @validity Field crops in a sub-humid climate; move mid and end values with `adjustedCropCoefficientFao56()`.
 * @source allen-1998, Tables 12, 17 and 22
 * @example
 * tabledCropFao56('tomato') // => { middleCoefficient: 1.15, endCoefficient: [0.7, 0.9], depletionFraction: 0.4 }
 */
export function tabledCropFao56(crop: string): TabledCrop {
  const known = cropNamed(crop)
  const row = ROWS.find(([name]) => name === known) as Row
  const [name, ini, mid, end, basalIni, basalMid, basalEnd, height, roots, p] = row
  return {
    crop: name,
    initialCoefficient: ini as CropCoefficient,
    middleCoefficient: mid as CropCoefficient,
    endCoefficient: end as unknown as readonly [CropCoefficient, CropCoefficient],
    initialBasal: basalIni as CropCoefficient,
    middleBasal: basalMid as CropCoefficient,
    endBasal: basalEnd as unknown as readonly [CropCoefficient, CropCoefficient],
    height: centimetresOf(height),
    rootDepth: centimetresOf(roots),
    depletionFraction: p as DepletionFraction,
  }
}

/**
 * Names of the crops that the tables of FAO-56 (1998) list, for coefficients and stages alike.
 *
 * @procedure Lists the rows in the order of the tables.
 * @returns Names for `tabledCropFao56()` and `tabledStagesFao56()`.
 * @source allen-1998, Table 12
 * @example
 * tabledCropNames().includes('strawberry') // => true
 */
export function tabledCropNames(): string[] {
  return CROP_NAMES.map(([name]) => name)
}

function centimetresOf([low, high]: Pair): readonly [Length, Length] {
  return [(low * 100) as Length, (high * 100) as Length]
}
