import { expect } from 'vitest'
import { rectangularRoom } from '../../fixtures/job-builder.ts'
import { notices, specifyOne, squareFoot } from '../one-surface.ts'

/** Worked cases by the rule's id. */
export const airAndSafetyCases: Readonly<Record<string, () => void>> = {
  'dew-point': () => {
    const air = {
      temperatureC: 20,
      relativeHumidityPercent: 60,
      outdoorTemperatureC: 0,
      surfaceTemperatureC: null,
    }
    const rooms = [rectangularRoom('r', 12, 10, { above: 'unheated' })]
    const cold = specifyOne({ surfaceClass: 'ceiling', job: { rooms, header: { air } } })
    // 13.0 C estimated, dew point 12.0 C.
    expect(notices(cold, 'dewPoint')).toMatchObject([{ hold: true, surfaceKeys: ['ceiling:r'] }])
    const measured = { ...air, surfaceTemperatureC: 15.5 }
    expect(
      notices(specifyOne({ surfaceClass: 'ceiling', job: { rooms, header: { air: measured } } }), 'dewPoint'),
    ).toEqual([])
  },
  'humid-air': () => {
    const at = (relativeHumidityPercent: number) =>
      notices(
        specifyOne({
          surfaceClass: 'walls',
          job: {
            header: {
              air: {
                temperatureC: 20,
                relativeHumidityPercent,
                outdoorTemperatureC: 15,
                surfaceTemperatureC: null,
              },
            },
          },
        }),
        'dewPoint',
      ).length
    expect([at(85), at(86)]).toEqual([0, 1])
  },
  'drying-air': () => {
    const wait = (temperatureC: number, relativeHumidityPercent: number) =>
      specifyOne({
        surfaceClass: 'walls',
        colourId: 'sage',
        job: {
          header: {
            air: {
              temperatureC,
              relativeHumidityPercent,
              outdoorTemperatureC: 15,
              surfaceTemperatureC: null,
            },
          },
        },
      }).order.find((edge) => edge.before === 'r/walls/coat/1')?.minimumWait
    // 4 h at 20 C; x 2 at 10 C; x 1.5 in damp air.
    expect([wait(20, 50), wait(10, 50), wait(20, 75)]).toEqual([240, 480, 360])
  },
  'lead-safe': () => {
    const disturbed = (area: number, header = { yearBuilt: 1930 as number | null }) =>
      notices(
        specifyOne({
          surfaceClass: 'walls',
          conditions: [['loosePaint', { areaMm2: area * squareFoot }]],
          job: { header },
        }),
        'leadSafe',
      )
    expect(disturbed(6)[0]?.sentence).toContain('exempts it as minor repair')
    expect(disturbed(6.01)[0]?.sentence).toContain('the federal renovation rule applies')
    expect(disturbed(6.01, { yearBuilt: null })[0]?.sentence).toContain('age of the house is not known')
    expect(disturbed(20, { yearBuilt: 1978 })).toEqual([])
    // 4 sq ft now and 3 within the 30 days before.
    const sum = specifyOne({
      surfaceClass: 'walls',
      conditions: [['loosePaint', { areaMm2: 4 * squareFoot }]],
      rules: [['lead-safe', true, { earlierSquareFeet: 3 }]],
      job: { header: { yearBuilt: 1930 } },
    })
    expect(notices(sum, 'leadSafe')[0]?.sentence).toContain('about 7.0 sq ft of painted surface, more than 6')
  },
  'asbestos-suspicion': () => {
    const at = (yearBuilt: number, kinds: readonly ['loosePaint'][] = []) =>
      notices(
        specifyOne({
          surfaceClass: 'ceiling',
          existing: { textured: true },
          conditions: kinds,
          job: { header: { yearBuilt } },
        }),
        'asbestosSuspicion',
      )
    expect(at(1975)).toMatchObject([{ hold: false }])
    expect(at(1975, [['loosePaint']])).toMatchObject([{ hold: true }])
    expect(at(1985)).toEqual([])
  },
}
