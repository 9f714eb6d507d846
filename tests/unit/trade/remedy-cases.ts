/** A line of a reference case: name, fraction, low, high, grams in, locked, grams in stock (null: no limit). */
export type CaseLine = readonly [string, number, number, number, number, boolean, number | null]

/** Reference cases reckoned by an independent linear-program solver; masses in grams. */
export const remedyCases: readonly {
  readonly name: string
  readonly totalG: number
  readonly capacityG: number
  readonly lines: readonly CaseLine[]
  /** The common scale; null where there is none. */
  readonly scale: number | null
  readonly qs: { readonly feasible: boolean; readonly finalG: number; readonly outOfRange: readonly number[] }
}[] = [
  {
    name: 'body lotion O/W',
    totalG: 1000.0,
    capacityG: 1200.0,
    scale: null,
    qs: { feasible: true, finalG: 731.02, outOfRange: [6] },
    lines: [
      ['water', 0.7465, 0.709175, 0.783825, 417.87, false, 840.15],
      ['propanediol', 0.03, 0.0255, 0.0345, 30.05, false, null],
      ['carbomer', 0.002, 0.0018, 0.0022, 2.0, false, null],
      ['caprylic/capric triglyceride', 0.08, 0.072, 0.088, 80.09, true, null],
      ['cetearyl alcohol', 0.025, 0.023, 0.027, 24.97, false, null],
      ['glyceryl stearate citrate', 0.03, 0.0276, 0.0324, 29.99, false, null],
      ['sunflower oil', 0.05, 0.044, 0.056, 65.27, true, 0.02],
      ['shea butter', 0.02, 0.017, 0.023, 20.05, false, null],
      ['phenoxyethanol+caprylyl glycol', 0.01, 0.0095, 0.0105, 10.02, false, 0.02],
      ['tocopherol', 0.002, 0.0015, 0.0025, 2.0, false, 0.02],
      ['sodium hydroxide 20%', 0.0015, 0.000975, 0.002025, 1.5, false, null],
      ['fragrance', 0.003, 0.0027, 0.0033, 3.0, true, 0.02],
    ],
  },
  {
    name: 'shower gel sarcosinate',
    totalG: 1000.0,
    capacityG: 1200.0,
    scale: 1.070818181818182,
    qs: { feasible: false, finalG: 498.24, outOfRange: [1] },
    lines: [
      ['water', 0.514, 0.49344, 0.53456, 512.96, false, null],
      ['sodium lauroyl sarcosinate 30%', 0.22, 0.2112, 0.2288, 235.58, false, 0.02],
      ['disodium cocoamphodiacetate 40%', 0.14, 0.133, 0.147, 0.0, false, null],
      ['coco-glucoside 50%', 0.08, 0.0752, 0.0848, 0.0, false, null],
      ['PEG-150 distearate', 0.012, 0.0102, 0.0138, 12.02, false, null],
      ['citric acid 50%', 0.008, 0.0048, 0.0112, 0.0, false, null],
      ['sodium benzoate', 0.005, 0.0048, 0.0052, 0.0, false, null],
      ['sodium chloride', 0.01, 0.007, 0.013, 0.0, false, null],
      ['panthenol', 0.005, 0.0044, 0.0056, 5.0, false, null],
      ['fragrance', 0.006, 0.0054, 0.0066, 6.16, false, null],
    ],
  },
  {
    name: 'body lotion O/W',
    totalG: 500.0,
    capacityG: 600.0,
    scale: null,
    qs: { feasible: true, finalG: 373.88, outOfRange: [] },
    lines: [
      ['water', 0.7465, 0.709175, 0.783825, 373.86, false, null],
      ['propanediol', 0.03, 0.0255, 0.0345, 15.01, true, null],
      ['carbomer', 0.002, 0.0018, 0.0022, 0.0, false, null],
      ['caprylic/capric triglyceride', 0.08, 0.072, 0.088, 39.89, false, 0.16],
      ['cetearyl alcohol', 0.025, 0.023, 0.027, 12.52, false, null],
      ['glyceryl stearate citrate', 0.03, 0.0276, 0.0324, 14.34, true, 1.28],
      ['sunflower oil', 0.05, 0.044, 0.056, 24.96, false, null],
      ['shea butter', 0.02, 0.017, 0.023, 10.0, false, null],
      ['phenoxyethanol+caprylyl glycol', 0.01, 0.0095, 0.0105, 0.0, false, null],
      ['tocopherol', 0.002, 0.0015, 0.0025, 1.0, false, null],
      ['sodium hydroxide 20%', 0.0015, 0.000975, 0.002025, 0.73, false, null],
      ['fragrance', 0.003, 0.0027, 0.0033, 1.5, true, null],
    ],
  },
  {
    name: 'hair rinse conditioner',
    totalG: 250.0,
    capacityG: 500.0,
    scale: 1.448,
    qs: { feasible: true, finalG: 215.44, outOfRange: [7] },
    lines: [
      ['water', 0.864, 0.83808, 0.88992, 142.66, false, null],
      ['behentrimonium chloride 80%', 0.02, 0.019, 0.021, 0.0, false, null],
      ['cetyl alcohol', 0.045, 0.0414, 0.0486, 0.0, false, null],
      ['stearyl alcohol', 0.02, 0.0184, 0.0216, 0.0, false, null],
      ['panthenol 75%', 0.01, 0.009, 0.011, 0.0, false, null],
      ['amodimethicone emulsion', 0.025, 0.022, 0.028, 0.0, false, null],
      ['lactic acid 80%', 0.003, 0.0021, 0.0039, 0.0, false, null],
      ['sodium benzoate', 0.005, 0.0048, 0.0052, 1.81, true, null],
      ['potassium sorbate', 0.003, 0.00288, 0.00312, 0.0, false, 1.68],
      ['fragrance', 0.005, 0.0045, 0.0055, 0.0, false, null],
    ],
  },
  {
    name: 'carbomer hair gel',
    totalG: 250.0,
    capacityG: 500.0,
    scale: null,
    qs: { feasible: false, finalG: 220.15, outOfRange: [1] },
    lines: [
      ['water', 0.881, 0.86338, 0.89862, 220.57, false, 0.02],
      ['carbomer', 0.007, 0.00665, 0.00735, 1.85, false, null],
      ['PVP/VA copolymer 50%', 0.06, 0.0564, 0.0636, 0.0, false, null],
      ['propanediol', 0.03, 0.0255, 0.0345, 0.0, false, 10.48],
      ['triethanolamine 99%', 0.008, 0.0064, 0.0096, 0.0, false, null],
      ['PEG-40 hydrogenated castor oil', 0.004, 0.0034, 0.0046, 0.0, false, 2.09],
      ['phenoxyethanol', 0.008, 0.00752, 0.00848, 0.0, false, null],
      ['fragrance', 0.002, 0.0017, 0.0023, 0.0, false, null],
    ],
  },
  {
    name: 'shower gel sarcosinate',
    totalG: 2000.0,
    capacityG: 2100.0,
    scale: null,
    qs: { feasible: false, finalG: 919.78, outOfRange: [0, 1] },
    lines: [
      ['water', 0.514, 0.49344, 0.53456, 1028.99, false, null],
      ['sodium lauroyl sarcosinate 30%', 0.22, 0.2112, 0.2288, 550.38, true, null],
      ['disodium cocoamphodiacetate 40%', 0.14, 0.133, 0.147, 279.2, true, null],
      ['coco-glucoside 50%', 0.08, 0.0752, 0.0848, 0.0, false, null],
      ['PEG-150 distearate', 0.012, 0.0102, 0.0138, 0.0, false, null],
      ['citric acid 50%', 0.008, 0.0048, 0.0112, 0.0, false, 41.17],
      ['sodium benzoate', 0.005, 0.0048, 0.0052, 0.0, false, null],
      ['sodium chloride', 0.01, 0.007, 0.013, 0.0, false, 18.67],
      ['panthenol', 0.005, 0.0044, 0.0056, 0.0, false, null],
      ['fragrance', 0.006, 0.0054, 0.0066, 11.97, true, 0.05],
    ],
  },
]
