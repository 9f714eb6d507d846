import type { ComponentChild } from 'preact'

/** As much of a document as Preact needs to render a paper where there is no browser, read back as text. */
class PaperNode {
  parentNode: PaperNode | null = null
  childNodes: PaperNode[] = []
  readonly attributes: Record<string, string> = {}
  readonly style = {}
  readonly clientWidth = 600
  readonly ownerDocument = paperDocument
  readonly namespaceURI: string
  readonly localName: string
  readonly nodeType: number
  data: string

  constructor(localName: string, nodeType: number, data = '', namespaceURI = 'http://www.w3.org/1999/xhtml') {
    this.localName = localName
    this.nodeType = nodeType
    this.data = data
    this.namespaceURI = namespaceURI
  }

  get firstChild(): PaperNode | null {
    return this.childNodes[0] ?? null
  }

  get nextSibling(): PaperNode | null {
    const siblings = this.parentNode?.childNodes ?? []
    return siblings[siblings.indexOf(this) + 1] ?? null
  }

  insertBefore(node: PaperNode, before: PaperNode | null): PaperNode {
    node.remove()
    this.childNodes.splice(before === null ? this.childNodes.length : this.childNodes.indexOf(before), 0, node)
    node.parentNode = this
    return node
  }

  removeChild(node: PaperNode): PaperNode {
    node.remove()
    return node
  }

  remove(): void {
    const siblings = this.parentNode?.childNodes
    siblings?.splice(siblings.indexOf(this), 1)
    this.parentNode = null
  }

  setAttribute(name: string, value: string): void {
    this.attributes[name] = String(value)
  }

  removeAttribute(name: string): void {
    delete this.attributes[name]
  }

  addEventListener(): void {}

  removeEventListener(): void {}

  /** What a reader finds: texts, and what pictures say for themselves. */
  get text(): string {
    if (this.nodeType === 3) return this.data
    const said = this.attributes['aria-label']
    const own = this.childNodes.map(({ text }) => text).join('')
    const whole = said === undefined ? own : `${said}\n${own}`
    if (parts.has(this.localName)) return `${between}\n${whole}\n${between}`
    return blocks.has(this.localName) ? `\n${whole}\n` : cells.has(this.localName) ? `${whole} ` : whole
  }
}

const parts = new Set(['section', 'header', 'footer'])
const blocks = new Set(['article', 'div', 'p', 'tr', 'li', 'h1', 'h2', 'h3', 'figure'])
const cells = new Set(['td', 'th', 'dt', 'dd'])

/** Nothing changes its size here. */
class Unmoved {
  observe(): void {}
  disconnect(): void {}
}

const paperDocument = {
  createElementNS: (space: string, name: string) => new PaperNode(name, 1, '', space),
  createTextNode: (text: string) => new PaperNode('#text', 3, text),
}

/** Stands between the sections of a page. */
const between = '\f'

/** Renders into a fresh page and gives the text of each section in turn, white space taken together. */
export async function sectionsOnPaper(tree: ComponentChild): Promise<readonly string[]> {
  const { render } = await import('preact')
  Object.assign(globalThis, { document: paperDocument, ResizeObserver: Unmoved })
  const page = new PaperNode('body', 1)
  try {
    // Preact asks a parent for no more than this page has.
    render(tree, page as unknown as Element)
    return page.text
      .replace(/[ \t\u00a0\u202f]+/g, ' ')
      .replace(/ ?\n ?/g, '\n')
      .replace(/\n+/g, '\n')
      .split(between)
      .map((section) => section.trim())
      .filter((section) => section !== '')
  } finally {
    for (const name of ['document', 'ResizeObserver']) Reflect.deleteProperty(globalThis, name)
  }
}
