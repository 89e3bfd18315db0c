import {
  alarmConditions,
  type Diagnosis,
  diagnoseRecord,
  explainControlFinding,
  hours,
  litres,
  runReducer,
  type WatchZoneInput,
  watchZone,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { noise, type Script, SETTINGS, scripted } from './scripted-zone.js'

const THREE = ['A', 'B', 'C']
/** A shot an hour and more, so that the zone keeps its level: 0.02 in, 0.02 out. */
const hourly = (from: number, count: number, every = 130) => Array.from({ length: count }, (_, k) => from + every * k)

function diagnosesOf(script: Script): { readonly outputs: readonly Diagnosis[]; readonly inputs: WatchZoneInput[] } {
  const inputs = scripted(script)
  const zone = watchZone({ ...SETTINGS, probes: script.probes })
  return { outputs: runReducer({ reducer: zone, inputs }).outputs, inputs }
}
const codesOf = (diagnosis: Diagnosis | undefined) => diagnosis?.causes.map(({ code }) => code) ?? []
/** Minute at which a cause stood first or second for the first time. */
const namedAt = (outputs: readonly Diagnosis[], code: string) =>
  outputs.findIndex((one) =>
    codesOf(one)
      .slice(0, 2)
      .includes(code as never),
  )
const everTold = (outputs: readonly Diagnosis[]) => [...new Set(outputs.flatMap(codesOf))]
const advisesWater = (outputs: readonly Diagnosis[]) =>
  outputs.some(({ causes }) => causes.some(({ check }) => check === 'look-at-supply-then-water-by-hand'))

describe('a healthy zone', () => {
  it('has no cause, is not full, and rules out what its rises speak against', () => {
    const { outputs } = diagnosesOf({ minutes: 2880, probes: THREE, shots: hourly(60, 20), metered: () => 0 })
    expect(everTold(diagnosesOf({ minutes: 2880, probes: THREE, shots: hourly(60, 20) }).outputs)).toEqual([])
    const last = outputs.at(-1) as Diagnosis
    expect(last.full).toEqual({ known: true, value: false })
    const healthy = diagnosesOf({ minutes: 2880, probes: THREE, shots: hourly(60, 20) }).outputs.at(-1) as Diagnosis
    expect(healthy.ruledOut.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['no-water', 'partial-water', 'clogged-dripper', 'probe-frozen']),
    )
    expect(healthy.cannotTell).toContainEqual({ code: 'flow-meter-wrong', reason: 'no-flow-meter' })
  })
})

describe('the stories of lies', () => {
  it('a valve stuck open and a full slab: never "water by hand", the valve first', () => {
    for (let place = 0; place < 8; place++) {
      const start = 0.745 + 0.0002 * place
      const script = { minutes: 1500, probes: THREE, shots: hourly(30 + place, 10), start, use: 0, reaches: () => 0 }
      const { outputs } = diagnosesOf(script)
      expect(advisesWater(outputs)).toBe(false)
      expect(everTold(outputs)).not.toContain('no-water')
      expect(codesOf(outputs.at(-1)).slice(0, 2).sort()).toEqual(['valve-stuck-open', 'zone-full'])
      expect(outputs.at(-1)?.full).toEqual({ known: true, value: true })
    }
  })
  it('a valve stuck open fills a zone from below full: still never "water by hand"', () => {
    const { outputs } = diagnosesOf({
      minutes: 2880,
      probes: THREE,
      shots: hourly(60, 20),
      // From the second day on water runs all the time.
      use: 0.00015,
      sends: (truth, minute, i) =>
        Math.min(0.75, truth + (minute > 1440 ? 0.001 * (minute - 1440) : 0)) + noise(minute, i),
    })
    expect(advisesWater(outputs.slice(1500))).toBe(false)
    expect(
      everTold(outputs.slice(1440)).some((code) => ['valve-stuck-open', 'leak-between-shots'].includes(code)),
    ).toBe(true)
  })
  it('water comes back and one reading says full: no "water by hand" until the middle of five has caught up', () => {
    const zone = watchZone(SETTINGS)
    const inputs = scripted({ minutes: 500, probes: THREE, shots: hourly(60, 4), start: 0.66, reaches: () => 0 })
    let state = zone.start
    for (const input of inputs) state = zone.step(state, input)[0]
    const at = (level: number) => {
      const readings = THREE.map((probe) => ({ probe, waterContent: waterContent(level), time: 30000 }))
      return zone.step(state, { now: 30000, open: false, readings })[1]
    }
    const room = at(0.59)
    expect([room.full, advisesWater([room])]).toEqual([{ known: true, value: false }, true])
    const coming = at(0.742)
    expect(coming.full).toEqual({ known: false, reason: 'only-newest-reading' })
    expect([codesOf(coming)[0], advisesWater([coming])]).toEqual(['no-water', false])
  })
  it('three probes that see 2 of 10 shots: not silent', () => {
    const shots = hourly(60, 22)
    // After a good day two shots come through, the third and the seventh.
    const comes = (minute: number) => {
      const k = shots.filter((at) => at <= minute).length - 1
      return k < 12 || k === 14 || k === 18 ? 1 : 0
    }
    const { outputs } = diagnosesOf({ minutes: 2950, probes: THREE, shots, start: 0.7, reaches: comes })
    const after = shots[13]! + 2 + 11
    expect(namedAt(outputs, 'no-water')).toBeLessThanOrEqual(after)
    expect(namedAt(outputs, 'no-water')).toBeGreaterThan(shots[12]!)
  })
  it('a dead valve is told after the second missed shot, not 23 h later, with a small shot by hand where there is room', () => {
    const shots = hourly(60, 22)
    const dead = shots[16]!
    const { outputs } = diagnosesOf({
      minutes: 2950,
      probes: THREE,
      shots,
      reaches: (minute) => (minute >= dead ? 0 : 1),
    })
    const at = namedAt(outputs, 'no-water')
    expect(at).toBeGreaterThan(shots[17]!)
    expect(at).toBeLessThanOrEqual(shots[17]! + 2 + 11)
    expect(codesOf(outputs[at])[0]).toBe('no-water')
    expect(outputs[at]?.causes[0]?.evidence[0]).toMatchObject({ code: 'missed-shots', value: 2 })
    expect(everTold(outputs.slice(0, dead))).toEqual([])
    expect(advisesWater(outputs.slice(at + 130))).toBe(true)
  })
  it('a lifted probe is named, and none of its healthy neighbours', () => {
    for (let place = 0; place < 3; place++) {
      const { outputs } = diagnosesOf({
        minutes: 2000,
        probes: THREE,
        shots: hourly(60, 15),
        sends: (truth, minute, i) => (minute >= 1300 && i === place ? 0.75 * truth : truth) + noise(minute, i),
      })
      const at = namedAt(outputs, 'probe-lifted')
      expect(at).toBeLessThanOrEqual(1310)
      const accused = new Set(outputs.flatMap(({ causes }) => causes.flatMap(({ about }) => about ?? [])))
      expect([...accused]).toEqual([THREE[place]])
    }
  })
})

describe('other causes', () => {
  const base = { minutes: 2880, probes: THREE, shots: hourly(60, 22) }
  it('a flow meter that counts nothing, while the probes rise', () => {
    const metered = (minute: number) =>
      minute < 1500 && base.shots.some((at) => minute >= at && minute < at + 2) ? 1 : 0
    const { outputs } = diagnosesOf({ ...base, metered })
    expect(namedAt(outputs, 'flow-meter-wrong')).toBeGreaterThan(1500)
    expect(everTold(outputs)).toEqual(['flow-meter-wrong'])
  })
  it('water while closed', () => {
    const metered = (minute: number) =>
      minute > 1700 && minute < 1800 ? 1 : base.shots.some((at) => minute >= at && minute < at + 2) ? 1 : 0
    const { outputs } = diagnosesOf({ ...base, metered })
    expect(namedAt(outputs, 'valve-stuck-open')).toBeGreaterThan(1700)
    expect(namedAt(outputs, 'valve-stuck-open')).toBeLessThan(1710)
  })
  it('a clogged dripper by its neighbours', () => {
    const { outputs } = diagnosesOf({ ...base, reaches: (minute, i) => (minute > 1400 && i === 1 ? 0 : 1) })
    expect(namedAt(outputs, 'clogged-dripper')).toBeGreaterThan(1400)
    expect(outputs.at(-1)?.causes.find(({ code }) => code === 'clogged-dripper')?.about).toEqual(['B'])
  })
  it('a frozen probe, percent, and what is no number', () => {
    const sends = (after: (truth: number, minute: number) => unknown) => (truth: number, minute: number, i: number) =>
      minute >= 1400 && i === 0 ? after(truth, minute) : truth + noise(minute, i)
    expect(namedAt(diagnosesOf({ ...base, sends: sends(() => 0.68) }).outputs, 'probe-frozen')).toBeLessThanOrEqual(
      1420,
    )
    const percent = sends((truth, minute) => 100 * (truth + noise(minute, 0)))
    expect(namedAt(diagnosesOf({ ...base, sends: percent }).outputs, 'unit-slip')).toBeLessThanOrEqual(1405)
    for (const word of [Number.NaN, null, 'error', true, -999, 65535, 0])
      expect(namedAt(diagnosesOf({ ...base, sends: sends(() => word) }).outputs, 'probe-dead')).toBeLessThanOrEqual(
        1405,
      )
  })
  it('spikes beyond what the medium holds count like those inside; a code for "no reading" is none', () => {
    const spike = (value: (truth: number) => number) => (truth: number, minute: number, i: number) =>
      (minute === 1400 || minute === 1440) && i === 0 ? value(truth) : truth + noise(minute, i)
    const told = (value: (truth: number) => number) => diagnosesOf({ ...base, sends: spike(value) }).outputs
    // The band ends at 0.9: of a spike of 0.25 nothing is left but a reading that is missing.
    for (const by of [0.25, -0.25])
      expect(
        Math.abs(
          namedAt(
            told((truth) => truth + by),
            'probe-noisy',
          ) - 1441,
        ),
      ).toBeLessThanOrEqual(1)
    for (const code of [-999, 65535, 999.9]) expect(everTold(told(() => code))).toEqual([])
  })
  it('a single spike is not yet a probe that scatters, and what is told later rests on spikes, not on noise', () => {
    const at = (minutes: readonly number[], by: number) =>
      diagnosesOf({
        ...base,
        sends: (truth, minute, i) => truth + noise(minute, i) + (minutes.includes(minute) && i === 0 ? by : 0),
      }).outputs
    for (const by of [0.25, 0.12, 0.06, -0.06, -0.12, -0.25]) expect(everTold(at([1400], by))).toEqual([])
    for (const by of [0.25, 0.12, -0.12, -0.25]) {
      const cause = at([1400, 1440], by)
        .flatMap(({ causes }) => causes)
        .find(({ code }) => code === 'probe-noisy')
      expect(cause?.evidence).toEqual([{ code: 'spikes', value: 2, unit: '1', usual: 0, about: expect.any(String) }])
    }
  })
  it('probes that change places just after a shot that moved them apart', () => {
    const places = [0.008, -0.008]
    const { outputs } = diagnosesOf({
      ...base,
      probes: ['A', 'B'],
      sends: (truth, minute, i) => {
        // The last shot leaves the two half as far apart as they were.
        const apart = minute < 1395 ? 1 : minute < 1450 ? 1 - (minute - 1395) / 110 : 0.5
        return truth + apart * places[minute < 1480 ? i : 1 - i]! + noise(minute, i)
      },
    })
    expect(namedAt(outputs, 'probes-swapped')).toBeGreaterThan(1480)
    expect(namedAt(outputs, 'probes-swapped')).toBeLessThan(1480 + 120)
  })
  it('probes that change places by day, between two shots', () => {
    const places = [0.006, -0.006]
    const swapped = (from: number) =>
      diagnosesOf({
        ...base,
        probes: ['A', 'B'],
        shots: hourly(60, 22 * 3, 43),
        use: 0.00045,
        sends: (truth, minute, i) => truth + places[minute < from ? i : 1 - i]! + noise(minute, i),
      }).outputs
    // Shots at 1479 and 1522: the probes are quiet from ten minutes after the one on.
    expect(namedAt(swapped(1508), 'probes-swapped')).toBeGreaterThanOrEqual(1508)
    expect(namedAt(swapped(1508), 'probes-swapped')).toBeLessThanOrEqual(1515)
    // Six minutes after a shot, with the next one under way and in the midst of one: a shot lifts both.
    for (const from of [1485, 1521, 1523]) {
      expect(namedAt(swapped(from), 'probes-swapped')).toBeGreaterThanOrEqual(from)
      expect(namedAt(swapped(from), 'probes-swapped')).toBeLessThanOrEqual(from + 7)
    }
    expect(everTold(swapped(Infinity))).toEqual([])
  })
  it('probes that change places while plants drink fast, and that speak some seconds after each other', () => {
    const places = [0.007, -0.007]
    const script = (from: number) => ({
      ...base,
      probes: ['A', 'B'],
      shots: hourly(60, 22 * 3, 43),
      use: 0.00045,
      sends: (truth: number, minute: number, i: number) =>
        truth + places[minute < from ? i : 1 - i]! + noise(minute, i),
    })
    const apart = scripted(script(1508)).map((input) => ({
      ...input,
      now: input.now + 20,
      readings: input.readings.map((one, i) => ({ ...one, time: one.time! + 15 * i })),
    }))
    const zone = watchZone({ ...SETTINGS, probes: ['A', 'B'] })
    const { outputs } = runReducer({ reducer: zone, inputs: apart })
    expect(namedAt(outputs, 'probes-swapped')).toBeGreaterThanOrEqual(1508)
    expect(namedAt(outputs, 'probes-swapped')).toBeLessThanOrEqual(1515)
  })
  it('a full slab that falls as slowly as plants drink at night is not told to stand still', () => {
    // A seventh of a per cent an hour, looked at every minute: twenty readings cannot tell, two hours can.
    const { outputs } = diagnosesOf({
      minutes: 900,
      probes: ['A', 'B'],
      shots: [10, 40],
      start: 0.755,
      capacity: 0.765,
      use: 0.000023,
    })
    expect(everTold(outputs.slice(180))).not.toContain('zone-full')
  })
  it('a probe that is put in again wetter while a shot runs: the leap is more than the water can make', () => {
    const put = (by: number) =>
      diagnosesOf({
        ...base,
        sends: (truth, minute, i) => truth + (minute >= 1493 && i === 1 ? by : 0) + noise(minute, i),
      }).outputs
    expect(namedAt(put(0.05), 'probe-reinserted')).toBeGreaterThanOrEqual(1493)
    expect(namedAt(put(0.05), 'probe-reinserted')).toBeLessThanOrEqual(1500)
    expect(everTold(put(0))).toEqual([])
  })
  it('water by hand that runs through a full zone: drain without a shot, while the meter stands still', () => {
    const shots = base.shots.filter((at) => at < 1400 || at > 1700)
    const inputs = scripted({ ...base, shots, metered: () => 0 }).map((input, minute) => {
      const ran = shots.reduce((sum, at) => sum + Math.max(0, Math.min(2, minute - at)), 0)
      // A tenth of each shot drains; two hours after one somebody pours, and it drains for three quarters of an hour.
      const poured = 0.01 * Math.max(0, Math.min(45, minute - 1480))
      return { ...input, metered: litres(0.1 * ran), drained: litres(0.01 * ran + poured) }
    })
    const zone = watchZone({ ...SETTINGS, probes: THREE })
    const { outputs } = runReducer({ reducer: zone, inputs })
    expect(namedAt(outputs, 'watered-by-hand')).toBeGreaterThan(1480)
    expect(namedAt(outputs, 'watered-by-hand')).toBeLessThan(1480 + 45)
    expect(codesOf(outputs[namedAt(outputs, 'watered-by-hand')])[0]).toBe('watered-by-hand')
  })
  it('messages that come late by 20 to 60 minutes, in any order, are told once and not again and again', () => {
    const zone = watchZone(SETTINGS)
    const inputs = scripted({ minutes: 1800, probes: ['A', 'B', 'C'], shots: [60, 180, 300] })
    const arriving = inputs.map((): WatchZoneInput['readings'][number][] => [])
    // For sixteen hours each is as late as a fixed list of forty delays says: even the newest of a moment is then older than is allowed.
    inputs.forEach(({ readings }, minute) => {
      const late = minute < 240 || minute > 1200 ? 0 : 20 + ((minute * 17) % 40)
      arriving[minute + late]?.push(...readings)
    })
    let told = false
    const changes: number[] = []
    runReducer({
      reducer: zone,
      inputs: inputs.map((input, minute) => ({ ...input, readings: arriving[minute]! })),
    }).outputs.forEach(({ causes }, minute) => {
      const now = causes.some(({ code }) => code === 'no-readings')
      if (now !== told) changes.push(minute)
      told = now
    })
    expect(changes.length).toBe(2)
    expect(changes[0]).toBeLessThan(240 + 120)
    expect(changes[1]).toBeGreaterThan(1200)
    expect(changes[1]).toBeLessThan(1200 + 60)
  })
  it('water by hand', () => {
    const { outputs } = diagnosesOf({
      ...base,
      sends: (truth, minute, i) =>
        truth + (minute > 1465 ? 0.03 * (1 - Math.exp(-(minute - 1465) / 4)) : 0) + noise(minute, i),
    })
    expect(namedAt(outputs, 'watered-by-hand')).toBeGreaterThan(1465)
    expect(namedAt(outputs, 'watered-by-hand')).toBeLessThan(1480)
  })
  it('a feed that jumps, and a clock that leaps, stands, or counts milliseconds', () => {
    const inputs = scripted(base)
    const zone = watchZone({ ...SETTINGS })
    const fed = inputs.map((input, k) => ({ ...input, feedEC: (k < 1500 ? 2.5 : 4.4) as never }))
    expect(codesOf(runReducer({ reducer: zone, inputs: fed }).outputs[1503])).toEqual(['feed-tank-wrong'])
    const clock = (now: (k: number) => number) =>
      codesOf(
        runReducer({ reducer: zone, inputs: inputs.map((input, k) => ({ ...input, now: now(k) })) }).outputs[1520],
      )
    expect(clock((k) => 60 * k - (k > 1500 ? 3600 : 0))).toContain('clock-wrong')
    expect(clock((k) => 60 * k + (k > 1500 ? 86400 : 0))).toContain('clock-wrong')
    expect(clock((k) => 60 * Math.min(k, 1500))).toContain('clock-wrong')
    expect(clock((k) => (k > 1500 ? 1.78e12 : 60 * k))).toContain('clock-wrong')
    expect(clock((k) => (k > 1500 ? Number.NaN : 60 * k))).toContain('clock-wrong')
  })
})

describe('a diagnosis', () => {
  const script: Script = {
    minutes: 2000,
    probes: THREE,
    shots: hourly(60, 15),
    reaches: (minute) => (minute > 1400 ? 0 : 1),
  }
  it('goes on from a stored state as if nothing had happened, and says which field of a damaged one is wrong', () => {
    const inputs = scripted(script)
    const zone = watchZone({ ...SETTINGS })
    const whole = runReducer({ reducer: zone, inputs })
    const first = runReducer({ reducer: zone, inputs: inputs.slice(0, 900) })
    const kept = JSON.parse(JSON.stringify(first.state))
    const other = watchZone({ ...SETTINGS })
    expect(other.restore(kept)).toEqual(first.state)
    const second = runReducer({ reducer: other, state: other.restore(kept), inputs: inputs.slice(900) })
    expect(second.outputs.at(-1)).toEqual(whole.outputs.at(-1))
    expect(JSON.stringify(whole.state).length).toBeLessThan(40000)
    for (const field of Object.keys(kept)) {
      const { [field]: _, ...rest } = kept
      expect(() => other.restore(rest)).toThrow(expect.objectContaining({ code: 'bad-input' }))
      // A part that is lost begins anew; the others go on.
      expect(runReducer({ reducer: other, state: rest, inputs: inputs.slice(900, 950) }).outputs).toHaveLength(50)
    }
    expect(() => other.restore({ ...kept, clock: { ...kept.clock, cadence: null } })).toThrow(/clock\.cadence/)
  })
  it('is the same for a record that is read through', () => {
    const inputs = scripted(script)
    const { outputs } = runReducer({ reducer: watchZone({ ...SETTINGS }), inputs })
    const record = {
      time: inputs.map(({ now }) => now),
      probes: THREE.map((name, i) => ({
        name,
        waterContent: inputs.map(({ readings }) => readings[i]?.waterContent ?? Number.NaN),
      })),
      shots: script.shots.map((at) => ({ start: 60 * at, end: 60 * at + 120 })),
    }
    const read = diagnoseRecord({ ...SETTINGS, record })
    expect(codesOf(read.diagnosis)).toEqual(codesOf(outputs.at(-1)))
    expect(read.told[0]?.time).toBe(60 * namedAt(outputs, 'no-water'))
    const bad = (change: object) => () => diagnoseRecord({ ...SETTINGS, record: { ...record, ...change } })
    expect(bad({ time: record.time.map((one) => 1e12 + 1000 * one) })).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    )
    expect(bad({ time: record.time.slice(1) })).toThrow(expect.objectContaining({ code: 'bad-input' }))
    expect(bad({ shots: [{ start: 10, end: 5 }] })).toThrow(expect.objectContaining({ code: 'bad-input' }))
  })
  it('is put into words with numbers, units and the check to do by hand', () => {
    const { outputs } = diagnosesOf(script)
    const [cause] = outputs[namedAt(outputs, 'no-water')]?.causes ?? []
    const { message, level } = explainControlFinding(cause as NonNullable<typeof cause>)
    expect(level).toBe('danger')
    expect(message).toMatch(/^Ordered shots bring no water \(missed shots 2, usually 0; /)
    expect(message).toMatch(/valve, filter, pump and supply/)
    expect(message).toMatch(/licensed electrician/)
    expect(() => explainControlFinding({ ...(cause as object), code: 'toString' } as never)).toThrow(
      expect.objectContaining({ code: 'bad-input' }),
    )
  })
  it('tells each alarm whether its condition is there, gone, or unknown, and looks ahead', () => {
    const { outputs } = diagnosesOf(script)
    const diagnosis = outputs[namedAt(outputs, 'no-water')]!
    const alarms = alarmConditions({ diagnosis })
    const named = (name: string) => alarms.find((alarm) => alarm.name === name)
    expect(named('no-water')).toMatchObject({ condition: true, priority: 'high' })
    expect(named('probe-frozen')).toMatchObject({ condition: false })
    expect(named('flow-meter-wrong')).not.toHaveProperty('condition')
    expect(named('refill-point-ahead')).not.toHaveProperty('condition')
    const until = (earliest: number) => ({
      known: true as const,
      from: waterContent(0.6),
      time: hours(5),
      band50: { earliest: hours(4) },
      band90: { earliest: hours(earliest) },
    })
    const ahead = (earliest: number) =>
      alarmConditions({ diagnosis, untilRefill: until(earliest), warnAhead: hours(2) }).at(-1)?.condition
    expect([ahead(1.9), ahead(2.1)]).toEqual([true, false])
    const shot = alarmConditions({ diagnosis, untilRefill: { known: false, reason: 'shot' } }).at(-1)
    expect(shot).not.toHaveProperty('condition')
    expect(() => alarmConditions({ diagnosis, minWeight: 2 })).toThrow(
      expect.objectContaining({ code: 'outside-domain' }),
    )
  })
  it('keeps no alarm back for a weight that is no number, and takes a forecast without numbers for none', () => {
    const cause = {
      code: 'no-water',
      level: 'danger',
      weight: Number.NaN,
      evidence: [],
      check: 'look-at-supply',
      since: 0,
    }
    const diagnosis = {
      causes: [cause],
      ruledOut: [],
      cannotTell: [],
      full: { known: false, reason: 'no-trusted-probe' },
    } as never as Diagnosis
    const until = {
      known: true,
      from: 0.6,
      time: Number.NaN,
      band50: { earliest: 1 },
      band90: { earliest: 1 },
    } as never
    const alarms = alarmConditions({ diagnosis, untilRefill: until })
    expect(alarms.find(({ name }) => name === 'no-water')?.condition).toBe(true)
    expect(alarms.at(-1)).toEqual({ name: 'refill-point-ahead', priority: 'medium' })
  })
  it('refuses settings that make no sense', () => {
    const bad = (change: object) => () => watchZone({ ...SETTINGS, ...change })
    for (const change of [
      { flow: 0 },
      { substrateVolume: Number.NaN },
      { fullPoint: 74 },
      { responseTime: 1 },
      { maxReadingAge: '20' },
    ])
      expect(bad(change)).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    for (const change of [{ probes: [] }, { probes: ['A', 'A'] }, { probes: 'A' }, { fullPoint: 0.95 }])
      expect(bad(change)).toThrow(expect.objectContaining({ code: 'bad-input' }))
    expect(() => watchZone(undefined as never)).toThrow(expect.objectContaining({ code: 'bad-input' }))
    const zone = watchZone(SETTINGS)
    expect(() => zone.step(zone.start, null as never)).toThrow(expect.objectContaining({ code: 'bad-input' }))
  })
})

const endless = (_: string, value: unknown) =>
  typeof value === 'number' && !Number.isFinite(value) ? 'endless' : value

describe('hostile input', () => {
  it('a clock that creeps by less than a millisecond, and numbers whose squares overflow, leave no state without a number', () => {
    const zone = watchZone(SETTINGS)
    const inputs = [0, 60, 60 + 7.2e-15, 120].map((now) => ({
      ...{ now, readings: [], open: false, metered: 5, drained: 1, light: 0, temperature: 1e300, feedEC: 1e308 },
    }))
    const tiny = [0, 5e-324].map((now) => ({ now, readings: [], open: false, metered: 5, drained: 1 }))
    for (const course of [inputs, tiny])
      expect(
        JSON.stringify(runReducer({ reducer: zone, inputs: course as never[] }).state, (_, value) =>
          typeof value === 'number' && !Number.isFinite(value) ? 'no number' : value,
        ),
      ).not.toContain('no number')
  })
  /** A small generator of its own, so that a failure can be seen again. */
  const dice = (seed: number) => {
    let state = seed >>> 0
    return () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return state / 4294967296
    }
  }
  const WORDS = [
    Number.NaN,
    null,
    undefined,
    Infinity,
    -Infinity,
    -999,
    65535,
    1e300,
    '0.5',
    true,
    {},
    [],
    0.6,
    0.61,
    0.62,
  ]
  it('a stored state with a count of zero, a time without end or a dead meter that was learnt shows no endless number', () => {
    const zone = watchZone({ ...SETTINGS, probes: ['A', 'B'] })
    const shots = hourly(60, 6)
    const inputs = scripted({ minutes: 760, probes: ['A', 'B'], shots, metered: () => 1 })
    const { state } = runReducer({ reducer: zone, inputs: inputs.slice(0, 700) })
    const [first, ...others] = state.probes
    const torn: unknown[] = [
      { ...state, clock: { ...state.clock, calls: 0 } },
      {
        ...state,
        probes: [
          { ...first, times: first!.times.map((time, i, all) => (i + 1 < all.length ? time : 1e300)) },
          ...others,
        ],
      },
      ...[0, -0, 1e-320].map((metered) => ({ ...state, usual: { ...state.usual, metered } })),
    ]
    for (const stored of torn) {
      let [now, diagnosis] = [stored as never, {} as Diagnosis]
      for (const input of inputs.slice(700)) {
        ;[now, diagnosis] = zone.step(now, input) as [never, Diagnosis]
        expect(JSON.stringify(now, endless) + JSON.stringify(diagnosis, endless)).not.toContain('endless')
      }
    }
    expect(() => zone.restore(torn[1])).toThrow(/times/)
    expect(() => watchZone({ ...SETTINGS, flow: 1e-320 as never })).toThrow(/flow/)
  })
  it('never throws, and never shows a number that is none', () => {
    const roll = dice(7)
    const pick = () => WORDS[Math.floor(roll() * WORDS.length)] as never
    const zone = watchZone(SETTINGS)
    let state: unknown = zone.start
    let now = 1.78e9
    for (let k = 0; k < 6000; k++) {
      now += [60, 60, 60, 60, 900, -86400, 0, 86400][Math.floor(roll() * 8)]!
      const sane = roll() < 0.7
      const input = {
        now: sane ? now : roll() < 0.3 ? 1000 * now : pick(),
        readings:
          roll() < 0.9
            ? THREE.map((probe) => ({
                probe,
                waterContent: sane ? 0.6 + 0.01 * roll() : pick(),
                time: sane ? now : pick(),
              }))
            : pick(),
        open: roll() < 0.2 ? true : pick(),
        closeAfter: roll() < 0.5 ? 120 : pick(),
        metered: pick(),
        drained: pick(),
        light: pick(),
        temperature: pick(),
        feedEC: pick(),
        drainEC: pick(),
      }
      const [next, diagnosis] = zone.step(state as never, input as never)
      const text = JSON.stringify(next)
      if (k % 500 === 0) expect(zone.restore(JSON.parse(text))).toEqual(next)
      for (const { evidence, weight } of diagnosis.causes) {
        expect(weight).toBeLessThan(1)
        for (const { value } of evidence) expect(Number.isFinite(value)).toBe(true)
      }
      state = roll() < 0.02 ? damaged(JSON.parse(text), roll, pick) : next
    }
  })
  function damaged(state: Record<string, unknown>, roll: () => number, pick: () => unknown): unknown {
    const fields = Object.keys(state)
    const field = fields[Math.floor(roll() * fields.length)]!
    const inside = state[field]
    if (typeof inside === 'object' && inside !== null && roll() < 0.7)
      return { ...state, [field]: damaged(inside as Record<string, unknown>, roll, pick) }
    return { ...state, [field]: pick() }
  }
})
