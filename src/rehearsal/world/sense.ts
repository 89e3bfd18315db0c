import { randomNumbers } from '../../numerics/random.js'
import type { Effects, ProbeEffects } from '../faults/effects.js'
import type { RehearsalZone } from '../scenario/zone.js'
import { streamSeed } from '../stream-seed.js'

/** The probes of a zone, each with its own offset and place. */
export interface Probes {
  /** Lets them follow the water contents at their places for some time. */
  readonly follow: (waterContents: Float64Array, duration: number) => void
  /** What a probe sends; `undefined` where it sends nothing. */
  readonly send: (probe: number, effects: Effects, time: number, salt: number, temperature: number) => unknown
}

export function probesOf(zone: RehearsalZone, seed: number): Probes {
  const { probes, waterContent, probeLag, probeNoise } = zone
  const own = randomNumbers(seed)
  const noise = Array.from({ length: probes }, (_, i) => randomNumbers(streamSeed(seed, 1 + i)))
  const offsets = Array.from({ length: probes }, () => zone.probeOffset * own.normal())
  const swings = Array.from({ length: probes }, () => Math.max(0.2, 1 + zone.placeSpread * own.normal()))
  const shown = new Float64Array(probes).fill(waterContent)
  let spent = -1
  let keep = 0
  const frozen: unknown[] = new Array(probes).fill(undefined)

  const measured = (i: number, effect: ProbeEffects, time: number, salt: number, temperature: number) => {
    const random = noise[i]!
    const own = waterContent + swings[i]! * (shown[i]! - waterContent) + offsets[i]! + probeNoise * random.normal()
    const wet = effect.foreign ? foreignWaterContent(waterContent, time) : own * effect.contact
    const drift = effect.driftPerDay === 0 ? 0 : (effect.driftPerDay * (time - effect.driftSince)) / 86400
    const scatter = effect.noise === 0 ? 0 : effect.noise * random.normal()
    const spike = effect.spike === 0 || random.uniform() > 0.025 ? 0 : effect.spike * (random.uniform() < 0.5 ? -1 : 1)
    const water = wet + effect.offset + drift + scatter + spike
    return water + effect.perSalt * salt + effect.perDegree * (temperature - 20)
  }

  return {
    follow: (waterContents, duration) => {
      if (duration !== spent) {
        spent = duration
        keep = probeLag > 0 ? Math.exp(-duration / probeLag) : 0
      }
      for (let i = 0; i < probes; i++) shown[i] = waterContents[i]! + (shown[i]! - waterContents[i]!) * keep
    },
    send: (probe, effects, time, salt, temperature) => {
      const source = effects.swapped && probe < 2 && probes > 1 ? 1 - probe : probe
      const effect = effects.probes[source]!
      const water = measured(source, effect, time, salt, temperature)
      if (effect.silent) return undefined
      if (!effect.frozen) frozen[source] = undefined
      else frozen[source] ??= water
      const said = ((effect.frozen ? frozen[source] : water) as number) * effect.factor + effect.shift
      if (effect.instead !== undefined) return effect.instead
      return effect.asText ? said.toFixed(3) : said
    },
  }
}

/** The water content of some other zone, watered at other times and drier: invented. */
function foreignWaterContent(waterContent: number, time: number): number {
  return waterContent - 0.06 + 0.015 * Math.sin((2 * Math.PI * time) / 9000)
}
