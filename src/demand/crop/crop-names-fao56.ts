import { InputError } from '../../quantity/errors.js'
import { asName } from '../../quantity/one-of.js'

/** Every crop of Tables 12, 17 and 22 of FAO-56, with the names under which Table 11 lists its stages; none where it prints no stages. */
export const CROP_NAMES: readonly (readonly [string, readonly string[]])[] = [
  ['broccoli', ['broccoli']],
  ['Brussels sprouts', ['crucifers']],
  ['cabbage', ['cabbage']],
  ['carrot', ['carrot']],
  ['cauliflower', ['cauliflower']],
  ['celery', ['celery']],
  ['garlic', []],
  ['lettuce', ['lettuce']],
  ['onion, dry', ['onion, dry']],
  ['onion, green', ['onion, green']],
  ['onion, seed', ['onion, seed']],
  ['spinach', ['spinach']],
  ['radish', ['radish']],
  ['eggplant', ['eggplant']],
  ['sweet pepper', ['sweet pepper']],
  ['sweet pepper, on supports', ['sweet pepper']],
  ['tomato', ['tomato']],
  ['tomato, on supports', ['tomato']],
  ['cantaloupe', ['cantaloupe']],
  ['cucumber, fresh market', ['cucumber']],
  ['cucumber, on supports', ['cucumber']],
  ['cucumber, machine harvest', ['cucumber']],
  ['pumpkin and winter squash', ['pumpkin and winter squash']],
  ['squash, zucchini', ['squash, zucchini']],
  ['sweet melon', ['sweet melon']],
  ['watermelon', ['watermelon']],
  ['table beet', ['table beet']],
  ['potato', ['potato']],
  ['sweet potato', ['sweet potato']],
  ['green bean', ['green bean']],
  ['green bean, on supports', ['green bean']],
  ['dry bean and pulses', ['dry bean and pulses']],
  ['dry bean, on supports', ['dry bean and pulses']],
  ['pea, fresh', ['pea']],
  ['pea, on supports', ['pea']],
  ['artichoke', ['artichoke, first year', 'artichoke, second year']],
  ['asparagus', ['asparagus']],
  ['mint', []],
  ['strawberry', []],
  ['turf grass, cool season', []],
  ['turf grass, warm season', []],
  ['banana, first year', ['banana, first year']],
  ['banana, second year', ['banana, second year']],
  ['coffee, bare ground', []],
  ['palm trees', []],
  ['pineapple, bare soil', ['pineapple']],
  ['tea, non-shaded', []],
  ['berries (bushes)', []],
  ['grapes, table or raisin', ['grapes']],
  ['grapes, wine', ['grapes']],
  ['hops', ['hops']],
  ['citrus, bare ground, 70% canopy', ['citrus']],
  ['citrus, bare ground, 50% canopy', ['citrus']],
  ['citrus, bare ground, 20% canopy', ['citrus']],
  ['citrus, ground cover, 70% canopy', ['citrus']],
  ['citrus, ground cover, 50% canopy', ['citrus']],
  ['citrus, ground cover, 20% canopy', ['citrus']],
  ['apple, cherry, pear; bare ground, frost', ['deciduous orchard']],
  ['stone fruit; bare ground, frost', ['deciduous orchard']],
  ['avocado, bare ground', []],
  ['kiwi', []],
  ['olive, 40-60% cover', ['olive']],
  ['conifer trees', []],
]

/** The crop of Tables 12, 17 and 22 by its own name, or by one of Table 11 that belongs to one crop only. */
export function cropNamed(name: string): string {
  if (CROP_NAMES.some(([crop]) => crop === name)) return name
  const crops = CROP_NAMES.filter(([, stages]) => stages.includes(name)).map(([crop]) => crop)
  const [only, another] = crops
  if (only === undefined) throw unknownCrop(name)
  if (another === undefined) return only
  throw new InputError('crop', `${name} has the coefficients of several crops`, `give one of: ${crops.join('; ')}`)
}

/** The names of Table 11 that hold the stages of a crop, by any of its names. */
export function stageNamesOf(name: string): readonly string[] {
  const crop = CROP_NAMES.find(([known]) => known === name)
  if (crop !== undefined) return crop[1]
  if (CROP_NAMES.some(([, stages]) => stages.includes(name))) return [name]
  throw unknownCrop(name)
}

function unknownCrop(name: string): InputError {
  return new InputError('crop', `no crop is called ${asName(name)}`, 'take a name from tabledCropNames()')
}
