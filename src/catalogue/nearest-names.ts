/** Up to eight names that hold what was typed, or else are few letters away from it. */
export function nearestNames(typed: string, names: readonly string[]): string[] {
  const wanted = typed.toLowerCase().slice(0, 80)
  if (wanted === '') return []
  const holding = names.filter((name) => name.toLowerCase().includes(wanted))
  if (holding.length > 0) return holding.sort((a, b) => a.length - b.length).slice(0, 8)
  return names
    .map((name) => ({ name, distance: lettersApart(wanted, name.toLowerCase()) }))
    .filter(({ distance }) => distance <= Math.max(1, wanted.length / 4))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, 8)
    .map(({ name }) => name)
}

/** Letters to change, add or take away to make one word of the other (Levenshtein 1966). */
function lettersApart(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const changed = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min(changed, row[j]! + 1, next[j - 1]! + 1))
    }
    row = next
  }
  return row[b.length]!
}
