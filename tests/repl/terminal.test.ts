import { type ChildProcessWithoutNullStreams, execFileSync, spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { STEPS } from '../../src/repl/lesson-steps.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
/** The session in one file: to load a thousand for each of its starts takes longer than what is typed. Beside the libraries that it asks for. */
const bin = join(root, 'out/terminal', `${process.pid}.mjs`)
beforeAll(() =>
  build({
    entryPoints: [join(root, 'src/repl/bin.ts')],
    outfile: bin,
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
  }),
)
afterAll(() => rmSync(bin, { force: true }))
const home = mkdtempSync(join(tmpdir(), 'porewater-home-'))
afterAll(() => rmSync(home, { recursive: true, force: true }))

/** A program that gives another one a terminal of its own. */
const FOUND = [
  { program: 'script', args: (command: string) => ['-qfec', command, '/dev/null'], probe: ['--version'] },
  {
    program: 'python3',
    args: (command: string) => ['-c', `import pty, shlex; pty.spawn(shlex.split(${JSON.stringify(command)}))`],
    probe: ['-c', 'import pty'],
  },
].find(({ program, probe }) => {
  try {
    execFileSync(program, probe, { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
})

/** A session at a terminal: type a line, wait for the next prompt, see what came between. */
class Terminal {
  private readonly child: ChildProcessWithoutNullStreams
  private seen = ''
  readonly ended: Promise<number | null>
  constructor(env: Record<string, string>) {
    const { program, args } = FOUND as NonNullable<typeof FOUND>
    this.child = spawn(program, args(`${process.execPath} ${bin}`), {
      cwd: root,
      env: { PATH: process.env.PATH ?? '', TERM: 'xterm', HOME: home, LANG: 'C.UTF-8', ...env },
    })
    this.child.stdout.setEncoding('utf8').on('data', (text: string) => {
      this.seen += text
    })
    this.ended = new Promise((done) => this.child.on('close', done))
  }
  async prompt(): Promise<string> {
    for (let i = 0; i < 1200; i++) {
      const plain = this.screen()
      if (plain.endsWith('porewater> ')) {
        this.seen = ''
        return plain.slice(0, -'porewater> '.length)
      }
      await new Promise((done) => setTimeout(done, 50))
    }
    throw new Error(`no prompt after 60 s; seen: ${this.screen()}`)
  }
  async say(line: string): Promise<string> {
    this.send(`${line}\r`)
    return this.prompt()
  }
  send(keys: string): void {
    this.child.stdin.write(keys)
  }
  screen(): string {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: what a terminal is told to do is not text
    return this.seen.replace(/\x1b\[[0-9;?]*[A-Za-z]/g, '').replace(/\r/g, '')
  }
  async end(): Promise<void> {
    this.send('.exit\r')
    await this.ended
  }
}

const why = FOUND ? '' : ' (skipped: neither script of util-linux nor python3 is here to make a terminal)'

describe.skipIf(FOUND === undefined)(`a session at a real terminal${why}`, () => {
  it('leads a student through the whole lesson and helps with wrong units', async () => {
    const terminal = new Terminal({ POREWATER_HISTORY: '' })
    expect(await terminal.prompt()).toMatch(/every function is here/)
    expect(await terminal.say('lesson()')).toMatch(/Step 1 of 10/)
    for (const [i, { answer }] of STEPS.entries()) {
      if (/^const shot/.test(answer)) {
        const wrong = await terminal.say(answer.replace("'11 L'", "'11 m'"))
        expect(wrong).toMatch(/Not yet\. The unit does not fit:\s+substrateVolume must be a Volume/)
        expect(wrong).not.toMatch(/\bat .*:\d+:\d+/)
      }
      const said = await terminal.say(answer)
      expect(said, answer).toMatch(/^Right\. /m)
      if (i + 1 === STEPS.length) expect(said).toMatch(/That is the lesson/)
    }
    expect(await terminal.say('_')).toMatch(/\b5$/m)
    await terminal.end()
  }, 180_000)

  it('leads from nothing to a plotted retention curve, and takes no wrong unit on the way', async () => {
    const terminal = new Terminal({ POREWATER_HISTORY: '' })
    await terminal.prompt()
    expect(await terminal.say('find retention curve')).toMatch(/vanGenuchten1980/)
    expect(await terminal.say('vanGenuchten1980?')).toMatch(/alpha.*1\/cm/)
    const made = (alpha: string) =>
      `const peat = vanGenuchten1980({ saturated: '90 %', residual: '10 %', alpha: ${alpha}, n: 1.6 })`
    for (const wrong of ["'0.1 cm'", 'centimetres(0.1)', 'litres(1)'])
      expect(await terminal.say(made(wrong)), wrong).toMatch(/^Refused: alpha \(InverseSuction\)/m)
    expect(await terminal.say(made("'0.1 1/cm'"))).toMatch(/saturated +0\.9 m³\/m³/)
    expect(await terminal.say("peat.waterContent('10 s')")).toMatch(/^Refused: /m)
    expect(await terminal.say("plot(peat.waterContent, '1 L', '9 L')")).toMatch(/^Refused: /m)
    const plot = await terminal.say("plot(peat.waterContent, '1 cm', '1000 cm', { log: 'x' })")
    expect(plot).toMatch(/waterContent \(m³\/m³\) against x \(cm\), logarithmic x/)
    expect(plot).toMatch(/Falls: 0\.\d+ m³\/m³ at 1 cm/)
    terminal.send('quit\r')
    expect(await terminal.ended).toBe(0)
  }, 180_000)

  it('shows units, takes several lines, completes names and keeps its history', async () => {
    const file = join(home, 'history')
    const terminal = new Terminal({ POREWATER_HISTORY: file })
    await terminal.prompt()
    expect(await terminal.say('waterContentTopp1980(20)')).toMatch(/0\.3454 m³\/m³/)
    terminal.send('shotVolume({\r')
    terminal.send("substrateVolume: '11 L', rise: '3 points',\r")
    expect(await terminal.say("drainFraction: '15 %' })")).toMatch(/0\.388235 L/)
    terminal.send('waterContentTo')
    terminal.send('\t')
    await new Promise((done) => setTimeout(done, 300))
    expect(terminal.screen()).toMatch(/waterContentTopp1980$/)
    expect(await terminal.say("('20')")).toMatch(/0\.3454 m³\/m³/)
    await terminal.end()
    expect(readFileSync(file, 'utf8')).toMatch(/waterContentTopp1980\('20'\)/)
  }, 180_000)

  it('works in a home that cannot be written to', async () => {
    const terminal = new Terminal({ HOME: '/proc' })
    expect(await terminal.prompt()).toMatch(/history of this session is not kept/)
    expect(await terminal.say('litres(2)')).toMatch(/2 L/)
    await terminal.end()
    expect(existsSync('/proc/.porewater_history')).toBe(false)
  }, 180_000)
})
