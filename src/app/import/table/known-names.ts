import { synonymGroups } from '../synonyms'

/** Whether a text reads as what a material is for, not as what it is. */
export const looksLikeFunction = (text: string): boolean => functions.test(text)

/** Whether a text reads as an INCI name: one of those known here, or built as they are. */
export function looksLikeInci(text: string): boolean {
  const plain = text.trim().toLowerCase()
  if (knownInci.has(plain)) return true
  return /\(and\)|\b(?:peg|ppg)-\d+|\b(?:extract|oil|butter|seed|kernel|leaf|fruit|flower)\b.*|ium\b|ate\b|ide\b|acid\b|glycol\b|oxide\b|-\d+$/i.test(
    plain,
  )
}

const functions =
  /\b(?:solvent|diluent|humectant|emollient|emulsifier|co-emulsifier|surfactant|thickener|gelling|stabili[sz]er|preservative|antioxidant|chelat\w*|fragrance|perfume|colou?rant|pigment|ph adjust\w*|neutrali[sz]er|buffer|conditioner|conditioning|film former|consistency|viscosity|occlusive|skin protectant|active|opacifier|pearl\w*|solubili[sz]er|exfoliant|uv filter|vitamin|carrier|base)\b/i

const knownInci = new Set(synonymGroups.map(([inci = '']) => inci.toLowerCase()))
