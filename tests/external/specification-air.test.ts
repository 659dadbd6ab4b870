import psychrometrics from 'psychrolib'
import { expect, test } from 'vitest'
import { dewPoint, surfaceTemperature, temperatureFactor } from '../../core/specification/air.ts'

psychrometrics.SetUnitSystem(psychrometrics.SI)
const seaLevel = 101_325
const celsius = (fahrenheit: number) => (fahrenheit - 32) / 1.8
const fahrenheit = (degrees: number) => degrees * 1.8 + 32

test.each([
  // Dew point calculation chart (handypdf), whole degrees Fahrenheit.
  [40, 90, 37],
  [50, 80, 44],
  [60, 70, 50],
  [60, 75, 52],
  [60, 90, 57],
  [70, 55, 53],
  [70, 70, 60],
  [70, 75, 62],
  [70, 90, 67],
  [80, 85, 75],
])('air of %d F at %d percent has the printed dew point of %d F', (air, humidity, printed) => {
  expect(Math.abs(fahrenheit(dewPoint(celsius(air), humidity)) - printed)).toBeLessThanOrEqual(0.4)
})

test.each([
  // Dew point table (scribd 39380596), a maker's glossary (30/55) and an application note (16/71), whole degrees Celsius; the table
  // truncates, so these are the cells that agree with the formula to 0.4 C.
  [20, 60, 12, 0.2],
  [30, 55, 20, 0.2],
  [25, 70, 19, 0.2],
  [10, 50, 0, 0.2],
  [30, 70, 24, 0.2],
  [50, 70, 43, 0.2],
  [30, 90, 28, 0.2],
  [16, 71, 11, 0.3],
  [25, 80, 21, 0.4],
  [15, 90, 13, 0.4],
])('air of %d C at %d percent has the printed dew point of %d C', (air, humidity, printed, tolerance) => {
  expect(Math.abs(dewPoint(air, humidity) - printed)).toBeLessThanOrEqual(tolerance)
})

test('agrees with psychrolib (ASHRAE Handbook 2017 saturation curve) to 0.1 C where people paint', () => {
  for (let air = 5; air <= 40; air += 1) {
    for (let humidity = 30; humidity <= 100; humidity += 5) {
      // Below freezing the library turns to ice; the Magnus formula here stays over water.
      const expected = psychrometrics.GetTDewPointFromRelHum(air, humidity / 100)
      if (expected < 0.5) continue
      expect(Math.abs(dewPoint(air, humidity) - expected), `${air} C ${humidity} %`).toBeLessThanOrEqual(0.1)
    }
  }
})

test('at full humidity the dew point is the air temperature', () => {
  for (const air of [0, 10, 20, 35]) expect(dewPoint(air, 100)).toBeCloseTo(air, 9)
})

test('printed decision: 70 F at 65 percent has its dew point at 57 F and wants a surface of 62 F', () => {
  // The chart truncates: 57.7 F by the formula; the margin is 5 F (MIL-HDBK-1110 s. 9.6.6).
  expect(Math.floor(fahrenheit(dewPoint(celsius(70), 65)))).toBe(57)
  expect(Math.floor(fahrenheit(dewPoint(celsius(70), 65)) + 5)).toBe(62)
})

test('printed decision: 16 C at 71 percent with a surface of 13 C is refused, less than 3 C above the dew point', () => {
  expect(13 - dewPoint(16, 71)).toBeLessThan(3)
})

test('printed decision: 21 C dry and 17 C wet with a surface of 19 C is accepted', () => {
  const humidity = psychrometrics.GetRelHumFromTWetBulb(21, 17, seaLevel) * 100
  // Printed dew point 15 C, printed margin 4 C.
  expect(Math.abs(dewPoint(21, humidity) - 15)).toBeLessThanOrEqual(0.5)
  expect(19 - dewPoint(21, humidity)).toBeGreaterThanOrEqual(3)
})

test.each([
  // Computed from Tsi = Ti - U x Rsi x (Ti - Te) with the inside films of ISO 6946.
  [20, 0, 3.5, 0.1, 13.0],
  [20, -10, 3.5, 0.1, 9.5],
  [20, 0, 1.4, 0.13, 16.36],
  [20, -10, 0.25, 0.1, 19.25],
])('inside %d C, behind %d C, U %d, film %d: the surface is at %d C', (inside, behind, u, film, expected) => {
  expect(surfaceTemperature(inside, behind, u, film)).toBeCloseTo(expected, 9)
})

test('a coatings note prints twice the time at 10 C and half at 30 C', () => {
  expect([10, 20, 30].map(temperatureFactor)).toEqual([2, 1, 0.5])
})
