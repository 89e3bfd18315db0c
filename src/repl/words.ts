/** What a person sees first. */
export const WELCOME = [
  'porewater: every function is here. Text with a unit stands for a number, and a wrong unit is refused. Try:',
  '  waterContentTopp1980(20)',
  "  shotVolume({ substrateVolume: '11 L', rise: '3 points', drainFraction: '15 %' })",
  '  plot(waterContentTopp1980, 3, 40)      table(waterContentTopp1980, 5, 40)',
  "  plot([f, g], '1 cm', '1000 cm', { log: 'x', save: 'curves.svg' })",
  '  find how big is a shot      help shotVolume      sources Topp',
  '  lesson             ten minutes, from a probe reading to a sized shot',
  'The Tab key completes names, arguments and units. quit ends the session.',
].join('\n')
