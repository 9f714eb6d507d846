import { describe, expect, test } from 'vitest'
import { basisWords, commonStep, valueWords } from '../../../../src/batch/entry-phrases.ts'
import { wordsOf } from '../../../../src/batch/entry-words.ts'
import type { Measured } from '../../../../src/batch/how-read.ts'
import { entryOf as entry, plainSay as say } from '../../../support/words.ts'

const viscosity: Measured = { property: 'viscosity', label: 'Viscosity', value: 11_300, unit: 'mPa·s' }

describe('[E41] what an entry says of', () => {
  test.each([
    [entry('noted', { text: 'The bath was slow.' }), 'Note: The bath was slow.'],
    [
      entry('noted', { text: 'A larger scoop lay there.', deviation: 'd' }),
      'Looked into a deviation: A larger scoop lay there.',
    ],
    [entry('pictured', { picture: 'p', caption: '' }), 'Picture.'],
    [entry('signed', { person: 'jt', meaning: 'checked', how: 'pin' }), 'Signed by JT: checked, with a PIN.'],
    [entry('signed', { person: 'jt', meaning: 'checked', how: 'name' }), 'Signed by JT: checked, by name.'],
    [
      entry('signed', { person: 'mo', meaning: 'checked', how: 'pin', insteadOf: 'jt', reason: 'PIN forgotten' }),
      'Signed by MO: checked, with a PIN, in the place of JT (PIN forgotten).',
    ],
    [entry('closed', { decision: 'accept' }), 'Closed: accept.'],
    [
      entry('reworked', {
        part: 1,
        reason: 'too thin',
        steps: [{ id: 's', kind: 'clean', vessel: 'main', phase: '+1' }],
      }),
      'Opened again for rework 1, 1 step: too thin.',
    ],
    [
      entry('reworked', {
        part: 2,
        reason: 'too thin',
        returned: { vessel: 'main', massUg: 470_000_000 },
        steps: [
          { id: 's', kind: 'clean', vessel: 'main', phase: '+2' },
          { id: 't', kind: 'rest', hours: 24, vessel: 'main', phase: '+2' },
        ],
      }),
      'Opened again for rework 2, 2 steps, 470 g back into main: too thin.',
    ],
  ])('people and the end: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  test('the signature of a tablet, by the first sixteen signs of its key in fours', () => {
    const signed = { key: '0123456789abcdef0123', head: 'h', publicKey: 'k', signature: 's', entry: 'e' }
    const words = wordsOf({ ...entry('resumed', {}), kind: 'device-signed', body: signed }, say)
    expect(words).toBe('Signed by the tablet, with its key 0123 4567 89ab cdef.')
  })

  test.each([
    [entry('surroundings-told', { of: 'room', temperatureC: 21.5 }), 'The room read 21.5 °C.'],
    [entry('surroundings-told', { of: 'bath', vessel: 'oil', temperatureC: 80 }), 'The bath of oil read 80 °C.'],
    [entry('surroundings-told', { of: 'plate', vessel: 'oil' }), 'oil stands on a plate without a probe.'],
    [
      entry('surroundings-told', { of: 'plate', vessel: 'oil', setC: 85 }),
      'oil stands on a plate with a probe, set to 85 °C.',
    ],
  ])('what heats or cools: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })

  const balance = {
    kind: 'balance',
    id: 'b',
    name: 'Balance 1',
    referenceUg: 100_000_000,
    readUg: 100_010_000,
  } as const
  test.each([
    [entry('instrument-checked', { instrument: balance, good: true }), 'Checked Balance 1: 100 g read 100.01 g.'],
    [
      entry('instrument-checked', { instrument: { ...balance, readUg: 100_400_000 }, good: false }),
      'Checked Balance 1: 100 g read 100.4 g: not good.',
    ],
    [
      entry('instrument-checked', {
        instrument: { kind: 'pH meter', name: 'pH meter', slopePercent: 97.5, buffers: [4, 7] },
        good: true,
      }),
      'Checked pH meter: buffers 4 and 7, slope 97.5 %.',
    ],
    [entry('instrument-checked', { instrument: { kind: 'alarm', heard: true }, good: true }), 'Tried the bell: heard.'],
    [
      entry('instrument-checked', { instrument: { kind: 'alarm', heard: false }, good: false }),
      'Tried the bell: not heard: not good.',
    ],
  ])('an instrument: %#', (event, words) => {
    expect(wordsOf(event, say)).toBe(words)
  })
})

describe('[K3] a result in words', () => {
  test.each<[Measured, string]>([
    [{ property: 'pH', label: 'pH', value: 5.12 }, 'pH: 5.12.'],
    [
      {
        property: 'pH',
        label: 'pH',
        value: 5.12,
        basis: { kind: 'dilution', fraction: 0.5 },
        sampleC: 25,
        conditions: '40 °C jar',
      },
      'pH: 5.12, 50 % dilution, 25 °C, 40 °C jar.',
    ],
    [
      { property: 'pH', label: 'pH', value: 5.12, basis: { kind: 'neat' }, sampleUg: 5_000_000 },
      'pH: 5.12, neat, sample of 5 g.',
    ],
    [{ property: 'appearance', label: 'Appearance', text: 'white, even' }, 'Appearance: white, even.'],
    [viscosity, 'Viscosity: 11300 mPa·s.'],
    [{ ...viscosity, readings: [11_300, 11_500] }, 'Viscosity: 11300 mPa·s, 2 readings: 11300; 11500; range 200.'],
    [
      { ...viscosity, readings: [11_200, 11_300, 11_400], how: { spindle: '4', rpm: 12, torquePercent: 55 } },
      'Viscosity: 11300 mPa·s, 3 readings: 11200; 11300; 11400; s 100, spindle 4, 12 rpm, torque 55 %.',
    ],
    [
      { ...viscosity, how: { torquePercent: 7, later: { minutes: 5, value: 11_000 } } },
      'Viscosity: 11300 mPa·s, torque 7 %, outside 10–100 %, after 5 min 11000 mPa·s.',
    ],
    [{ ...viscosity, how: { torquePercent: 10 } }, 'Viscosity: 11300 mPa·s, torque 10 %.'],
    [{ ...viscosity, how: { torquePercent: 100 } }, 'Viscosity: 11300 mPa·s, torque 100 %.'],
    [{ ...viscosity, how: { torquePercent: 101 } }, 'Viscosity: 11300 mPa·s, torque 101 %, outside 10–100 %.'],
    [
      { property: 'density', label: 'Density', value: 0.98, unit: 'g/mL', how: { massUg: 49_000_000, volumeMl: 50 } },
      'Density: 0.98 g/mL, 49 g in 50 mL.',
    ],
    [
      { property: 'density', label: 'Density', value: 0.98, unit: 'g/mL', how: { massUg: 49_000_000 } },
      'Density: 0.98 g/mL.',
    ],
    [
      {
        property: 'other',
        label: 'Centrifuge',
        text: 'whole',
        how: { spin: { by: 'rpm', figure: 3000, minutes: 30, separated: false } },
      },
      'Centrifuge: whole, 3000 rpm for 30 min.',
    ],
    [
      {
        property: 'other',
        label: 'Centrifuge',
        text: 'whole',
        how: { spin: { by: 'g', figure: 1000, minutes: 30, separated: false } },
      },
      'Centrifuge: whole, 1000 × g for 30 min.',
    ],
    [
      {
        property: 'feel',
        label: 'Slip',
        value: 7,
        how: { scale: { least: 1, most: 9, low: 'drags', high: 'glides' } },
      },
      'Slip: 7, 1 drags, 9 glides.',
    ],
    [
      { property: 'odour', label: 'Odour', text: 'faint', how: { difference: 'none' } },
      'Odour: faint, as the standard.',
    ],
    [
      { property: 'odour', label: 'Odour', text: 'faint', how: { difference: 'slight' } },
      'Odour: faint, slightly different from the standard.',
    ],
    [
      { property: 'odour', label: 'Odour', text: 'faint', how: { difference: 'clear' } },
      'Odour: faint, clearly different from the standard.',
    ],
    [
      { property: 'foam', label: 'Foam', value: 120, how: { later: { minutes: 5, value: 90 } } },
      'Foam: 120, after 5 min 90.',
    ],
  ])('tells figure, unit and how it was read: %#', (body, words) => {
    expect(wordsOf(entry('measured', body), say)).toBe(words)
  })

  test('has a basis and a unit only where they were told', () => {
    expect(basisWords(undefined, say)).toBe('')
    expect(valueWords(4.5, undefined, say)).toBe('4.5')
    expect(valueWords(4.5, 'mm', say)).toBe('4.5 mm')
  })

  test('has masses at the coarsest step that rounds none of them, 0.01 g at most', () => {
    expect(commonStep(100_000_000, 100_400_000)).toBe(10_000)
    expect(commonStep(100_000_000, 100_401_000)).toBe(1000)
    expect(commonStep(100_000_100, 100_401_000)).toBe(100)
    expect(commonStep(10)).toBe(10)
    expect(commonStep(20_000, 3)).toBe(1)
  })
})
