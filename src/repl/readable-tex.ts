/** Words of TeX that have a character of their own. */
const SYMBOLS: Readonly<Record<string, string>> = {
  alpha: 'α',
  beta: 'β',
  gamma: 'γ',
  delta: 'δ',
  epsilon: 'ε',
  varepsilon: 'ε',
  zeta: 'ζ',
  eta: 'η',
  theta: 'θ',
  kappa: 'κ',
  lambda: 'λ',
  mu: 'µ',
  nu: 'ν',
  pi: 'π',
  rho: 'ρ',
  sigma: 'σ',
  tau: 'τ',
  phi: 'φ',
  varphi: 'φ',
  chi: 'χ',
  psi: 'ψ',
  omega: 'ω',
  Gamma: 'Γ',
  Delta: 'Δ',
  Theta: 'Θ',
  Lambda: 'Λ',
  Sigma: 'Σ',
  Phi: 'Φ',
  Psi: 'Ψ',
  Omega: 'Ω',
  times: '×',
  cdot: '·',
  circ: '°',
  infty: '∞',
  int: '∫',
  sum: 'Σ',
  prod: 'Π',
  partial: '∂',
  pm: '±',
  le: '≤',
  leq: '≤',
  ge: '≥',
  geq: '≥',
  ne: '≠',
  approx: '≈',
  to: '→',
  in: '∈',
  ldots: '...',
  dots: '...',
  qquad: '   ',
  quad: '  ',
  lbrace: '{',
  rbrace: '}',
  lceil: '⌈',
  rceil: '⌉',
  lfloor: '⌊',
  rfloor: '⌋',
}
const SUPERSCRIPTS: Readonly<Record<string, string>> = {
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
  '-': '⁻',
  '+': '⁺',
  n: 'ⁿ',
}

/** An equation in TeX as one line of text that can be read in a terminal. */
export function readableTex(tex: string): string {
  let text = tex
    .replace(/\n/g, ' ')
    .replace(/\\(?:left|right|bigl?|bigr?|Bigl?|Bigr?|displaystyle|limits)(?![a-zA-Z])/g, '')
  text = text.replace(/\\(?:text|mathrm|mathit|operatorname)\s*\{([^{}]*)\}/g, '$1').replace(/\\[tdc]frac/g, '\\frac')
  // From the inside out, so that a fraction in a fraction is closed first.
  for (let i = 0; i < 30; i++) {
    const before = text
    text = text
      .replace(/\\sqrt\s*\[([^\]]*)\]\s*\{([^{}]*)\}/g, '($2)^(1/$1)')
      .replace(/\\sqrt\s*\{([^{}]*)\}/g, '√($1)')
      .replace(/\\(?:bar|overline|hat|tilde|vec)\s*\{([^{}]*)\}/g, 'mean $1')
      .replace(/\\(?:bar|hat)\s*([a-zA-Z])/g, 'mean $1')
      .replace(/\^\s*\{([^{}]*)\}/g, (_, inside: string) => raised(inside))
      .replace(/_\s*\{([^{}]*)\}/g, (_, inside: string) => `_${inside.replace(/\s+/g, '')}`)
      .replace(/\\frac\s*\{([^{}]*)\}\s*\{([^{}]*)\}/g, (_, a: string, b: string) => `${grouped(a)} / ${grouped(b)}`)
      .replace(/\\frac\s*(\d)\s*(\d)/g, '$1/$2')
    if (text === before) break
  }
  text = text
    .replace(/\^(\w)/g, (_, inside: string) => raised(inside))
    .replace(/\\([a-zA-Z]+)/g, (_, word: string) => SYMBOLS[word] ?? word)
  return text
    .replace(/\\[,;:! ]/g, ' ')
    .replace(/\\\\/g, '; ')
    .replace(/[{}]/g, '')
    .replace(/\\/g, '')
    .replace(/\^°/g, '°')
    .replace(/\s+/g, ' ')
    .trim()
}

function raised(inside: string): string {
  const text = inside.trim()
  return [...text].every((c) => c in SUPERSCRIPTS) ? [...text].map((c) => SUPERSCRIPTS[c]).join('') : `^(${text})`
}

function grouped(inside: string): string {
  const text = inside.trim()
  return /[\s+\-·×/]/.test(text.replace(/^-/, '')) ? `(${text})` : text
}
