import type { LatchedCode } from '../findings/latched-codes.js'

/** What is remembered from one decision to the next; plain data. Times count in seconds of trusted time since the start. */
export interface WateringState {
  readonly made: WateringOrigin
  readonly clock: WateringClock
  readonly valve: WateringValve
  readonly water: WateringVolumes
  /** The same again: whichever part of a damaged state is whole tells what was given. */
  readonly spare: WateringVolumes
  readonly tally: WateringTally
  readonly probes: readonly WateringProbe[]
  readonly zone: WateringZone
  readonly fill: WateringFill
  readonly counters: WateringCounters
  readonly override: WateringOrder | null
}

/** What a state was made with: one of another zone or of other settings is a lost state. */
export interface WateringOrigin {
  readonly zone: string
  /** A number that changes with any of the settings. */
  readonly settings: number
}

/** The time that can be trusted, and what the clock says. */
export interface WateringClock {
  /** What the clock said last. Unit: s. */
  readonly raw: number | null
  /** Trusted time since the start. Unit: s. */
  readonly elapsed: number
  /** Moment of the start, so that `base + elapsed` is the trusted moment. Unit: s. */
  readonly base: number | null
  /** Mean time between decisions while the clock ran. Unit: s. */
  readonly pace: number
  /** Decisions behind that mean, up to 32. */
  readonly paces: number
  /** Decisions in a row in which the clock ran on, up to 100. */
  readonly steady: number
  /** Decisions in a row with the same moment while the pace is not known yet, for which no time was counted, up to 100. */
  readonly stalls: number
  /** All decisions with the present moment but the first, and the most of them between two steps of this clock lately. */
  readonly same: number
  readonly usual: number
  /** Time counted for them that the clock has not made good yet. Unit: s. */
  readonly lent: number
  /** What steps back took from a clock that trembles, which its steps on bring again. Unit: s. */
  readonly owed: number
  /** A step that was too long, and how many in a row were like it: decisions that became rarer. Unit: s. */
  readonly longer: number
  readonly longs: number
  /** Longest step lately in which nothing can have been opened, in steps of the usual pace. */
  readonly uneven: number
  /** Long steps that were excused, and water that was held back after one, since an opening was kept, up to 7. */
  readonly unproven: number
  /** How bad the clock has been lately, 0 to 20. */
  readonly bad: number
  /** Time that was only counted by decisions since clock and count agreed last. Unit: s. */
  readonly doubt: number
  /** When clock and count agreed last. Unit: s. */
  readonly agreed: number
  /** Newest time that came with a reading, and when it came. Unit: s. */
  readonly sent: number | null
  readonly sentAt: number
  /** How often such times spoke for the count against the clock, up to 10. */
  readonly vouched: number
  /** Advance of the clock that was refused, because plants drank by the count and not by the clock. Unit: s. */
  readonly refused: number | null
  /** What plants drank while only the count says day, and while only the clock does. Unit: L. */
  readonly byCount: number
  readonly byClock: number
}

/** The valve as it was ordered. */
export interface WateringValve {
  /** When it was opened, if it is open. Unit: s. */
  readonly opened: number | null
  /** How long this opening lasts. Unit: s. */
  readonly duration: number
  /** Volume already counted for it. Unit: L. */
  readonly counted: number
  /** Why it was opened. */
  readonly reason: 'dry' | 'refill' | 'back-up-shot' | 'override-water'
  /** When it was closed last; the start, before the first opening. Unit: s. */
  readonly closed: number
  /** The same without the pause after decisions that are missing, which the return of a clock that leapt takes back. Unit: s. */
  readonly rested: number
  /** Number of the last opening, its moment where no number before was as large; zero before the first. */
  readonly openings: number
}

/** Water of the last 24 hours by quarters of an hour, as a ring. */
export interface WateringVolumes {
  /** Number of the present quarter since the start. */
  readonly slot: number
  /** Volumes; the present quarter stands at `slot` modulo their number. Unit: L. */
  readonly litres: readonly number[]
  /** Quarter from which on the room for water is reckoned, and the room when it began. Unit: L. */
  readonly paced: number
  readonly room: number
  /** Room that the last leap of the clock took, and that its return gives back. Unit: L. */
  readonly taken: number
}

/** Time and water by decisions alone: a second clock, where they come at an even pace. */
export interface WateringTally {
  /** Time by that count, never more than by the clock. Unit: s. */
  readonly at: number
  /** Mean time between decisions over a long time, and the decisions behind it, up to 4096. Unit: s. */
  readonly pace: number
  readonly decisions: number
  /** For how long they have come much faster. Unit: s. */
  readonly sooner: number
  /** How far the clock may still gain on the count. Unit: s. */
  readonly purse: number
  /** While decisions come less often by the clock: what plants drank between decisions without a shot, and what they usually do. Unit: L. */
  readonly drank: number
  readonly due: number
  /** Water of the last 24 hours of that time by hours, as a ring. Unit: L. */
  readonly litres: readonly number[]
}

/** What is remembered of a probe. */
export interface WateringProbe {
  /** Time that came with its newest reading. Unit: s. */
  readonly time: number | null
  /** That time as trusted time. Unit: s. */
  readonly measured: number
  /** Newest readings that were believable in themselves, newest first, at most three, and when they were measured. */
  readonly values: readonly number[]
  readonly times: readonly number[]
  /** When the reading changed last, and the longest stretch without a change before. Unit: s. */
  readonly changed: number
  readonly quiet: number
  /** Readings to come until it is believed again after an unbelievable one. */
  readonly probation: number
  /** A level of the last hours and when it was measured, from which the fall is told. */
  readonly anchor: number | null
  readonly anchorAt: number
  /** How fast the level fell last. Unit: 1/s. */
  readonly fall: number
  /** Level before the last opening, and when it was measured. */
  readonly before: number | null
  readonly beforeAt: number
  /** Highest level since it ended. */
  readonly peak: number | null
  /** Shots not seen beyond shots seen. */
  readonly misses: number
  /** Level from which it fell faster than plants can drink. */
  readonly fellFrom: number | null
  /** Whether it is not believed until somebody acknowledges it. */
  readonly latched: boolean
}

/** What is remembered of the zone. */
export interface WateringZone {
  /** Whether the dead-band asks for water. */
  readonly dry: boolean
  /** Highest level since it was at the lower limit last, and water given less usual use since it was that high. Unit: m³/m³, L. */
  readonly best: number
  readonly spell: number
  /** When a believed reading was above the lower limit last. Unit: s. */
  readonly lastWet: number
  /** Balance of a window: expected use, water given, and level at its start. */
  readonly use: number
  readonly given: number
  readonly level: number | null
  /** Level of the decision before, where the valve was closed and the last shot had shown; null otherwise. */
  readonly told: number | null
  /** How long it has been at the lower limit or below while shots came as soon as they can. Unit: s. */
  readonly behind: number
  /** Whether probes were in dispute at the decision before. */
  readonly disputed: boolean
  /** What the last full window told. */
  readonly verdict: 'plausible' | 'use-too-small' | 'use-too-large'
}

/** What is known of a full zone, and of a refill to drain. */
export interface WateringFill {
  /** When the zone drained as a full one does, last. Unit: s. */
  readonly full: number | null
  /** When a refill ended last. Unit: s. */
  readonly tried: number
  /** Water of a refill that is under way, and the most of it beyond `due`. Unit: L. */
  readonly under: number | null
  readonly max: number
  /** Refills in a row in which nothing drained, up to 9. */
  readonly fails: number
  /** Whether the limits of a day ended the last one. */
  readonly cut: boolean
  /** Since the zone was full: water given less drain, and the usual use of that time. Unit: L. */
  readonly net: number
  readonly due: number
  /** What should have drained and has not, for the share that settings ask for; at most the use of half a day either way. Unit: L. */
  readonly owed: number
  /** Share of a shot that runs past the medium while the zone is not full. Unit: 1. */
  readonly passing: number
  /** The same of the last few shots. Unit: 1. */
  readonly lately: number
  /** What ran off beyond that since the zone was full. Unit: L. */
  readonly excess: number
  /** What the containers of the probes could not hold since, while others took it: so much less does the zone dry more than they show. Unit: L. */
  readonly overflow: number
  /** What each probe said before the last opening. Unit: m³/m³. */
  readonly before: readonly (number | null)[]
  /** What each probe said when the zone was full first, and what it says beyond it since. Unit: m³/m³. */
  readonly atFull: readonly (number | null)[]
  readonly bias: readonly number[]
  /** What they said together when it was full last, less those errors; null where none spoke. Unit: m³/m³. */
  readonly levelAtFull: number | null
  /** By how much that rises. Unit: 1/s. */
  readonly drift: readonly number[]
  /** By how much the containers of the probes differed from the zone when it was full last. Unit: m³/m³. */
  readonly apart: readonly number[]
  /** Water given less use of which probes foretold, when a refill began, that the zone would be full by; null without one. Unit: L. */
  readonly foretold: number | null
  /** By how much the zone dries more than its probes show, as a share of its use. Unit: 1. */
  readonly slip: number
  /** What plants took of the usual use between two times that the zone was full, at most all. Unit: 1. */
  readonly usual: number
}

/** Counters of meter and drain as they were. */
export interface WateringCounters {
  readonly metered: number | null
  readonly drained: number | null
  /** Metered and drained since the last opening began. Unit: L. */
  readonly meteredSince: number
  readonly drainedSince: number
  /** Flow that nobody ordered, since the last opening ended. Unit: L. */
  readonly leaked: number
  /** What the last opening should have given by its time, and what the probe that rose most showed of it, if any did. Unit: L. */
  readonly ordered: number
  readonly shown: number | null
  readonly delivery: WateringDelivery
  readonly pulses: WateringPulses
  /** Shots in a row that mostly drained while the zone was called dry. */
  readonly drains: number
  /** Findings that stand until somebody acknowledges them. */
  readonly latched: readonly LatchedCode[]
}

/** The steps in which the meter counts. Where they are larger than a shot, openings are judged together. */
export interface WateringPulses {
  /** Largest step that all it showed is made of, zero where there is none; null before it has gone on. Unit: L. */
  readonly step: number | null
  /** Water ordered that no step has shown yet, up to one. Unit: L. */
  readonly unmetered: number
  /** What was ordered since it went on last. Unit: L. */
  readonly silent: number
  /** What was ordered and metered since openings were judged together last. Unit: L. */
  readonly ordered: number
  readonly metered: number
}

/** What arrives of what is ordered, by two witnesses that know nothing of each other: the meter, and probes with drain. */
export interface WateringDelivery {
  /** Mean share that the meter saw, and the openings behind it, up to 8. Unit: 1. */
  readonly metered: number
  readonly shots: number
  /** Mean share that probes and drain showed, and the openings behind it, up to 8. Unit: 1. */
  readonly shown: number
  readonly seen: number
  /** Mean share of whole shots that probes alone showed, from none on: where nothing counts drain, it tells a dead meter from a dry line. Unit: 1. */
  readonly rose: number
  /** Mean of what probes and drain showed beyond what the meter saw of the same openings. Unit: 1. */
  readonly beyond: number
  /** What probes and drain show of a whole shot, learned while the meter sees all of it. Unit: 1. */
  readonly usual: number
  /** Openings in a row in which both said about the same, up to 8. */
  readonly agreed: number
  /** Whether the meter sees less than the probes show, until it sees all of it again. */
  readonly partial: boolean
}

/** A person's order, counted in trusted time. */
export interface WateringOrder {
  readonly action: 'close' | 'water'
  /** As it was sent. Unit: s. */
  readonly until: number
  /** When it ends in trusted time. Unit: s. */
  readonly ends: number
}
