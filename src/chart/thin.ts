/** A place on the screen. */
export type Place = readonly [x: number, y: number]

/**
 * What the eye can see of a line: of all points that lie in one column of pixels in a row the first, the lowest, the highest and the
 * last. A break inside one column is not seen; one between two columns stays, as an undefined place.
 */
export function thinLine(count: number, placeOf: (i: number) => Place | undefined): (Place | undefined)[] {
  const kept: (Place | undefined)[] = []
  let column = Number.NaN
  let group: [first: Place, low: Place, high: Place, last: Place] | undefined
  let order: [low: number, high: number] = [0, 0]
  let broken = false
  const close = () => {
    if (group === undefined) return
    const [first, low, high, last] = group
    const inside = order[0] < order[1] ? [low, high] : [high, low]
    let before: Place | undefined
    for (const place of [first, ...inside, last]) {
      if (place !== before) kept.push(place)
      before = place
    }
    group = undefined
  }
  for (let i = 0; i < count; i++) {
    const place = placeOf(i)
    if (place === undefined) {
      broken = true
      continue
    }
    const here = Math.floor(place[0])
    if (group === undefined || here !== column) {
      close()
      if (broken && kept.length > 0) kept.push(undefined)
      column = here
      group = [place, place, place, place]
      order = [i, i]
    } else {
      if (place[1] < group[1][1]) [group[1], order[0]] = [place, i]
      if (place[1] > group[2][1]) [group[2], order[1]] = [place, i]
      group[3] = place
    }
    broken = false
  }
  close()
  return kept
}

/** Of points so close that they cover each other one, so many at most as a picture can hold; the first of each cell. */
export function thinPoints(places: readonly Place[], max: number): readonly Place[] {
  for (let cell = 1; ; cell *= 1.5) {
    const kept = new Map<number, Place>()
    for (const place of places) {
      const key = Math.floor(place[0] / cell) * 32768 + Math.floor(place[1] / cell)
      if (!kept.has(key)) kept.set(key, place)
    }
    if (kept.size <= max) return [...kept.values()]
  }
}

/** Of bars in one column of pixels the one that reaches furthest from the line on which they stand. */
export function thinBars(places: readonly Place[], ground: number): readonly Place[] {
  const kept = new Map<number, Place>()
  for (const place of places) {
    const column = Math.floor(place[0])
    const other = kept.get(column)
    if (other === undefined || Math.abs(place[1] - ground) > Math.abs(other[1] - ground)) kept.set(column, place)
  }
  return [...kept.values()]
}
