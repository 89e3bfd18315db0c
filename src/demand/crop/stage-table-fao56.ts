import { stageNamesOf } from './crop-names-fao56.js'

/** Lengths of growth stages of a crop at one place, as a table gives them; pairs are lowest and highest. */
export interface TabledStages {
  /** Name in the table. */
  readonly crop: string
  /** Initial stage. Unit: d. */
  readonly initial: readonly [number, number]
  /** Development. Unit: d. */
  readonly development: readonly [number, number]
  /** Mid-season. Unit: d. */
  readonly middle: readonly [number, number]
  /** Late season. Unit: d. */
  readonly late: readonly [number, number]
  /** Month of planting. */
  readonly planting: string
  /** Region. */
  readonly region: string
}

type Pair = readonly [number, number]

const ROWS: readonly (readonly [string, Pair, Pair, Pair, Pair, string, string])[] = [
  ['broccoli', [35, 35], [45, 45], [40, 40], [15, 15], 'Sep', 'California desert'],
  ['cabbage', [40, 40], [60, 60], [50, 50], [15, 15], 'Sep', 'California desert'],
  ['carrot', [20, 20], [30, 30], [30, 50], [20, 20], 'Oct/Jan', 'arid'],
  ['carrot', [30, 30], [40, 40], [60, 60], [20, 20], 'Feb/Mar', 'Mediterranean'],
  ['carrot', [30, 30], [50, 50], [90, 90], [30, 30], 'Oct', 'California desert'],
  ['cauliflower', [35, 35], [50, 50], [40, 40], [15, 15], 'Sep', 'California desert'],
  ['celery', [25, 25], [40, 40], [95, 95], [20, 20], 'Oct', 'semi-arid'],
  ['celery', [25, 25], [40, 40], [45, 45], [15, 15], 'Apr', 'Mediterranean'],
  ['celery', [30, 30], [55, 55], [105, 105], [20, 20], 'Jan', 'semi-arid'],
  ['crucifers', [20, 20], [30, 30], [20, 20], [10, 10], 'Apr', 'Mediterranean'],
  ['crucifers', [25, 25], [35, 35], [25, 25], [10, 10], 'Feb', 'Mediterranean'],
  ['crucifers', [30, 30], [35, 35], [90, 90], [40, 40], 'Oct/Nov', 'Mediterranean'],
  ['lettuce', [20, 20], [30, 30], [15, 15], [10, 10], 'Apr', 'Mediterranean'],
  ['lettuce', [30, 30], [40, 40], [25, 25], [10, 10], 'Nov/Jan', 'Mediterranean'],
  ['lettuce', [25, 25], [35, 35], [30, 30], [10, 10], 'Oct/Nov', 'arid'],
  ['lettuce', [35, 35], [50, 50], [45, 45], [10, 10], 'Feb', 'Mediterranean'],
  ['onion, dry', [15, 15], [25, 25], [70, 70], [40, 40], 'Apr', 'Mediterranean'],
  ['onion, dry', [20, 20], [35, 35], [110, 110], [45, 45], 'Oct; Jan', 'arid; California'],
  ['onion, green', [25, 25], [30, 30], [10, 10], [5, 5], 'Apr/May', 'Mediterranean'],
  ['onion, green', [20, 20], [45, 45], [20, 20], [10, 10], 'Oct', 'arid'],
  ['onion, green', [30, 30], [55, 55], [55, 55], [40, 40], 'Mar', 'California'],
  ['onion, seed', [20, 20], [45, 45], [165, 165], [45, 45], 'Sep', 'California desert'],
  ['spinach', [20, 20], [20, 20], [15, 25], [5, 5], 'Apr; Sep/Oct', 'Mediterranean'],
  ['spinach', [20, 20], [30, 30], [40, 40], [10, 10], 'Nov', 'arid'],
  ['radish', [5, 5], [10, 10], [15, 15], [5, 5], 'Mar/Apr', 'Mediterranean; Europe'],
  ['radish', [10, 10], [10, 10], [15, 15], [5, 5], 'winter', 'arid'],
  ['eggplant', [30, 30], [40, 40], [40, 40], [20, 20], 'Oct', 'arid'],
  ['eggplant', [30, 30], [45, 45], [40, 40], [25, 25], 'May/Jun', 'Mediterranean'],
  ['sweet pepper', [25, 30], [35, 35], [40, 40], [20, 20], 'Apr/Jun', 'Europe and Mediterranean'],
  ['sweet pepper', [30, 30], [40, 40], [110, 110], [30, 30], 'Oct', 'arid'],
  ['tomato', [30, 30], [40, 40], [40, 40], [25, 25], 'Jan', 'arid'],
  ['tomato', [35, 35], [40, 40], [50, 50], [30, 30], 'Apr/May', 'California'],
  ['tomato', [25, 25], [40, 40], [60, 60], [30, 30], 'Jan', 'California desert'],
  ['tomato', [35, 35], [45, 45], [70, 70], [30, 30], 'Oct/Nov', 'arid'],
  ['tomato', [30, 30], [40, 40], [45, 45], [30, 30], 'Apr/May', 'Mediterranean'],
  ['cantaloupe', [30, 30], [45, 45], [35, 35], [10, 10], 'Jan', 'California'],
  ['cantaloupe', [10, 10], [60, 60], [25, 25], [25, 25], 'Aug', 'California'],
  ['cucumber', [20, 20], [30, 30], [40, 40], [15, 15], 'Jun/Aug', 'arid'],
  ['cucumber', [25, 25], [35, 35], [50, 50], [20, 20], 'Nov; Feb', 'arid'],
  ['pumpkin and winter squash', [20, 20], [30, 30], [30, 30], [20, 20], 'Mar, Aug', 'Mediterranean'],
  ['pumpkin and winter squash', [25, 25], [35, 35], [35, 35], [25, 25], 'Jun', 'Europe'],
  ['squash, zucchini', [25, 25], [35, 35], [25, 25], [15, 15], 'Apr; Dec', 'Mediterranean; arid'],
  ['squash, zucchini', [20, 20], [30, 30], [25, 25], [15, 15], 'May/Jun', 'Mediterranean; Europe'],
  ['sweet melon', [25, 25], [35, 35], [40, 40], [20, 20], 'May', 'Mediterranean'],
  ['sweet melon', [30, 30], [30, 30], [50, 50], [30, 30], 'Mar', 'California'],
  ['sweet melon', [15, 15], [40, 40], [65, 65], [15, 15], 'Aug', 'California desert'],
  ['sweet melon', [30, 30], [45, 45], [65, 65], [20, 20], 'Dec/Jan', 'arid'],
  ['watermelon', [20, 20], [30, 30], [30, 30], [30, 30], 'Apr', 'Italy'],
  ['watermelon', [10, 10], [20, 20], [20, 20], [30, 30], 'Mar/Aug', 'Near East desert'],
  ['table beet', [15, 15], [25, 25], [20, 20], [10, 10], 'Apr/May', 'Mediterranean'],
  ['table beet', [25, 25], [30, 30], [25, 25], [10, 10], 'Feb/Mar', 'Mediterranean and arid'],
  ['potato', [25, 25], [30, 30], [30, 45], [30, 30], 'Jan/Nov', 'semi-arid'],
  ['potato', [25, 25], [30, 30], [45, 45], [30, 30], 'May', 'continental'],
  ['potato', [30, 30], [35, 35], [50, 50], [30, 30], 'Apr', 'Europe'],
  ['potato', [45, 45], [30, 30], [70, 70], [20, 20], 'Apr/May', 'Idaho'],
  ['potato', [30, 30], [35, 35], [50, 50], [25, 25], 'Dec', 'California desert'],
  ['sweet potato', [20, 20], [30, 30], [60, 60], [40, 40], 'Apr', 'Mediterranean'],
  ['sweet potato', [15, 15], [30, 30], [50, 50], [30, 30], 'rainy season', 'tropics'],
  ['green bean', [20, 20], [30, 30], [30, 30], [10, 10], 'Feb/Mar', 'California, Mediterranean'],
  ['green bean', [15, 15], [25, 25], [25, 25], [10, 10], 'Aug/Sep', 'California, Egypt, Lebanon'],
  ['dry bean and pulses', [20, 20], [30, 30], [40, 40], [20, 20], 'May/Jun', 'continental'],
  ['dry bean and pulses', [15, 15], [25, 25], [35, 35], [20, 20], 'Jun', 'Pakistan, California'],
  ['dry bean and pulses', [25, 25], [25, 25], [30, 30], [20, 20], 'Jun', 'Idaho'],
  ['pea', [15, 15], [25, 25], [35, 35], [15, 15], 'May', 'Europe'],
  ['pea', [20, 20], [30, 30], [35, 35], [15, 15], 'Mar/Apr', 'Mediterranean'],
  ['pea', [35, 35], [25, 25], [30, 30], [20, 20], 'Apr', 'Idaho'],
  ['artichoke, first year', [40, 40], [40, 40], [250, 250], [30, 30], 'Apr', 'California'],
  ['artichoke, second year', [20, 20], [25, 25], [250, 250], [30, 30], 'May', 'California'],
  ['asparagus', [50, 50], [30, 30], [100, 100], [50, 50], 'Feb', 'warm winter'],
  ['asparagus', [90, 90], [30, 30], [200, 200], [45, 45], 'Feb', 'Mediterranean'],
  ['banana, first year', [120, 120], [90, 90], [120, 120], [60, 60], 'Mar', 'Mediterranean'],
  ['banana, second year', [120, 120], [60, 60], [180, 180], [5, 5], 'Feb', 'Mediterranean'],
  ['pineapple', [60, 60], [120, 120], [600, 600], [10, 10], '', 'Hawaii'],
  ['grapes', [20, 20], [40, 40], [120, 120], [60, 60], 'Apr', 'low latitudes'],
  ['grapes', [20, 20], [50, 50], [75, 75], [60, 60], 'Mar', 'California'],
  ['grapes', [20, 20], [50, 50], [90, 90], [20, 20], 'May', 'high latitudes'],
  ['grapes', [30, 30], [60, 60], [40, 40], [80, 80], 'Apr', 'mid latitudes (wine)'],
  ['hops', [25, 25], [40, 40], [80, 80], [10, 10], 'Apr', 'Idaho'],
  ['citrus', [60, 60], [90, 90], [120, 120], [95, 95], 'Jan', 'Mediterranean'],
  ['deciduous orchard', [20, 20], [70, 70], [90, 90], [30, 30], 'Mar', 'high latitudes'],
  ['deciduous orchard', [20, 20], [70, 70], [120, 120], [60, 60], 'Mar', 'low latitudes'],
  ['deciduous orchard', [30, 30], [50, 50], [130, 130], [30, 30], 'Mar', 'California'],
  ['olive', [30, 30], [90, 90], [60, 60], [90, 90], 'Mar', 'Mediterranean'],
]

/**
 * Lengths of the growth stages of a crop at the places that FAO-56, edition of 1998, lists.
 *
 * @param crop - Name of the crop as `tabledCropNames()` lists it, or that of the table of stages itself, such as grapes.
 * @procedure Gathers all rows of the crop; a crop of which the table holds only the group gets the rows of the group (crucifers for
 * Brussels sprouts, deciduous orchard for apple), which `crop` of the entry tells.
 * @returns One entry for each place and planting time; none for crops of which the table prints no stages, such as strawberry.
 * @throws `InputError` for a name that is not listed.
 * @validity A first guess: variety, warmth and husbandry change the lengths; watch your own crop.
 * @source allen-1998, Table 11
 * @example
 * tabledStagesFao56('tomato').length // => 5
 */
export function tabledStagesFao56(crop: string): TabledStages[] {
  const names = stageNamesOf(crop)
  return ROWS.filter(([name]) => names.includes(name)).map(
    ([name, initial, development, middle, late, planting, region]) => ({
      crop: name,
      initial,
      development,
      middle,
      late,
      planting,
      region,
    }),
  )
}
