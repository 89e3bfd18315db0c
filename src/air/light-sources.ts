import { InputError } from '../quantity/errors.js'
import type { PhotonYield } from '../quantity/generated/kinds.js'
import { asName, hasRow } from '../quantity/one-of.js'

/** What is needed to convert the light of a source. */
export interface LightSource {
  /** Photons per joule of light of 400 to 700 nm. Unit: µmol/J. */
  readonly photonYield: PhotonYield
  /** Illuminance of one µmol/m²/s of photons of 400 to 700 nm. Unit: lx per µmol/m²/s. */
  readonly luxPerMicromole: number
}

/**
 * Light sources whose conversions were published, for light of 400 to 700 nm. There is no entry for light-emitting diodes: they differ
 * too much; take the photon yield and the spectrum of their own data sheet.
 *
 * Source: thimijan-1983, Table 3.
 */
export const lightSources = {
  'sun-and-sky': { photonYield: 4.57 as PhotonYield, luxPerMicromole: 54 },
  'blue-sky': { photonYield: 4.24 as PhotonYield, luxPerMicromole: 52 },
  'high-pressure-sodium': { photonYield: 4.98 as PhotonYield, luxPerMicromole: 82 },
  'metal-halide': { photonYield: 4.59 as PhotonYield, luxPerMicromole: 71 },
  'cool-white-fluorescent': { photonYield: 4.59 as PhotonYield, luxPerMicromole: 74 },
  incandescent: { photonYield: 5.0 as PhotonYield, luxPerMicromole: 50 },
} as const satisfies Record<string, LightSource>

/** Name of a light source whose conversions were published. */
export type LightSourceName = keyof typeof lightSources

/** The conversions of a named source, or a refusal that lists the names. */
export function lightSource(name: LightSourceName): LightSource {
  if (hasRow(lightSources, name)) return lightSources[name]
  throw new InputError('source', `"${asName(name)}" is unknown`, `give one of ${Object.keys(lightSources).join(', ')}`)
}
