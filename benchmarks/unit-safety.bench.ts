/** What unit safety costs: the bare formula, ours, and the same with unit objects of two libraries. */
import Qty from 'js-quantities'
import { all, create } from 'mathjs'
import { inLitres, litres, type Permittivity, permittivity, waterContentTopp1980 } from 'porewater'
import { compare, report } from './timing.js'

const bare = (e: number) => ((4.3e-6 * e - 5.5e-4) * e + 2.92e-2) * e - 5.3e-2

export function run(quick: boolean): void {
  const n = quick ? 100_000 : 1_000_000
  const raw = Float64Array.from({ length: 1024 }, (_, i) => 2 + (i % 80))
  const branded = raw as unknown as ArrayLike<Permittivity>
  report(
    `Topp 1980, ${n} calls`,
    compare([
      { name: 'bare formula', run: () => repeat(n, (i) => bare(raw[i & 1023]!)) },
      { name: 'porewater', run: () => repeat(n, (i) => waterContentTopp1980(branded[i & 1023]!)) },
      {
        name: 'porewater, with its constructor',
        run: () => repeat(n, (i) => waterContentTopp1980(permittivity(raw[i & 1023]!))),
      },
    ]),
  )

  const math = create(all ?? {})
  const few = quick ? 200 : 2000
  report(
    `Sum of two volumes and its reading in litres, ${few} times`,
    compare([
      { name: 'bare numbers', run: () => repeat(few, (i) => i + 0.5) },
      { name: 'porewater', run: () => repeat(few, (i) => inLitres(litres(i)) + 0.5) },
      {
        name: 'mathjs units',
        run: () => repeat(few, (i) => math.add(math.unit(i, 'l'), math.unit(0.5, 'l')).toNumber('l')),
      },
      { name: 'js-quantities', run: () => repeat(few, (i) => Qty(i, 'l').add(Qty(0.5, 'l')).to('l').scalar) },
    ]),
  )
}

function repeat(n: number, f: (i: number) => number): number {
  let total = 0
  for (let i = 0; i < n; i++) total += f(i)
  return total
}
