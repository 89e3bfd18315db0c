/** What a flow meter shows beside the rises. Shares are common practice, no source; what is true stands in the script. */
import { type Diagnosis, runReducer, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { SETTINGS, scripted } from './scripted-zone.js'

const SHOTS = Array.from({ length: 22 }, (_, k) => 60 + 130 * k)
const isOpen = (minute: number) => SHOTS.some((at) => minute >= at && minute < at + 2)
/** The causes, at the end of two days, of a zone whose meter shows this share and whose places get that of each shot from minute 1500 on. */
function causes(metered: number, reaches: number, closed = 0): Diagnosis['causes'] {
  const inputs = scripted({
    minutes: 2880,
    probes: SETTINGS.probes,
    shots: SHOTS,
    metered: (minute) => (isOpen(minute) ? (minute < 1500 ? 1 : metered) : minute < 1500 ? 0 : closed),
    reaches: (minute) => (minute < 1500 ? 1 : reaches),
  })
  return runReducer({ reducer: watchZone(SETTINGS), inputs }).outputs.at(-1)!.causes
}
const first = (...input: Parameters<typeof causes>) => causes(...input)[0]?.code

describe('by the meter', () => {
  it('nothing is wrong where it shows what is ordered and the probes rise', () => {
    expect(causes(1, 1)).toEqual([])
  })
  it('no water, a part of it, and a line that leaks are told apart', () => {
    expect(first(0, 0)).toBe('no-water')
    expect(first(0.75, 0.75)).toBe('partial-water')
    expect(first(1.5, 0.6)).toBe('line-leak')
    expect(first(1, 0.5)).toBe('line-leak')
  })
  it('flow while closed is a leak from one hundredth on, a valve that does not close from a quarter on', () => {
    expect(causes(1, 1, 0.005)).toEqual([])
    expect(first(1, 1, 0.02)).toBe('leak-between-shots')
    expect(first(1, 1, 0.3)).toBe('valve-stuck-open')
  })
})
