/**
 * A worker that holds nothing: `node --import tsx worker.ts <server> <server> ...`. It takes readings that wait, reads the rows of
 * their zones, steps them, tells the decisions and writes the rows back. It may be ended at any moment.
 *
 * Why nothing is lost or counted twice: a decision goes out before its row is written, under a name that the stream keeps only
 * once; a row is written only if nobody has written it since it was read; a reading is acknowledged after both, and comes again
 * otherwise. A reading whose ordinal is not the next one of its zone waits, or was counted already.
 */
import { type JetStreamClient, type JsMsg, jetstream } from '@nats-io/jetstream'
import { type KV, Kvm } from '@nats-io/kv'
import { connectTo, pause, persistently } from './cluster.js'
import { step, type ZoneReading } from './zone-step.js'

const BATCH = 500
/** How long a reading waits that came before the one ahead of it. */
const WAIT_MS = 250

interface ZoneRow {
  /** Ordinal of the last reading that was counted. */
  readonly last: number
  /** Its place in the stream of readings. */
  readonly sequence: number
  readonly row: string
}

async function work(servers: readonly string[]): Promise<never> {
  const connection = await connectTo(servers)
  const stream = jetstream(connection, { timeout: 5000 })
  const rows = await persistently(() => new Kvm(stream).open('ROWS'))
  for (;;) {
    try {
      const consumer = await stream.consumers.get('READINGS', 'workers')
      const messages = await consumer.fetch({ max_messages: BATCH, expires: 1000 })
      const byZone = new Map<string, JsMsg[]>()
      for await (const message of messages) {
        const own = byZone.get(message.subject)
        if (own === undefined) byZone.set(message.subject, [message])
        else own.push(message)
      }
      await Promise.all([...byZone.values()].map((own) => stepOrGiveBack(stream, rows, own)))
    } catch {
      // A server went away or chooses a leader: what was not acknowledged comes again.
      await pause(200)
    }
  }
}

async function stepOrGiveBack(stream: JetStreamClient, rows: KV, messages: readonly JsMsg[]): Promise<void> {
  try {
    await stepZone(stream, rows, messages)
  } catch {
    for (const message of messages) message.nak(WAIT_MS)
  }
}

/** Steps one zone through its readings of a batch, in their order. */
async function stepZone(stream: JetStreamClient, rows: KV, messages: readonly JsMsg[]): Promise<void> {
  const readings = messages.map((message) => ({ message, reading: message.json<ZoneReading>() }))
  readings.sort((a, b) => a.reading.ordinal - b.reading.ordinal)
  const [first] = readings
  if (first === undefined) return
  const { zone } = first.reading
  const entry = await rows.get(zone)
  let known: ZoneRow = entry === null ? { last: 0, sequence: 0, row: '' } : entry.json<ZoneRow>()
  const counted: JsMsg[] = []
  const told: Promise<unknown>[] = []
  for (const { message, reading } of readings) {
    if (reading.ordinal <= known.last) counted.push(message)
    else if (reading.ordinal > known.last + 1) message.nak(WAIT_MS)
    else {
      const { row, decision } = step(known.row === '' ? undefined : known.row, reading)
      told.push(stream.publish(`decisions.${zone}`, JSON.stringify(decision), { msgID: `${zone}/${reading.ordinal}` }))
      known = { last: reading.ordinal, sequence: message.seq, row }
      counted.push(message)
    }
  }
  await Promise.all(told)
  // The store refuses where the row has changed since it was read: then nothing is acknowledged, and the readings come again.
  if (entry === null) await rows.create(zone, JSON.stringify(known))
  else if (known.sequence !== entry.json<ZoneRow>().sequence)
    await rows.update(zone, JSON.stringify(known), entry.revision)
  for (const message of counted) message.ack()
}

await work(process.argv.slice(2))
