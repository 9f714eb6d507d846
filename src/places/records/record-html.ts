import { sha256 } from '@noble/hashes/sha2.js'
import { cssString } from './paper-line'

/**
 * The paper that stands on the screen as one file that opens anywhere: no script, its styles inside, its pictures as the
 * data that they are on the screen too, and a policy that lets nothing else in. Texts are escaped by the browser's own writer.
 */
export function htmlOf(paper: Element, line: string): string {
  // A document of its own: pictures in it are not fetched, and its writer escapes every text.
  const page = document.implementation.createHTMLDocument(line)
  const copy = page.importNode(paper, true)
  tidy(copy)
  const styles = `${stylesFor(paper)}\n:root { --paper-line: ${cssString(line)} }\nbody { padding: 16px }\n.paper { max-inline-size: 1000px; margin: auto }`
  const policy = `default-src 'none'; img-src data:; style-src 'sha256-${digestOf(styles)}'; base-uri 'none'; form-action 'none'`
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width">',
    written(page.querySelector('title') ?? page.createElement('title')),
    `<style>${styles}</style></head><body>`,
    written(copy),
    '</body></html>\n',
  ].join('\n')
}

/** Resolves once every picture of the paper is read: what is still missing would be missing in the file. */
export function picturesRead(paper: Element): Promise<void> {
  return new Promise((resolve) => {
    const look = (): void => {
      if (paper.querySelector('[aria-busy=true]') === null) resolve()
      else setTimeout(look, 40)
    }
    look()
  })
}

/** As XML, which escapes every text and reads the same as HTML. */
const written = (element: Element): string => new XMLSerializer().serializeToString(element)

/** What only works in the app goes; what leads somewhere becomes a link. */
function tidy(copy: Element): void {
  copy.classList.remove('paper-reviewed')
  copy.classList.add('paper-filed')
  for (const each of copy.querySelectorAll('.paper-other-page')) each.classList.remove('paper-other-page')
  for (const button of copy.querySelectorAll<HTMLElement>('button[data-to]')) {
    const link = copy.ownerDocument.createElement('a')
    link.className = button.className
    link.href = `#${placeOf(copy, button.dataset.to ?? '')}`
    link.append(...button.childNodes)
    button.replaceWith(link)
  }
  for (const each of copy.querySelectorAll('nav, button, img:not([src^="data:"]), input')) each.remove()
}

const placeOf = (copy: Element, at: string): string =>
  copy.querySelector(`#${CSS.escape(at)}`) ? at : at.replace('entry-', 'trail-')

/** The rules of the app's style sheets that say something about the paper, fonts left out. */
function stylesFor(paper: Element): string {
  const says = (selector: string): boolean => {
    if (/^(?:\*|html|body|:root)/.test(selector)) return true
    const plain = selector.replace(/::?[a-z-]+(?:\([^()]*\))?/g, '') || '*'
    try {
      return paper.matches(plain) || paper.querySelector(plain) !== null
    } catch {
      return true
    }
  }
  const textOf = (rule: CSSRule): string => {
    if (rule instanceof CSSStyleRule)
      return rule.selectorText.split(',').some((one) => says(one.trim())) ? rule.cssText : ''
    if (rule instanceof CSSMediaRule) {
      const inner = [...rule.cssRules].map(textOf).join('')
      return inner === '' ? '' : `@media ${rule.conditionText} {${inner}}`
    }
    if (rule instanceof CSSImportRule) return rule.styleSheet ? [...rule.styleSheet.cssRules].map(textOf).join('') : ''
    return rule instanceof CSSPageRule ? rule.cssText : ''
  }
  return [...document.styleSheets]
    .flatMap((sheet) => [...sheet.cssRules].map(textOf))
    .filter((text) => text !== '')
    .join('\n')
}

const digestOf = (text: string): string => btoa(String.fromCharCode(...sha256(new TextEncoder().encode(text))))
