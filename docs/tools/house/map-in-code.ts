import { folderOf, importsOf, sourceFiles } from './source-files.js'

/** The folders that each folder's files really import from. */
export function mapInCode(): Record<string, string[]> {
  const found: Record<string, Set<string>> = {}
  for (const { path, code } of sourceFiles()) {
    if (path === 'src/index.ts') continue
    const from = folderOf(path)
    found[from] ??= new Set()
    for (const { from: target } of importsOf(path, code))
      if (target.startsWith('src/') && folderOf(target) !== from) found[from].add(folderOf(target).replace('.ts', ''))
  }
  return Object.fromEntries(Object.entries(found).map(([folder, targets]) => [folder, [...targets].sort()]))
}
