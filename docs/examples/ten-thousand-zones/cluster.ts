/** Three servers of NATS on the loopback of this machine, each with a folder of its own: what in earnest are three machines. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { jetstreamManager } from '@nats-io/jetstream'
import { connect, type NatsConnection } from '@nats-io/transport-node'

export const NODES = 3

export interface Cluster {
  readonly servers: string[]
  /** Ends a server at once, as a power cut does. */
  kill(node: number): Promise<void>
  start(node: number): void
  stop(): Promise<void>
}

export const hasNatsServer = (): boolean => spawnSync('nats-server', ['--version']).status === 0

/** Starts the servers and waits until they have found each other. */
export async function startCluster(): Promise<Cluster> {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-nats-'))
  const ports = await freePorts(2 * NODES)
  const clients = ports.slice(0, NODES)
  const routes = ports.slice(NODES)
  const running: (ChildProcess | undefined)[] = []
  for (let node = 0; node < NODES; node++)
    writeFileSync(
      join(folder, `${node}.conf`),
      `server_name: n${node}
listen: 127.0.0.1:${clients[node]}
jetstream { store_dir: "${join(folder, `store-${node}`)}" }
cluster { name: zones, listen: 127.0.0.1:${routes[node]}, routes: [${routes.map((port) => `nats://127.0.0.1:${port}`).join(', ')}] }
`,
    )
  const start = (node: number): void => {
    running[node] = spawn('nats-server', ['-c', join(folder, `${node}.conf`)], { stdio: 'ignore' })
  }
  const kill = async (node: number): Promise<void> => {
    const server = running[node]
    if (server === undefined || server.exitCode !== null || server.signalCode !== null) return
    const ended = new Promise((done) => server.once('exit', done))
    server.kill('SIGKILL')
    await ended
  }
  const stop = async (): Promise<void> => {
    await Promise.all(running.map((_, node) => kill(node)))
    rmSync(folder, { recursive: true, force: true })
  }
  for (let node = 0; node < NODES; node++) start(node)
  const servers = clients.map((port) => `127.0.0.1:${port}`)
  try {
    await untilReady(servers)
  } catch (error) {
    await stop()
    throw error
  }
  return { servers, kill, start, stop }
}

/** A connection that outlives any one server. */
export const connectTo = (servers: readonly string[]): Promise<NatsConnection> =>
  connect({ servers: [...servers], maxReconnectAttempts: -1, reconnectTimeWait: 100, waitOnFirstConnect: true })

/** Tries until it succeeds: while the servers choose a leader, requests are refused or lost. */
export async function persistently<T>(ask: () => Promise<T>, tries = 300): Promise<T> {
  for (let left = tries; ; left--) {
    try {
      return await ask()
    } catch (error) {
      if (left <= 1) throw error
      await pause(100)
    }
  }
}

export const pause = (milliseconds: number): Promise<void> => new Promise((done) => setTimeout(done, milliseconds))

async function untilReady(servers: readonly string[]): Promise<void> {
  const connection = await connectTo(servers)
  try {
    const manager = await persistently(() => jetstreamManager(connection))
    await persistently(async () => {
      await manager.streams.add({ name: 'READY', subjects: ['ready'], num_replicas: NODES })
      await manager.streams.delete('READY')
    })
  } finally {
    await connection.close()
  }
}

/** Ports that nobody uses at present: the system gives them. */
async function freePorts(count: number): Promise<number[]> {
  const held = Array.from({ length: count }, () => createServer())
  const ports = await Promise.all(
    held.map(
      (server) =>
        new Promise<number>((done, failed) => {
          server.once('error', failed)
          server.listen(0, '127.0.0.1', () => done((server.address() as { port: number }).port))
        }),
    ),
  )
  await Promise.all(held.map((server) => new Promise((done) => server.close(done))))
  return ports
}
