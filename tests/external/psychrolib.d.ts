/** The few functions of the library that the tests call; it ships no types. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: unknown
    SetUnitSystem(system: unknown): void
    /** C and 0-1 in, C out. */
    GetTDewPointFromRelHum(dryBulb: number, relativeHumidity: number): number
    /** C, C and Pa in, 0-1 out. */
    GetRelHumFromTWetBulb(dryBulb: number, wetBulb: number, pressure: number): number
  }
  const psychrometrics: Psychrometrics
  export default psychrometrics
}
