/** Names that a slip could have made of this one, the nearest first; none where nothing is near. */
export function nearNames(name: string, names: readonly string[], most = 5): string[] {
  const wanted = name.toLowerCase().slice(0, 60)
  if (wanted === '') return []
  return names
    .map((one) => ({
      one,
      away: distance(wanted, one.toLowerCase()) - (one.toLowerCase().includes(wanted) ? wanted.length : 0),
    }))
    .filter(({ one, away }) => away <= Math.max(2, one.length * 0.4))
    .sort((a, b) => a.away - b.away || a.one.length - b.one.length)
    .slice(0, most)
    .map(({ one }) => one)
}

/** Letters added, left out or changed between two words (Levenshtein 1966, from memory). */
export function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] as number) + (a[i - 1] === b[j - 1] ? 0 : 1)
      next.push(Math.min((row[j] as number) + 1, (next[j - 1] as number) + 1, change))
    }
    row = next
  }
  return row[b.length] as number
}
