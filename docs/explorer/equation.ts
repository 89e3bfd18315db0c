/** One number that goes into an equation. */
export interface Input {
  /** Where it goes: the name of an argument, or `options.property`. */
  readonly path: string
  /** Its name in words. */
  readonly label: string
  readonly text: string
  readonly unit: string
  /** The range in interval notation, for people. */
  readonly range: string
  readonly optional: boolean
  readonly integers: boolean
  /** The value of the example; missing where the example leaves it out. */
  readonly value: number | undefined
  /** The constructor that makes it from such a number; empty for a plain number. */
  readonly maker: string
  /** Where the authors measured, if they said so. */
  readonly measured: readonly [min: number, max: number] | undefined
  /** What the slider and the curve span at first. */
  readonly from: number
  readonly to: number
}

/** All that the page knows about one function of the package. */
export interface Equation {
  readonly name: string
  readonly topic: string
  readonly summary: string
  /** Paragraphs, as HTML. */
  readonly description: readonly string[]
  /** MathML, made when the page was built; empty for a procedure. */
  readonly formula: string
  readonly procedure: string
  readonly inputs: readonly Input[]
  /** Names of the arguments in order. */
  readonly arguments: readonly string[]
  readonly result: string
  readonly unit: string
  readonly validity: string
  /** Name of the record that says where it was measured; empty without one. */
  readonly measuredBy: string
  readonly sources: readonly string[]
  readonly example: string
}
