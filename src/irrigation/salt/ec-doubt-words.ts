import { oneOf } from '../../quantity/one-of.js'
import { type EcDoubt, SEA } from './ec-doubt.js'

/** The EC that cannot be, beside which one, and what to do. */
export function ecDoubtInWords({ about, value, beside }: EcDoubt): string {
  const isDrain = oneOf(about, ['feedEC', 'drainEC'], 'finding.about') === 'drainEC'
  if (value > SEA)
    return `a ${isDrain ? 'drain' : 'feed'} EC of ${value.toFixed(2)} dS/m is saltier than sea water: a number in mS/m would be ${(value / 100).toFixed(2)} dS/m, one in µS/cm ${(value / 1000).toFixed(2)} dS/m; give dS/m, and trust no salt figure until then`
  return isDrain
    ? `a drain EC of ${value.toFixed(2)} dS/m with a feed of ${beside.toFixed(2)} dS/m is weaker than rain: the sensor is dead, dry or set to another unit; measure the drain by hand, and trust no salt figure until then`
    : `a feed EC of ${value.toFixed(2)} dS/m with a drain of ${beside.toFixed(2)} dS/m is nearly pure water: unless you are flushing, the sensor is dead or the feed has no fertiliser; measure the feed by hand, and trust no salt figure until then`
}
