import type { CheckCode, Diagnosis, Evidence, Suspicion } from '../cause/cause.js'
import { DEAD, type RecentShots } from '../state/recent-shots.js'
import type { UsualShares } from '../state/zone-state.js'
import { evidence, suspicion } from './suspicion.js'

/** What the water of the last shots shows of supply, line, drippers and meter. */
export function suspectWater(recent: RecentShots, usual: UsualShares, full: Diagnosis['full']): Suspicion[] {
  const slip = wrongVolume(recent)
  return slip.length > 0
    ? slip
    : [...missedShots(recent, full), ...meteredShots(recent), ...lessThanMetered(recent, usual)]
}

/** A share below which a shot is missed: twelve standard deviations below the usual. Chosen on rehearsals, as are all shares below. */
const MISSED = 0.35
/** A share of shots that drained: they came, whatever the probes show. Chosen. */
const DRAINED = 0.2

/**
 * Watering by hand is advised only where probes that can be trusted say that there is room: below the full level, and below what they
 * reached before, lest a container that is full at a lower level than somebody set is taken for a dry one.
 */
function supplyCheck(full: Diagnosis['full'], recent: RecentShots): CheckCode {
  if (full.known && full.value) return 'look-at-supply'
  return !full.known || recent.mayBeFull(2) ? 'look-at-supply-and-weigh' : 'look-at-supply-then-water-by-hand'
}

/** Shots that raise every probe by so many times volume over volume, or bring more than the medium takes in all: litres for millilitres. */
const TOO_MUCH = 8
function wrongVolume(recent: RecentShots): Suspicion[] {
  const minShare = recent.worst(4)
  const share = recent.filled(4)
  if (!(share > 1) && (minShare === null || minShare < TOO_MUCH)) return []
  const because = [
    ...(minShare === null ? [] : [evidence('rise-share', minShare, '1', { usual: 1, time: recent.since(4) })]),
    evidence('shot-over-medium', share, '1', { time: recent.since(4) }),
  ]
  return [suspicion('unit-slip', 'caution', 0.9, because, 'check-the-unit')]
}

/** Two shots in a row that no probe saw. */
function missedShots(recent: RecentShots, full: Diagnosis['full']): Suspicion[] {
  const [first, second] = [recent.best(1), recent.best(2)]
  const metered = recent.meterIsDead ? null : recent.metered(2)
  const dry = metered !== null && metered < DEAD
  if (recent.count < 2) return []
  if (first === null || second === null)
    return dry && metered !== null
      ? [
          suspicion('no-water', 'danger', 0.7, [shareOfMeter(metered, recent, 2)], supplyCheck(full, recent)),
          suspicion('flow-meter-wrong', 'caution', 0.55, [shareOfMeter(metered, recent, 2)], 'fill-a-bucket'),
        ]
      : []
  if (first >= MISSED || second >= MISSED || (full.known && full.value)) return []
  // What drains came.
  if ((recent.drained(2) ?? 0) > DRAINED) return []
  const missed = evidence('missed-shots', 2, '1', { usual: 0, time: recent.since(2) })
  const rise = evidence('rise-share', second, '1', { usual: 1, time: recent.since(2) })
  const check = supplyCheck(full, recent)
  if (metered === null && check === 'look-at-supply-and-weigh')
    return [
      suspicion('no-water', 'danger', 0.75, [missed, rise], check),
      suspicion('zone-full', 'caution', 0.7, [missed, rise], 'weigh-a-container'),
    ]
  if (metered === null) return [suspicion('no-water', 'danger', 0.8, [missed, rise], check)]
  return dry
    ? [
        suspicion(
          'no-water',
          'danger',
          0.95,
          [missed, rise, shareOfMeter(metered, recent, 2)],
          supplyCheck(full, recent),
        ),
      ]
    : []
}

function shareOfMeter(share: number, recent: RecentShots, k: number): Evidence {
  return evidence('metered-share', share, '1', { usual: 1, time: recent.since(k) })
}

/** So many times the flow is no leak: chosen. */
const TOO_MANY = 3

/** What the meter says, against the rises. */
function meteredShots(recent: RecentShots): Suspicion[] {
  const k = recent.shotsOfMeter(3)
  const metered = recent.metered(k)
  // Shots that differ are a change under way: the next one tells.
  if (metered === null || Math.abs((recent.metered(1) ?? metered) - metered) > 0.1) return []
  const best = recent.best(k)
  const because = [shareOfMeter(metered, recent, k)]
  if (best !== null) because.push(evidence('rise-share', best, '1', { usual: 1, time: recent.since(k) }))
  if (metered < DEAD)
    return recent.meterIsDead && best !== null && best >= 0.6
      ? [suspicion('flow-meter-wrong', 'caution', 0.9, because, 'fill-a-bucket')]
      : []
  const less = best !== null && best < 0.85
  if (metered < 0.87) {
    const partial = best === null ? 0.7 : less ? 0.9 : 0.65
    return [
      suspicion('partial-water', 'caution', partial, because, 'catch-test'),
      suspicion('flow-meter-wrong', 'caution', less ? 0.4 : 0.6, because, 'fill-a-bucket'),
    ]
  }
  if (metered <= 1.25) return []
  // No pump passes so much, and where it did the probes would show less.
  if (metered > TOO_MANY && !less) return [suspicion('flow-meter-wrong', 'caution', 0.85, because, 'fill-a-bucket')]
  return [
    suspicion('line-leak', 'danger', less ? 0.9 : 0.5, because, 'walk-the-line'),
    suspicion('flow-meter-wrong', 'caution', less ? 0.4 : 0.75, because, 'fill-a-bucket'),
  ]
}

/** All probes rise by less than the meter, or nobody, explains. */
function lessThanMetered(recent: RecentShots, usual: UsualShares): Suspicion[] {
  const metered = recent.metered(4)
  const best = recent.bestWithRoom(4)
  if (
    best === null ||
    !recent.sure(4) ||
    recent.mayOverflow(4) ||
    best >= 0.8 - 3 * recent.error(4) ||
    (metered !== null && (metered < 0.87 || metered > 1.25))
  )
    return []
  const drained = recent.drained(4)
  // What ran through the medium is no leak beside it.
  if (drained !== null && usual.drainedShots >= 8 && drained - usual.drained > 0.4 * (1 - best)) return []
  const because = [evidence('rise-share', best, '1', { usual: 1, time: recent.since(4) })]
  if (metered !== null) because.push(shareOfMeter(metered, recent, 4))
  // Without a meter two missed shots are told as no water; here something came.
  if (metered === null)
    return best < MISSED
      ? [suspicion('line-leak', 'caution', 0.5, because, 'walk-the-line')]
      : [
          suspicion('partial-water', 'caution', 0.65, because, 'catch-test'),
          suspicion('line-leak', 'caution', 0.5, because, 'walk-the-line'),
        ]
  return [suspicion('line-leak', 'danger', 0.65, because, 'walk-the-line')]
}
