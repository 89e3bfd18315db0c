/** A problem in what the user gave: shown as it is, without a stack, and the program ends with an exit code other than 0. */
export class Trouble extends Error {
  override readonly name = 'Trouble'
}
