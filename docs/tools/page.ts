import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { build } from 'esbuild'
import { STYLE } from '../../src/chart/theme.js'

/** A page with its styles, its data, the package's one-file build and its own script in it, so that it works from a file without a network. */
export async function onePage(parts: {
  readonly template: string
  readonly styles: readonly string[]
  readonly script: string
  readonly packageBuild: string
  readonly data?: unknown
}): Promise<string> {
  const bundled = await build({
    entryPoints: [parts.script],
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2020',
    write: false,
  })
  const asScript = (text: string) => text.replace(/<\/(script)/gi, '<\\/$1').replace(/<!--/g, '<\\!--')
  const inside: Readonly<Record<string, string>> = {
    STYLE: parts.styles.map((path) => readFileSync(path, 'utf8')).join('\n'),
    DATA: JSON.stringify(parts.data ?? null).replace(/</g, '\\u003c'),
    PACKAGE: asScript(parts.packageBuild),
    PAGE: asScript(bundled.outputFiles[0]?.text ?? ''),
  }
  const page = readFileSync(parts.template, 'utf8').replace(/\/\*([A-Z]+)\*\//g, (_, name: string) => inside[name]!)
  return withPolicy(page)
}

/** A page with a policy that lets only its own scripts and styles run, by their hashes, and nothing be fetched. */
function withPolicy(page: string): string {
  const hash = (text: string) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`
  const hashes = (tag: string) =>
    [...page.matchAll(new RegExp(`<${tag}>([\\s\\S]*?)</${tag}>`, 'g'))].map(([, text = '']) => hash(text))
  const policy = [
    "default-src 'none'",
    `script-src ${hashes('script').join(' ')}`,
    // The pictures that the page draws bring a style of their own, always the same.
    `style-src ${[...hashes('style'), hash(STYLE)].join(' ')}`,
    'img-src data:',
    "form-action 'self'",
    "base-uri 'none'",
  ]
  const meta = `<meta http-equiv="Content-Security-Policy" content="${policy.join('; ')}">`
  return page.replace('<meta charset="utf-8">', (first) => `${first}\n${meta}`)
}
