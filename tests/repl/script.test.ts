import { describe, expect, it } from 'vitest'
import { runScript } from '../../src/repl/script.js'

describe('lines through a pipe', () => {
  it('show what a terminal would, and end at .exit', () => {
    expect(runScript('litres(2)\n.exit\nlitres(3)\n')).toEqual({ shown: '2 L\n', refused: false })
  })
  it('say that one was refused', () => {
    expect(runScript('litres(-1)\n')).toMatchObject({ refused: true, shown: expect.stringContaining('volume is -1 L') })
  })
})
