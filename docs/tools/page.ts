import { readFileSync } from 'node:fs'
import { build } from 'esbuild'

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
  return readFileSync(parts.template, 'utf8').replace(/\/\*([A-Z]+)\*\//g, (_, name: string) => inside[name] as string)
}
