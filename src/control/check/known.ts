import type { WateringRefusal } from './refusal.js'

/** Anything that may have come from outside. */
export type Loose<T> = { readonly [K in keyof T]?: unknown }

/** A finite number from `min` on, or undefined: text, null, true and NaN are not known. */
export function known(value: unknown, min: number): number | undefined {
  return Number.isFinite(value) && (value as number) >= min ? (value as number) : undefined
}

/** A limit, and the refusal that tells of it where it is missing, or above what it can be: milliseconds, or percent. */
export function limitOf<T>(
  limits: Loose<T>,
  name: keyof T & string,
  unit: string,
  refusals: WateringRefusal[],
  max = Number.MAX_VALUE,
): number | undefined {
  const told = known(limits[name], 0)
  const limit = told !== undefined && told <= max ? told : undefined
  if (limit === undefined) refusals.push({ code: 'limit-missing', level: 'danger', about: name, unit })
  return limit
}
