/** A plan, a rehearsal and ten thousand decisions on an invented zone: text that every engine runs. */
export const JOBS = {
  plan: `(() => {
    const p = porewater
    return JSON.stringify(p.planDay({
      start: p.instant(1779148800), step: p.minutes(10), demand: new Array(144).fill(0.02),
      container: {
        substrateVolume: p.litres(14), containerCapacity: p.waterContent(0.62), minWaterContent: p.waterContent(0.15),
        bypass: p.fraction(0.1), drainLag: p.minutes(10),
      },
      waterContent: p.waterContent(0.6), refillPoint: p.waterContent(0.59), fullPoint: p.waterContent(0.62),
      drainFraction: p.percent(20), firstShot: p.instant(1779148800 + 7 * 3600), lastShot: p.instant(1779148800 + 17 * 3600),
      emitters: 2, emitterFlow: p.litresPerHour(2), lineFill: p.seconds(8), minRunTime: p.minutes(2), maxRunTime: p.minutes(15),
      minRest: p.minutes(15), maxPerDay: p.litres(8), trigger: { by: 'level' },
    }).shots)
  })()`,
  rehearsal: `(() => {
    const scenario = porewater.rehearsalScenario('coir-dust')
    const controller = {
      reducer: { start: 0, step: (given, now) => [given + 1, now % 7200 < 60] },
      input: (observed) => observed.now,
      order: (open) => ({ open, closeAfter: 150 }),
    }
    const outcome = porewater.rehearse({ zone: scenario.zone, limits: scenario.limits, controller, days: 2, seed: 7 })
    return JSON.stringify(outcome.openings.map(({ start, end }) => [start, end]))
  })()`,
  decisions: `(() => {
    const p = porewater
    const reducer = p.controlWatering({
      lower: p.waterContent(0.5), upper: p.waterContent(0.6), minBelievable: p.waterContent(0.2), maxBelievable: p.waterContent(0.8),
      substrateVolume: p.litres(10), flow: p.litresPerHour(4), shot: p.millilitres(200), maxRunTime: p.minutes(5),
      maxPerDay: p.litres(4), usualPerDay: p.litres(2), minRest: p.minutes(10), probeLag: p.minutes(15),
      maxReadingAge: p.minutes(20), maxUnchanged: p.hours(4), maxShotsWithoutRise: 4,
      allowedHours: [{ from: p.hours(7), to: p.hours(18) }], valveClosesByItself: true, inDoubt: 'timed-shots',
    })
    let state = reducer.start
    const reasons = {}
    for (let i = 0; i < 10000; i++) {
      const now = 1779148800 + 60 * i
      const level = 0.505 + 0.03 * (((i * 7919) % 101) / 101) - (i % 360) / 9000
      const [next, decision] = reducer.step(state, { now, readings: [{ waterContent: level, time: now }], locked: false })
      state = next
      reasons[decision.reason] = (reasons[decision.reason] || 0) + 1
    }
    return JSON.stringify([reasons, state])
  })()`,
}
