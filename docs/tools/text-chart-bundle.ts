/** What the second file for engines without modules holds: text and charts, which take quantities that the first file makes. */
export * from '../../src/chart/index.js'
export * from '../../src/text/index.js'
