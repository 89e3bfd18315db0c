import { InputError } from '../quantity/errors.js'
import type { KindName } from './generated/kind-types.js'
import { KINDS } from './generated/kinds.js'
import type { TextKind } from './text-kind.js'

/** The kind of that name. */
export function kindNamed(kind: string): TextKind {
  const about = Object.hasOwn(KINDS, kind) ? KINDS[kind as KindName] : undefined
  if (about === undefined)
    throw new InputError(
      'kind',
      `"${String(kind).slice(0, 80)}" is not the name of a kind`,
      `use one of ${Object.keys(KINDS).join(', ')}`,
    )
  return about
}
