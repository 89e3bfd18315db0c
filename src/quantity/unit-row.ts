/** One kind of quantity: a number in one unit, with one meaning. */
export interface KindRow {
  /** Name of the type. */
  readonly name: string
  /** What it is; the text before the first semicolon, colon or bracket goes into the documentation of its constructors. */
  readonly about: string
  /** The words with which a compile error starts; the constructors follow. */
  readonly mark: string
  /** `point` for a place on a scale, which can be moved but not added. */
  readonly scale?: 'point'
  /** Symbol of the SenML registry in which the kind is sent (RFC 8428); without it the registry has none. */
  readonly senml?: string
  /** A kind that only functions give: it has readers and no constructor. */
  readonly given?: true
}

/** A row in which nothing is left out. */
export type WholeFamilyRow = FamilyRow & Required<Pick<FamilyRow, 'file' | 'quantity' | 'unit' | 'range' | 'hint'>>

/** Kinds that share their units, their constructors and their domain: a file of `src/quantity`, or a part of one. */
export interface FamilyRow extends Partial<KindRow> {
  /** Name of the only kind, or of the union of all of them. */
  readonly name: string
  /** File that the kinds live in; named as what is made by default. */
  readonly file?: string
  /** Symbol of the quantity in TeX. */
  readonly tex: string
  /** What the constructors of several kinds make; that of the only kind otherwise. */
  readonly noun?: string
  /** The kinds, where there is more than one; the row itself is the only kind otherwise. */
  readonly kinds?: readonly KindRow[]
  /** Kinds of other families that these constructors make too. */
  readonly makesToo?: readonly string[]
  /** What a constructor of several kinds gives where nothing says which: a type that no function takes, or one of the kinds. */
  readonly unnamed?: { readonly name: string; readonly mark: string } | string
  /** Constructors that a compile error names, where the first two are not those that people mean. */
  readonly named?: readonly string[]
  /** What a number of it is, in the words of a refusal; what is made by default. */
  readonly quantity?: string
  /** Symbol of the unit in which numbers are kept, as documentation names it; that of the first unit by default. */
  readonly unit?: string
  /** What a number may be, in the unit in which it is kept: an interval, `[0, ∞)` by default. */
  readonly range?: string
  /** What to do about a number outside the range; to give one of zero or more, above zero or finite by default. */
  readonly hint?: string
  /** Symbol of the unit in which text is written unless another is asked for; the unit in which numbers are kept by default. */
  readonly written?: string
  /** Whether text of two units is read, as in `1 h 30 min`. */
  readonly compound?: true
  /** Whether a number without a unit is read, though the first unit has a symbol. */
  readonly bare?: true
  /** Why text cannot stand for these kinds. */
  readonly noText?: string
}

/** One unit of a family. The first of each family is the one in which numbers are kept. */
export interface UnitRow {
  /** Name of the family. */
  readonly of: string
  /** Symbol, as it is written. `1` for a plain ratio. */
  readonly symbol: string
  /** Name of the constructor; without it the unit is one of text only. */
  readonly make?: string
  /** How documentation and refusals name the unit, if not by its symbol. */
  readonly called?: string
  /**
   * What leads from a number in this unit to the one that is kept: at most one each of `- x`, `* x` and `/ x`, in this order, with
   * exact digits; `√x` is a square root. Empty for the same number.
   */
  readonly factor: string
  /** Where the factor, or for a factor of one the unit, is defined. */
  readonly source: string
  /** Code of the Unified Code for Units of Measure; a unit without it is not one of text. */
  readonly ucum?: string
  /** Symbol of the SenML registry. */
  readonly senml?: string
  /** Other spellings, taken letter for letter: capitals matter. */
  readonly also?: readonly string[]
  /** Other spellings in small letters, taken in any. Never one that an SI prefix of another case could make. */
  readonly words?: readonly string[]
  /** Those kinds of the family that text gives this unit; all by default. */
  readonly kinds?: readonly string[]
  /** What a number in this unit may be, where that is not the family's range from or to zero or infinity. */
  readonly range?: string
  /** What to do about a number outside of it; as for the family by default. */
  readonly hint?: string
  /** Number for the example in the documentation; 2 by default. */
  readonly example?: number
  /** Why there is no reader. */
  readonly noReader?: string
}
