export { permittivityTopp1980, validityTopp1980, waterContentTopp1980 } from './topp-1980.js'
