import { describe, expect, it } from 'vitest'
import { expectedOf, fixtureFile, fixtureNames, understood } from '../../../support/import-fixtures'

describe('spreadsheets as they come', () => {
  it('[I50] there are thirty and more of them', () => {
    expect(fixtureNames().length).toBeGreaterThanOrEqual(30)
  })

  it.each(fixtureNames())('[I50] %s is understood as what stands beside it', async (name) => {
    expect(await understood(fixtureFile(name))).toEqual(expectedOf(name))
  })
})
