import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { catalogue } from 'porewater/catalogue'
import { expect, it } from 'vitest'
import { topics } from '../../docs/tools/topics.js'
import * as quantity from '../../src/quantity/index.js'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

// By names alone, on purpose: the tool that writes the entries reads the examples in another way.
it.each(topics())('porewater/%s exports every constructor and reader that its examples use', async (topic) => {
  const exported = new Set(Object.keys(await import(`${dist}${topic}/index.js`)))
  const typings = readFileSync(`${dist}${topic}/index.d.ts`, 'utf8')
  const missing = catalogue
    .filter((entry) => entry.topic === topic)
    .flatMap(({ name, example }) =>
      Object.keys(quantity)
        .filter((unit) => new RegExp(`(?<![.\\w'])${unit}(<\\w+>)?\\(`).test(example.replace(/\/\/.*$/gm, '')))
        .filter((unit) => !exported.has(unit) || !new RegExp(`\\b${unit}\\b`).test(typings))
        .map((unit) => `${name}: ${unit}`),
    )
  expect(missing).toEqual([])
})
