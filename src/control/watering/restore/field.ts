/** A value of which only the names of fields are known. */
export type Loose<T> = { readonly [K in keyof T]?: unknown }

/** No age, and no volume in litres, is larger. */
export const AGES = 1e12

export function inRange(value: unknown, min: number, max: number): boolean {
  return typeof value === 'number' && value >= min && value <= max
}

export function isCount(value: unknown, max: number): boolean {
  return inRange(value, 0, max) && Number.isInteger(value)
}

export function nullOr(value: unknown, min: number, max: number): boolean {
  return value === null || inRange(value, min, max)
}

/** Every entry, also one that was deleted: `every` passes over holes. */
export function each(list: readonly unknown[], isGood: (entry: unknown) => boolean): boolean {
  for (let i = 0; i < list.length; i++) if (!isGood(list[i])) return false
  return true
}
