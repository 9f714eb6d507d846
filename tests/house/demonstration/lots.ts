import type { Lot } from '../../../src/batch/catalogue.ts'
import { g, kg } from './mass.ts'

const ferrow = 'Ferrow Ingredients'
const tolmin = 'Tolmin Botanicals'
const aske = 'Aske & Daughters'

const lot = (
  code: string,
  materialId: string,
  supplier: string,
  receivedUg: number,
  receivedOn: string,
  expires: string,
  more: Partial<Pick<Lot, 'assay' | 'status' | 'adjustments'>> = {},
): Lot => ({
  id: `lot-${code.toLowerCase()}`,
  materialId,
  code,
  supplier,
  receivedUg,
  receivedOn,
  expires,
  status: 'released',
  ...more,
})

/**
 * What stands on the shelf on 24 November 2026. Three are there to be called out: TO-031 has expired, SB-061 waits for
 * its certificate, SL-309 came in weak. SG-214 is nearly used up by the batches of the autumn.
 */
export const lots: readonly Lot[] = [
  lot('W-0831', 'aqua', 'still in the studio', kg(25), '2026-08-31', '2026-11-30'),
  lot('W-1116', 'aqua', 'still in the studio', kg(25), '2026-11-16', '2027-02-14'),
  lot('PD-092', 'propanediol', ferrow, kg(1), '2026-02-11', '2028-02-10'),
  lot('PD-104', 'propanediol', ferrow, kg(5), '2026-09-22', '2028-09-21'),
  lot('SG-214', 'sclerotium-gum', tolmin, g(25), '2026-03-05', '2027-09-04'),
  lot('SG-221', 'sclerotium-gum', tolmin, g(250), '2026-10-14', '2028-04-13'),
  lot('HC-017', 'hydroxyethylcellulose', ferrow, g(500), '2026-05-19', '2028-05-18'),
  lot('CB-033', 'carbomer', ferrow, g(250), '2026-06-30', '2028-06-29'),
  lot('PV-058', 'pvp', ferrow, g(500), '2026-04-08', '2028-04-07'),
  lot('GU-126', 'guar-hptc', ferrow, g(250), '2026-07-15', '2028-01-14'),
  lot('OA-077', 'colloidal-oat', tolmin, g(500), '2026-06-09', '2027-06-08'),
  lot('PN-141', 'panthenol-75', aske, g(500), '2026-05-27', '2027-05-26', { assay: 0.75 }),
  lot('OP-019', 'oat-protein', tolmin, g(500), '2026-08-04', '2027-08-03'),
  lot('CT-310', 'caprylic-capric-triglyceride', ferrow, kg(5), '2026-04-21', '2028-04-20'),
  lot('SQ-115', 'squalane', tolmin, kg(1), '2026-01-20', '2028-01-19'),
  lot('SB-056', 'shea-butter', tolmin, g(500), '2026-03-31', '2027-09-30'),
  lot('SB-061', 'shea-butter', tolmin, kg(1), '2026-11-17', '2028-05-16', { status: 'quarantine' }),
  lot('GP-204', 'glyceryl-stearate-peg-100', ferrow, kg(2), '2026-02-25', '2028-08-24'),
  lot('CA-188', 'cetearyl-alcohol', ferrow, kg(2), '2026-05-05', '2029-05-04'),
  lot('CY-072', 'cetyl-alcohol', ferrow, kg(1), '2026-05-05', '2029-05-04'),
  lot('BM-045', 'behentrimonium-methosulfate-25', ferrow, kg(1), '2026-07-07', '2028-07-06'),
  lot('TO-031', 'tocopherol', aske, g(100), '2025-04-29', '2026-10-31'),
  lot('TO-038', 'tocopherol', aske, g(100), '2026-09-15', '2028-03-14'),
  lot('SL-302', 'sodium-lauroyl-sarcosinate-30', ferrow, g(450), '2026-03-18', '2027-03-17', { assay: 0.3 }),
  lot('SL-309', 'sodium-lauroyl-sarcosinate-30', ferrow, kg(5), '2026-10-06', '2027-10-05', { assay: 0.282 }),
  lot('LB-087', 'lauramidopropyl-betaine-30', ferrow, kg(5), '2026-06-16', '2027-12-15', { assay: 0.302 }),
  lot('CG-140', 'coco-glucoside-50', ferrow, kg(2), '2026-06-16', '2028-06-15', { assay: 0.51 }),
  lot('NC-006', 'sodium-chloride', ferrow, kg(1), '2025-11-12', '2030-11-11'),
  lot('SP-048', 'sodium-phytate-50', aske, g(250), '2026-02-03', '2028-02-02'),
  lot('PE-263', 'phenoxyethanol-ehg', aske, g(500), '2026-04-14', '2028-04-13'),
  lot('BD-091', 'benzyl-alcohol-dha', aske, g(500), '2026-08-18', '2028-08-17'),
  lot('SN-024', 'sodium-benzoate', aske, g(500), '2026-01-13', '2029-01-12'),
  lot('KS-029', 'potassium-sorbate', aske, g(250), '2026-01-13', '2028-01-12'),
  lot('FB-012', 'fragrance-barley-field', tolmin, g(250), '2026-06-23', '2027-12-22'),
  lot('LA-019', 'lactic-acid-10', 'made up in the studio', g(500), '2026-08-24', '2026-12-31'),
  lot('LA-020', 'lactic-acid-10', 'made up in the studio', g(500), '2026-11-18', '2027-03-17'),
  lot('CI-044', 'citric-acid-20', 'made up in the studio', kg(1), '2026-10-19', '2027-02-18'),
  lot('NH-015', 'sodium-hydroxide-18', aske, g(500), '2026-09-01', '2027-08-31'),
  lot('NH-016', 'sodium-hydroxide-18', aske, g(500), '2026-11-10', '2027-11-09'),
  lot('CT-318', 'caprylic-capric-triglyceride', ferrow, kg(5), '2026-11-03', '2028-11-02'),
  lot('GP-211', 'glyceryl-stearate-peg-100', ferrow, kg(2), '2026-10-27', '2029-04-26', {
    adjustments: [
      { at: '2026-11-02T09:12:00+00:00', massUg: -g(12), reason: 'given away as a sample', by: 'person-mo' },
    ],
  }),
]
