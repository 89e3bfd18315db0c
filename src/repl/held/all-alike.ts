import { InputError } from '../../quantity/errors.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { parseQuantity } from '../../text/parse.js'
import { Measured } from './measured.js'
import type { FunctionType } from './signature-type.js'
import { unitOfKind } from './signatures.js'

/** Arguments that must be of one kind, whichever it is: text is read by the kind of the others, and a number without a unit is refused. */
export function allAlike(given: readonly unknown[], { takes }: FunctionType): readonly unknown[] {
  const free = given.map((_, i) => isFree(takes[i]))
  const first = given.find((one, i): one is Measured => free[i] === true && one instanceof Measured)
  if (first === undefined) return given
  return given.map((one, i) => (free[i] && !(one instanceof Measured) ? alike(one, first) : one))
}

function isFree(type: FunctionType['takes'][number] | undefined): boolean {
  return type !== undefined && type !== 0 && 'as' in type
}

function alike(one: unknown, first: Measured): unknown {
  const [kind] = first.kinds
  if (typeof one === 'string' && kind !== undefined)
    return new Measured(parseQuantity(one, kind as KindName) as number, unitOfKind(kind), [kind])
  if (typeof one !== 'number' || first.unit === '1') return one
  throw new InputError(
    'amount',
    `${one} has no unit beside ${first}`,
    `write it with one, such as '${one} ${first.unit}'`,
  )
}
