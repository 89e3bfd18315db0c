/** A line that is a command in plain words, as the code that does it. */
export interface WordCommand {
  readonly code?: string
  readonly ends?: boolean
}

/** Commands as people type them without brackets: `help`, `help shotVolume`, `shotVolume?`, `find how big is a shot`, `quit`. */
export function commandIn(typed: string): WordCommand | undefined {
  const line = typed.trim()
  if (/^(?:quit|exit|\.exit)(?:\(\))?;?$/.test(line)) return { ends: true }
  const asked = /^(?:help\s+|\?\s*)([\w$.]+)\s*\??$/.exec(line) ?? /^([\w$.]+)\s*\?$/.exec(line)
  if (asked) return { code: aboutName(asked[1]!) }
  const source = /^sources\s+(\w+)$/.exec(line)?.[1]
  if (source !== undefined) return { code: `sources(${itselfOrText(source)})` }
  const words = /^(find|sources)\s+([^=(\s].*)$/.exec(line)
  if (words) return { code: `${words[1]}(${JSON.stringify(words[2]!.replace(/^(['"])(.*)\1$/, '$2'))})` }
  const step = /^lesson\s+(hint|skip|stop)$/.exec(line)
  if (step) return { code: `lesson('${step[1]}')` }
  return /^(?:help|\?|lesson|find|sources)$/.test(line) ? { code: `${line === '?' ? 'help' : line}()` } : undefined
}

/** A name that the session may not have is asked for as text, so that near names can be told. */
function itselfOrText(name: string): string {
  return /^[A-Za-z_$]/.test(name)
    ? `typeof ${name} === 'function' ? ${name} : ${JSON.stringify(name)}`
    : JSON.stringify(name)
}

function aboutName(name: string): string {
  return name.includes('.') ? `help(${name})` : `help(${itselfOrText(name)})`
}
