import { describe, expect, test } from 'vitest'
import { jarAddress } from '../../../../src/app/jar-address'
import { recordOf } from '../../../../src/batch/record'
import { qrPath } from '../../../../src/parts/qr-path'
import { codeMmOn, quietModules } from '../../../../src/places/records/jar-label-page'
import { jarSheets } from '../../../../src/places/records/jar-sheets'
import { verificationText } from '../../../../src/places/records/paper-foot'
import { printed, scanned } from '../../../support/scan'
import { wholeBatch } from '../../../support/whole-batch'

/** As a cheap printer draws, dots a millimetre. */
const dotsPerMm = 300 / 25.4

const batch = '01a17ca8-77a1-7c3e-9d10-5b3f0c2e9a41'
/** An id of a condition has twenty signs at the most, a jar stands for ten years at the most. */
const longest = `https://bench.quillwort-studio.example/pannikin/${jarAddress(batch, `${'freezethaw1025cdark'}2.3650`)}`
const shortest = `http://127.0.0.1:4173/${jarAddress(batch, '4c.0')}`

describe('the code of a jar', () => {
  test.each(jarSheets.flatMap((sheet) => [shortest, longest].map((address) => [sheet.name, sheet, address] as const)))(
    '[K46] is read by a scanner off a label of %s',
    (_name, sheet, address) => {
      const code = qrPath(address, quietModules)
      expect(scanned(printed(code, Math.round(codeMmOn(sheet) * dotsPerMm)))).toBe(address)
    },
  )
})

describe('the code of a record', () => {
  test.each([150, 300, 600])('[E69] is read by a scanner, %i pixels wide', (pixels) => {
    const record = recordOf(wholeBatch().state)
    const long = {
      ...record,
      header: { ...record.header, code: 'QW-LOT-01-041 pilot, second kettle, split for the warm room' },
    }
    for (const each of [record, long]) {
      const text = verificationText(each)
      expect(text).toContain(record.verification.head)
      expect(scanned(printed(qrPath(text), pixels))).toBe(text)
    }
  })
})
