/**
 * Ten thousand zones over NATS JetStream: readings in a stream with three replicas, rows in a replicated key-value bucket, decisions
 * on a subject of their own, and workers that hold nothing. The servers are started here, on loopback.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import {
  AckPolicy,
  DeliverPolicy,
  type JetStreamClient,
  type JetStreamManager,
  jetstream,
  jetstreamManager,
  StorageType,
} from '@nats-io/jetstream'
import { Kvm } from '@nats-io/kv'
import type { NatsConnection } from '@nats-io/transport-node'
import { type Cluster, connectTo, NODES, pause, persistently, startCluster } from './cluster.js'
import { upTo } from './up-to.js'
import type { ZoneReading } from './zone-step.js'

const WORKER = fileURLToPath(new URL('worker.ts', import.meta.url))
/** Requests on their way at a time. */
const PIPELINE = 500
const NANOSECONDS = 1e9

export interface StreamRun {
  readonly readings: readonly ZoneReading[]
  readonly workers: number
  /** Ends one server and half of the workers on the way, and starts them again. */
  readonly disturbed: boolean
  /** Readings sent a second; as fast as they go, and before any worker starts, where it is not given. */
  readonly pace?: number
}

export interface StreamOutcome {
  /** The row of each zone, as JSON. */
  readonly rows: Map<string, string>
  /** Every message in the stream of decisions, by zone and ordinal. Two of one name would be listed in `doubles`. */
  readonly decisions: Map<string, string>
  readonly doubles: number
  /** Time from the start of the workers to the last decision. Unit: s. */
  readonly seconds: number
  /** Time from a reading's entry into its stream to its decision's, sorted. Unit: s. */
  readonly delays: Float64Array
}

/** Sends the readings through the engine and collects what came out. */
export async function runStream(run: StreamRun): Promise<StreamOutcome> {
  const cluster = await startCluster()
  const workers: ChildProcess[] = []
  const startWorker = (): void => {
    workers.push(spawn(process.execPath, ['--import', 'tsx', WORKER, ...cluster.servers], { stdio: 'inherit' }))
  }
  const connection = await connectTo(cluster.servers)
  try {
    const manager = await persistently(() => jetstreamManager(connection))
    await prepare(manager, connection)
    const stream = jetstream(connection, { timeout: 5000 })
    if (run.pace === undefined) await send(stream, run)
    const start = performance.now()
    for (let i = 0; i < run.workers; i++) startWorker()
    const sent = run.pace === undefined ? Promise.resolve() : send(stream, run)
    if (run.disturbed) await disturb(cluster, workers, startWorker, () => decided(manager), run.readings.length)
    await sent
    await untilDecided(manager, run.readings.length)
    const seconds = (performance.now() - start) / 1000
    await untilAlike(manager)
    return { ...(await collect(stream, manager, new Set(run.readings.map(({ zone }) => zone)))), seconds }
  } finally {
    for (const worker of workers) worker.kill('SIGKILL')
    await connection.close()
    await cluster.stop()
  }
}

async function prepare(manager: JetStreamManager, connection: NatsConnection): Promise<void> {
  const replicated = { num_replicas: NODES, storage: StorageType.File, duplicate_window: 600 * NANOSECONDS }
  await persistently(() => manager.streams.add({ name: 'READINGS', subjects: ['readings.*'], ...replicated }))
  await persistently(() => manager.streams.add({ name: 'DECISIONS', subjects: ['decisions.*'], ...replicated }))
  await persistently(() => new Kvm(jetstream(connection)).create('ROWS', { replicas: NODES, history: 1 }))
  await persistently(() =>
    manager.consumers.add('READINGS', {
      durable_name: 'workers',
      ack_policy: AckPolicy.Explicit,
      deliver_policy: DeliverPolicy.All,
      ack_wait: 10 * NANOSECONDS,
      max_ack_pending: 20 * PIPELINE,
    }),
  )
}

/** Sends each reading until it is stored; one that was stored although no answer came is known by its name. */
async function send(stream: JetStreamClient, { readings, pace }: StreamRun): Promise<void> {
  const start = performance.now()
  for (let i = 0; i < readings.length; i += PIPELINE) {
    if (pace !== undefined) await pause(Math.max(0, (1000 * i) / pace - (performance.now() - start)))
    await Promise.all(
      readings.slice(i, i + PIPELINE).map((reading) =>
        persistently(() =>
          stream.publish(`readings.${reading.zone}`, JSON.stringify(reading), {
            msgID: `${reading.zone}/${reading.ordinal}`,
          }),
        ),
      ),
    )
  }
}

/** After a third of the decisions a server and half of the workers die; after half of them they are started again. */
async function disturb(
  cluster: Cluster,
  workers: ChildProcess[],
  startWorker: () => void,
  count: () => Promise<number>,
  all: number,
): Promise<void> {
  const half = workers.splice(0, Math.floor(workers.length / 2))
  while ((await count()) < all / 3) await pause(50)
  for (const worker of half) worker.kill('SIGKILL')
  await cluster.kill(1)
  while ((await count()) < all / 2) await pause(50)
  cluster.start(1)
  for (const _ of half) startWorker()
}

const decided = (manager: JetStreamManager): Promise<number> =>
  persistently(async () => (await manager.streams.info('DECISIONS')).state.messages)

/** Until every reading is decided on and acknowledged, so that the rows are written too. */
async function untilDecided(manager: JetStreamManager, all: number): Promise<void> {
  for (;;) {
    const consumer = await persistently(() => manager.consumers.info('READINGS', 'workers'))
    if ((await decided(manager)) >= all && consumer.num_pending === 0 && consumer.num_ack_pending === 0) return
    await pause(50)
  }
}

/** Until the server that was away has caught up: a reader may be sent to any of them. */
async function untilAlike(manager: JetStreamManager): Promise<void> {
  for (const name of ['READINGS', 'DECISIONS', 'KV_ROWS'])
    for (;;) {
      const { cluster } = await persistently(() => manager.streams.info(name))
      const others = cluster?.replicas ?? []
      if (others.length === NODES - 1 && others.every(({ current, lag }) => current && !lag)) break
      await pause(100)
    }
}

async function collect(
  stream: JetStreamClient,
  manager: JetStreamManager,
  zones: ReadonlySet<string>,
): Promise<Omit<StreamOutcome, 'seconds'>> {
  const sent = new Map<string, number>()
  await each(stream, manager, 'READINGS', (text, at) => {
    const { zone, ordinal } = JSON.parse(text)
    sent.set(`${zone}/${ordinal}`, at)
  })
  const decisions = new Map<string, string>()
  const delays: number[] = []
  let doubles = 0
  await each(stream, manager, 'DECISIONS', (text, at) => {
    const { zone, ordinal } = JSON.parse(text)
    const name = `${zone}/${ordinal}`
    if (decisions.has(name)) doubles++
    decisions.set(name, text)
    delays.push((at - (sent.get(name) ?? Number.NaN)) / NANOSECONDS)
  })
  const rows = new Map<string, string>()
  // From the leader of the bucket; the others may be a moment behind.
  for (const zone of zones) {
    const message = await persistently(() =>
      manager.streams.getMessage('KV_ROWS', { last_by_subj: `$KV.ROWS.${zone}` }),
    )
    if (message !== null) rows.set(zone, message.json<{ row: string }>().row)
  }
  return { rows, decisions, doubles, delays: Float64Array.from(delays).sort() }
}

/** Reads a stream from its first to its last message, through whichever servers the readers are made on. */
async function each(
  stream: JetStreamClient,
  manager: JetStreamManager,
  name: string,
  take: (text: string, nanoseconds: number) => void,
): Promise<void> {
  const { state } = await persistently(() => manager.streams.info(name))
  if (state.messages === 0) return
  const readerFrom = async (seq: number) => {
    const from = { deliver_policy: DeliverPolicy.StartSequence, opt_start_seq: seq }
    const consumer = await persistently(() => stream.consumers.get(name, from))
    return consumer.fetch({ max_messages: state.last_seq - seq + 1, expires: 2000 })
  }
  for await (const message of upTo(state.last_seq, state.first_seq, readerFrom))
    take(message.string(), message.info.timestampNanos)
}
