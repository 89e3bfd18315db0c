/** What a person sees first. */
export const WELCOME = [
  'porewater: every function is here, and text with a unit stands for a number. Try:',
  '  waterContentTopp1980(20)',
  "  shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: '15 %' })",
  '  plot(waterContentTopp1980, 3, 40)      table(waterContentTopp1980, 5, 40)',
  "  find('drain')      help(shotVolume)      sources('Topp')",
  '  lesson()           ten minutes, from a probe reading to a sized shot',
  '.exit ends the session.',
].join('\n')
