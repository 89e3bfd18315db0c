/** Whether a table has a row of this name. What is no text has none: a list of one name would be read as the name, and some of it throws. */
export function hasRow(table: object, name: unknown): boolean {
  return typeof name === 'string' && Object.hasOwn(table, name)
}

/** A name as it was given, or what stands in its place: a symbol cannot be written out. */
export function asName(name: unknown): string {
  return typeof name === 'string' ? name : `a ${typeof name}`
}
