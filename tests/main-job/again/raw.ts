/**
 * The raw files of the main job, and small sums over them. Nothing in this folder uses the package: it works the numbers of the report out
 * once more, from the rows and from what the documentation says.
 */
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const EXAMPLES = fileURLToPath(new URL('../../../docs/examples/', import.meta.url))

export type Row = Readonly<Record<string, string>>
/** A moment and what was read then. */
export interface Point {
  readonly t: number
  readonly x: number
}

export function rowsOf(file: string): Row[] {
  const [head = '', ...lines] = readFileSync(EXAMPLES + file, 'utf8')
    .trim()
    .split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i]!, cell])))
}

// biome-ignore lint/suspicious/noExplicitAny: a set-up is read as it stands, without the schema of the package.
export const setupOf = (file: string): any => JSON.parse(readFileSync(EXAMPLES + file, 'utf8'))

/** The leading number of a set-up's entry, such as 14 of "14 L"; of per cent the share. */
export function amount(value: number | string): number {
  const number = Number.parseFloat(String(value))
  return String(value).includes('%') ? number / 100 : number
}

/** Seconds on the clock on the wall, whatever zone a stamp names. */
export const wall = (stamp: string) =>
  Date.parse(`${stamp.replace(' ', 'T').slice(0, 16).padEnd(16, 'T00:00')}Z`) / 1000
export const clock = (t: number) => new Date(1000 * t).toISOString().slice(11, 16)

export const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
export const mean = (list: readonly number[]) => sum(list) / list.length
export const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b)
export function quantile(list: readonly number[], share: number): number {
  const all = sorted(list)
  const place = share * (all.length - 1)
  const low = Math.floor(place)
  return all[low]! + (place - low) * (all[Math.ceil(place)]! - all[low]!)
}
export const median = (list: readonly number[]) => quantile(list, 0.5)
export const valuesOf = (points: readonly Point[]) => points.map(({ x }) => x)
export const between = (points: readonly Point[], from: number, to: number) =>
  points.filter(({ t }) => t >= from && t < to)
