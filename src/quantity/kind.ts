/**
 * The compile-time mark of a quantity. At run time a quantity is a plain number in the one canonical unit of its kind.
 *
 * The key is a string, not a unique symbol, so that the ESM and the CJS typings describe the same type.
 * The text of `K` is what the compiler shows when a wrong unit is passed: it names the constructors to use.
 * `S` is `'point'` for places on a scale (a temperature, an instant), which can be moved but not added.
 */
export interface Kind<K extends string, S extends 'additive' | 'point' = 'additive'> {
  readonly __quantity: K
  readonly __scale: S
}

/** Any quantity whose amounts can be added and scaled. */
export type Additive = number & { readonly __quantity: string; readonly __scale: 'additive' }

/** Any quantity at all. */
export type Quantity = number & { readonly __quantity: string; readonly __scale: 'additive' | 'point' }

/** The quantity if it is of one kind, `never` for a mixture: a list of litres and seconds has no sum. */
export type OneKind<Q extends Quantity> = IsUnion<Q['__quantity']> extends true ? never : Q

type IsUnion<T, Each = T> = T extends T ? ([Each] extends [T] ? false : true) : never

/**
 * What a constructor of several kinds gives where `Q` is wanted: that kind, if it makes it. Where it does not, the kind without a name, so
 * that the compiler blames the constructor and not one of its kinds that nobody spoke of.
 */
export type Made<Q, Any extends Quantity, Unnamed extends Quantity> = Q extends Any | Unnamed
  ? Q
  : Q extends Quantity
    ? Unnamed
    : never
