/** How conversion grows with the number of readings, beside a loop by hand and, where a compiler is, a loop in C. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { convertInto, type Permittivity, waterContentTopp1980 } from 'porewater'
import { median } from './timing.js'

const LOOP_IN_C = `
#include <stdio.h>
#include <stdlib.h>
#include <time.h>
static double now(void) { struct timespec t; clock_gettime(CLOCK_MONOTONIC, &t); return t.tv_sec * 1e9 + t.tv_nsec; }
int main(int argc, char **argv) {
  long rows = atol(argv[1]); int rounds = atoi(argv[2]);
  double *in = malloc(rows * sizeof *in), *out = malloc(rows * sizeof *out);
  for (long i = 0; i < rows; i++) { in[i] = 2 + (i % 790) / 10.0; out[i] = 0; }
  for (int round = 0; round < rounds; round++) {
    double start = now();
    for (long i = 0; i < rows; i++) { double e = in[i]; out[i] = ((4.3e-6 * e - 5.5e-4) * e + 2.92e-2) * e - 5.3e-2; }
    double ns = (now() - start) / rows;
    double sum = 0; for (long i = 0; i < rows; i += rows / 10) sum += out[i];
    printf("%.6f %.6f\\n", ns, sum);
  }
  return 0;
}
`

export function run(quick: boolean): void {
  const sizes = quick ? [1e3, 1e5] : [1e3, 1e4, 1e5, 1e6, 1e7]
  const inC = compiled()
  process.stdout.write('Topp 1980 by number of readings: nanoseconds a reading\n')
  process.stdout.write(
    `  ${['readings', 'by hand', 'convertInto', inC ? 'loop in C' : 'no C compiler', 'memory'].map((word) => word.padStart(13)).join('')}\n`,
  )
  for (const rows of sizes) {
    const rounds = Math.max(5, Math.min(200, Math.round(2e6 / rows)))
    const readings = Float64Array.from({ length: rows }, (_, i) => 2 + (i % 790) / 10)
    const output = new Float64Array(rows)
    const hand = nanoseconds(rows, rounds, () => {
      for (let i = 0; i < rows; i++) output[i] = waterContentTopp1980(readings[i] as Permittivity)
    })
    const heap = process.memoryUsage().heapUsed
    const ours = nanoseconds(rows, rounds, () => convertInto({ readings, output, convert: waterContentTopp1980 }))
    const kept = (process.memoryUsage().heapUsed - heap) / rounds / rows
    const c = inC ? inC.time(rows, rounds).toFixed(2) : '-'
    const cells = [String(rows), hand.toFixed(2), ours.toFixed(2), c, `${Math.max(0, kept).toFixed(2)} B`]
    process.stdout.write(`  ${cells.map((cell) => cell.padStart(13)).join('')}\n`)
  }
  process.stdout.write('\n')
  inC?.remove()
}

function nanoseconds(rows: number, rounds: number, once: () => unknown): number {
  const times: number[] = []
  for (let round = -2; round < rounds; round++) {
    const start = performance.now()
    once()
    if (round >= 0) times.push(((performance.now() - start) * 1e6) / rows)
  }
  return median(times)
}

/** The loop in C, built for this machine; undefined where there is no compiler. */
function compiled(): { time(rows: number, rounds: number): number; remove(): void } | undefined {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-loop-'))
  writeFileSync(join(folder, 'loop.c'), LOOP_IN_C)
  const program = join(folder, 'loop')
  const remove = (): void => rmSync(folder, { recursive: true, force: true })
  if (spawnSync('cc', ['-O2', '-o', program, join(folder, 'loop.c')]).status !== 0) {
    remove()
    return undefined
  }
  const time = (rows: number, rounds: number): number =>
    median(
      execFileSync(program, [String(rows), String(rounds)], { encoding: 'utf8' })
        .trim()
        .split('\n')
        .map((line) => Number(line.split(' ')[0])),
    )
  return { time, remove }
}
