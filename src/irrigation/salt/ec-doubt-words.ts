import { oneOf } from '../../quantity/one-of.js'
import { type EcDoubt, SEA } from './ec-doubt.js'

/** The EC that cannot be, beside which one, and what to do. */
export function ecDoubtInWords({ about, value, beside }: EcDoubt): string {
  const isDrain = oneOf(about, ['feedEC', 'drainEC'], 'finding.about') === 'drainEC'
  if (value > SEA)
    return `a ${isDrain ? 'drain' : 'feed'} of ${value.toFixed(2)} dS/m is saltier than sea water: in mS/m it would be ${(value / 100).toFixed(2)} dS/m, in µS/cm ${(value / 1000).toFixed(2)}; what is told of salts does not hold, give dS/m`
  return isDrain
    ? `a drain of ${value.toFixed(2)} dS/m beside a feed of ${beside.toFixed(2)} dS/m is thinner than rain: the sensor is dead, dry or in another unit, and what is told of salts does not hold; measure the drain by hand`
    : `a feed of ${value.toFixed(2)} dS/m beside a drain of ${beside.toFixed(2)} dS/m is the purest water: unless you flush with it, the sensor is dead or the feed has no fertiliser, and what is told of salts does not hold; measure the feed by hand`
}
