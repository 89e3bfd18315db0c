/**
 * A type as the session needs it: where the quantities are in what a function takes and gives. 0 stands for all that holds none.
 * It is written by `npm run catalogue` from the typings.
 */
export type SignatureType =
  | 0
  /** A plain number that is written in a unit. */
  | { readonly unit: string }
  /** A typed array of numbers in a unit. */
  | { readonly numbers: string }
  /** A kind or an object by its name, with the types that it is made of. */
  | { readonly name: string; readonly of?: readonly SignatureType[] }
  | { readonly list: SignatureType }
  | { readonly places: readonly SignatureType[] }
  | { readonly each: SignatureType }
  | { readonly oneOf: readonly SignatureType[] }
  | { readonly has: Readonly<Record<string, SignatureType>> }
  /** A type that the call decides. */
  | { readonly as: string }
  /** The kind that an argument names in text. */
  | { readonly named: true }
  | FunctionType

export interface FunctionType {
  readonly takes: readonly SignatureType[]
  readonly gives: SignatureType
}

export interface Signatures {
  readonly functions: Readonly<Record<string, SignatureType>>
  readonly constants: Readonly<Record<string, SignatureType>>
  /** Kinds with the unit in which their numbers are kept. */
  readonly kinds: Readonly<Record<string, string>>
  /** Kinds that are places on a scale: moved, but not added. */
  readonly points: readonly string[]
  readonly objects: Readonly<
    Record<
      string,
      | { readonly names?: readonly string[]; readonly has: Readonly<Record<string, SignatureType>> }
      | { readonly is: SignatureType }
    >
  >
}
