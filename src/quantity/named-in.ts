import { type Domain, domainWith } from './domain.js'
import { numberIn } from './guard.js'

/** A number in a domain that several arguments share, and whose quantity is called as the argument is: `drainedMass` is a drained mass. */
export function namedIn(value: number, domain: Domain, argument: string): number {
  const quantity = argument.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`)
  return numberIn(value, domainWith(domain, { quantity }), argument)
}
