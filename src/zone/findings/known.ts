import type { ZoneReason } from './zone-reason.js'

/** A result, or why there is none: a code in kebab case that `explainZoneFinding` puts into words. */
export type Known<T> =
  | { readonly known: true; readonly value: T }
  | { readonly known: false; readonly reason: ZoneReason }

/** A result that is there. */
export function known<T>(value: T): Known<T> {
  return { known: true, value }
}

/** A result that is not there, with the code of its reason. */
export function unknown(reason: ZoneReason): { readonly known: false; readonly reason: ZoneReason } {
  return { known: false, reason }
}
