import { InputError } from '../../quantity/errors.js'
import type { GroundFraction } from '../../quantity/generated/kinds.js'
import { asName, hasRow } from '../../quantity/one-of.js'

/** How water comes to a field. */
export type WettingMethod =
  | 'precipitation'
  | 'sprinkler'
  | 'basin'
  | 'border'
  | 'every-furrow-narrow-bed'
  | 'every-furrow-wide-bed'
  | 'alternate-furrows'
  | 'trickle'

/** Stage of an annual crop. */
export type CropStage = 'initial' | 'development' | 'mid-season' | 'late-season'

type Pair = readonly [number, number]

const WETTED: Readonly<Record<WettingMethod, Pair>> = {
  precipitation: [1, 1],
  sprinkler: [1, 1],
  basin: [1, 1],
  border: [1, 1],
  'every-furrow-narrow-bed': [0.6, 1],
  'every-furrow-wide-bed': [0.4, 0.6],
  'alternate-furrows': [0.3, 0.5],
  trickle: [0.3, 0.4],
}
const COVERED: Readonly<Record<CropStage, Pair>> = {
  initial: [0, 0.1],
  development: [0.1, 0.8],
  'mid-season': [0.8, 1],
  'late-season': [0.8, 0.2],
}

/**
 * Share of the ground that a way of irrigation wets, lowest and highest.
 *
 * @param wetting - Way of wetting, by its name in the table.
 * @procedure Looks it up; the refusal of an unknown name lists all.
 * @returns Lowest and highest share. Unit: 1.
 * @throws `InputError` when the table has no such way.
 * @validity Fields; measure the wetted circle of your own drippers.
 * @source allen-1998, Table 20
 * @example
 * tabledWettedShareFao56('trickle') // => [0.3, 0.4]
 */
export function tabledWettedShareFao56(wetting: WettingMethod): readonly [GroundFraction, GroundFraction] {
  return found('wetting', WETTED, wetting)
}

/**
 * Share of the ground that an annual crop covers, at the beginning and at the end of a stage.
 *
 * @param stage - Stage of growth.
 * @procedure Looks it up; the refusal of an unknown stage lists all.
 * @returns Cover when the stage begins and when it ends. Unit: 1.
 * @throws `InputError` when the table has no such stage.
 * @validity Annual field crops that close their canopy; look at your own, or use `coverFromCoefficient()`.
 * @source allen-1998, Table 21
 * @example
 * tabledCoverFao56('late-season') // => [0.8, 0.2]
 */
export function tabledCoverFao56(stage: CropStage): readonly [GroundFraction, GroundFraction] {
  return found('stage', COVERED, stage)
}

function found(about: string, table: Readonly<Record<string, Pair>>, name: string) {
  const pair = hasRow(table, name) ? table[name] : undefined
  if (pair === undefined) {
    throw new InputError(about, `the table has no ${asName(name)}`, `choose one of: ${Object.keys(table).join('; ')}`)
  }
  return pair as unknown as readonly [GroundFraction, GroundFraction]
}
