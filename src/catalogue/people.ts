/** One author or editor. */
export interface Person {
  /** Family name, or the whole name of an institution. */
  readonly family: string
  /** Initials, where the source gives them. */
  readonly given?: string
  /** Whether it is an institution and not a person. */
  readonly institution?: true
}

/** People before the year of a source, and whether there are more who are not named. */
export interface People {
  readonly people: readonly Person[]
  readonly more: boolean
  readonly editors: boolean
}

const INITIALS = /^(?:\p{Lu}\p{Ll}{0,2}\.[ -]?)+$/u
const FAMILY = /^(?:(?:van|von|de|den|der|du|la|le|De|Van) )*\p{Lu}[\p{L}’'-]+(?: \p{Lu}[\p{L}’'-]+)?$/u

/** `Topp, G. C., Davis, J. L. and Annan, A. P.` as three people; undefined when it does not read as names of people. */
export function peopleOf(text: string): People | undefined {
  const more = /(?:,? et al\.|,? and others|,? and co-workers?)$/.exec(text)
  const editors = / \(eds?\.\)$/.exec(more ? text.slice(0, more.index) : text)
  const names = (more ? text.slice(0, more.index) : text).replace(/ \(eds?\.\)$/, '')
  const parts = names.split(/, and | and |, /)
  const people: Person[] = []
  for (const part of parts) {
    const last = people.at(-1)
    if (INITIALS.test(part) && last !== undefined && last.given === undefined)
      people[people.length - 1] = { ...last, given: part }
    else if (FAMILY.test(part)) people.push({ family: part })
    else return undefined
  }
  // Two words without initials are the name of an institution or of a thing.
  const alone = people.some((person) => person.given === undefined && person.family.includes(' '))
  return people.length === 0 || alone ? undefined : { people, more: more !== null, editors: editors !== null }
}
