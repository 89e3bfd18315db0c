import type { RandomNumbers } from '../numerics/random.js'
import type { Spread } from './uncertain-input.js'

/** One deviation with standard deviation 1, or with scale 1 for Student's t. */
export function draw(spread: Spread, { uniform, normal }: RandomNumbers, freedom: number): number {
  switch (spread) {
    case 'normal':
      return normal()
    case 'rectangular':
      return Math.sqrt(3) * (2 * uniform() - 1)
    case 'triangular':
      return Math.sqrt(6) * (uniform() + uniform() - 1)
    case 'arcsine':
      return Math.SQRT2 * Math.sin(2 * Math.PI * uniform())
    case 'student':
      return student(freedom, uniform)
  }
}

/** Student's t from two even numbers: bailey-1994. */
function student(freedom: number, uniform: () => number): number {
  for (;;) {
    const u = 2 * uniform() - 1
    const v = 2 * uniform() - 1
    const w = u * u + v * v
    if (w > 0 && w < 1) return u * Math.sqrt((freedom * (w ** (-2 / freedom) - 1)) / w)
  }
}
