/** One argument of a function, or one property of an options object, or one number of a result. */
export interface CatalogueField {
  /** Its name; a property of an options object is written `options.property`. */
  readonly path: string
  /** Its type, as it is written in TypeScript. */
  readonly type: string
  /** What it is, in words. */
  readonly text: string
  /** Its unit; `1` for a plain ratio. Absent where the field is not a number. */
  readonly unit?: string
  /** The range that the code accepts, in interval notation, or `any`. */
  readonly range?: string
  /** Whether it may be left out; absent where it may not. */
  readonly optional?: boolean
  /** Whether it is a number, a list of numbers, or something else. */
  readonly shape: 'number' | 'list' | 'other'
}

/** What the package knows about one of its public functions. */
export interface CatalogueEntry {
  readonly name: string
  /** The folder and sub-path it lives in: `dielectric` for `porewater/dielectric`. */
  readonly topic: string
  /** Its first sentence. */
  readonly summary: string
  /** The rest of its description, without the equation. */
  readonly description: string
  /** The equation in TeX; empty for a procedure. */
  readonly equation: string
  /** The steps in words, where there is no equation. */
  readonly procedure: string
  readonly arguments: readonly CatalogueField[]
  readonly result: {
    readonly type: string
    readonly text: string
    readonly unit?: string
    readonly shape: CatalogueField['shape']
    readonly fields: readonly CatalogueField[]
  }
  readonly throws: string
  /** Where it was measured, in words; empty where that question has no meaning. */
  readonly validity: string
  readonly sources: readonly string[]
  /** Runnable code; the values after `// =>` are checked by the tests. */
  readonly example: string
}
