/** A result, or why there is none: a code in kebab case that `explainZoneReason` puts into words. */
export type Known<T> = { readonly known: true; readonly value: T } | { readonly known: false; readonly reason: string }

/** A result that is there. */
export function known<T>(value: T): Known<T> {
  return { known: true, value }
}

/** A result that is not there, with the code of its reason. */
export function unknown(reason: string): { readonly known: false; readonly reason: string } {
  return { known: false, reason }
}
