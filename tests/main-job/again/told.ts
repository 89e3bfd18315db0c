/**
 * What a report tells, and what can be told wrongly: every number, with its sign, and the words that give a number its direction or say that
 * there is none.
 */
const TOLD =
  /(?<=[\s(])-?\d+(?:\.\d+)?|\d+(?:\.\d+)?|[−+](?=\d)|\b(?:above|below|fell|rose|came out of|went into|reached|not known|left out|cool|warm|morning rewet|at the refill point|last shot of the day|jump|silence)\b/g

/** Title and text of each part of a printed report, its folded lines put together again. */
export function partsOf(report: string): Map<string, string> {
  const parts = report.split(/\n\n(?=.+\n-+\n)/)
  return new Map(
    parts.map((part) => {
      const [title = '', , ...lines] = part.trimEnd().split('\n')
      return [title, lines.map((line) => line.trim()).join(' ')]
    }),
  )
}

export const toldIn = (text: string): string[] => text.match(TOLD) ?? []
