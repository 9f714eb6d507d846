import type { ConstantNode, MathNode, OperatorNode, ParenthesisNode } from 'mathjs'
import { loadArithmetic } from './load-arithmetic'
import { checkNumber, type NumberOptions, type NumberRefusal } from './number-text'
import { type Result, refuse } from './result'

/** Longer sums are not typed at a bench; a short one cannot keep the arithmetic busy. */
const longestSum = 60

/** A typed sum of numbers, + − × ÷ and parentheses, to nine decimals; neither names nor functions are understood. */
export async function evaluateSum(text: string, options: NumberOptions = {}): Promise<Result<number, NumberRefusal>> {
  const plain = text.trim()
  const unclear = { code: 'NUMBER_SUM_UNCLEAR', text: plain } as const
  if (plain === '') return refuse({ code: 'NUMBER_EMPTY' })
  if (/[^\d.,\s()+\-−*×/÷]/u.test(plain)) return refuse({ code: 'NUMBER_LETTERS', text: plain })
  if (/\d*[.,]\d*[.,]/.test(plain)) return refuse({ code: 'NUMBER_TWO_MARKS', text: plain })
  if (plain.length > longestSum) return refuse(unclear)
  const value = await worthOfSum(
    plain.replaceAll(',', '.').replaceAll('−', '-').replaceAll('×', '*').replaceAll('÷', '/'),
  )
  return value === undefined ? refuse(unclear) : checkNumber(tidy(value), options)
}

/** Binary noise off: 250.31 − 187.02 is 63.29. */
export const tidy = (value: number): number => Number(value.toFixed(9))

/** The worth of a sum, or nothing where it is not one. */
async function worthOfSum(text: string): Promise<number | undefined> {
  const { parse } = await loadArithmetic()
  try {
    const worth = worthOf(parse(text))
    return worth !== undefined && Number.isFinite(worth) ? worth : undefined
  } catch (error) {
    if (error instanceof SyntaxError) return undefined
    throw error
  }
}

/** Walks the parsed sum itself, so that nothing but these five kinds of node is ever worked out. */
function worthOf(node: MathNode): number | undefined {
  if (isA<ConstantNode>(node, 'ConstantNode')) return typeof node.value === 'number' ? node.value : undefined
  if (isA<ParenthesisNode>(node, 'ParenthesisNode')) return worthOf(node.content)
  if (!isA<OperatorNode>(node, 'OperatorNode') || node.implicit) return undefined
  const [left, right] = node.args.map(worthOf)
  if (left === undefined) return undefined
  if (node.args.length === 1) return signed(node.fn, left)
  return right === undefined ? undefined : joined(node.fn, left, right)
}

const isA = <Node extends MathNode>(node: MathNode, type: Node['type']): node is Node => node.type === type

function signed(operation: string, value: number): number | undefined {
  if (operation === 'unaryMinus') return -value
  return operation === 'unaryPlus' ? value : undefined
}

function joined(operation: string, left: number, right: number): number | undefined {
  switch (operation) {
    case 'add':
      return left + right
    case 'subtract':
      return left - right
    case 'multiply':
      return left * right
    case 'divide':
      return left / right
    default:
      return undefined
  }
}
