import type { Container } from '../../../medium/container/container.js'
import type { ConductiveModel } from '../../../medium/curves/retention-model.js'
import type { SuctionHead } from '../../../quantity/generated/kinds.js'

/** Fewest and most nodes of a simulation that is not told how many. */
const FEWEST = 27
const MAX = 61
/** E-folds by which the conductivity of a container at rest may fall over an element. */
const FALL = 0.23
/** Share of the height whose fall is not counted: that of fine media hard by saturation, which no grid follows. */
const MIN = 0.1
/** Conductivity, as a share of that at saturation, below which nothing counts. */
const NOTHING = 1e-9

/**
 * Nodes with which most shots drain within some thousandths of what they should. What a coarse grid gets wrong is water on its way down, with
 * the square of the fall of the conductivity over an element.
 */
export function usualNodes(
  layers: readonly { readonly container: Container; readonly medium: ConductiveModel }[],
): number {
  const total = layers.reduce((sum, { container }) => sum + container.height, 0)
  let base = 0
  let wanted = 0
  for (const { container, medium } of layers) {
    const conducts = (suction: number) => Math.max(medium.relativeConductivity(suction as SuctionHead), NOTHING)
    const top = base + container.height
    const fall = Math.log(conducts(Math.max(base, MIN * total)) / conducts(top))
    wanted = Math.max(wanted, ((fall / FALL) * total) / container.height)
    base = top
  }
  return Math.min(Math.max(FEWEST, 1 + Math.ceil(wanted)), MAX)
}
