/** A formula as it is set in print, in MathML: the same text that is computed, see decide/plan/formula.ts. */
import { readFormula, type Term } from '../../decide/plan/formula.ts';
import { makeMath } from '../make.ts';

/** `V_set = …` as a `<math>` element. */
export function formulaMark(symbol: string, formula: string): Element {
  const { marks } = set(readFormula(formula), false);
  const math = makeMath('math', makeMath('mrow', symbolMark(symbol), operator('='), ...marks));
  math.setAttribute('display', 'block');
  return math;
}

/** A symbol with its subscript upright: what follows `_`. */
export function symbolMark(symbol: string): Element {
  const [base = '', ...below] = symbol.split('_');
  const main = makeMath('mi', base);
  if (below.length === 0) return main;
  const sub = makeMath('mtext', below.join(' '));
  return makeMath('msub', main, sub);
}

function operator(text: string): Element {
  return makeMath('mo', text);
}

/** What a part is set as, and whether it is a fraction that may be divided on. */
interface Part {
  readonly marks: readonly Element[];
  readonly fraction?: { readonly over: readonly Element[]; readonly under: readonly Element[] };
  /** The part without brackets of its own, for places that need none. */
  readonly bare?: readonly Element[];
}

/** @param isRaised within an exponent, where a fraction would be too small to read: there it stands on the line. */
function set(term: Term, isRaised: boolean): Part {
  const own = (one: Term): Part => set(one, isRaised);
  switch (term.is) {
    case 'number':
      return { marks: [makeMath('mn', term.text)] };
    case 'symbol':
      return { marks: [symbolMark(term.name)] };
    case 'negative':
      return { marks: [operator('−'), ...own(term.of).marks] };
    case 'brackets': {
      const inner = own(term.inner).marks;
      return { marks: [row([operator('('), ...copies(inner), operator(')')])], bare: inner };
    }
    case 'call': {
      const parts = term.parts.map((part) => own(part).marks);
      if (term.name === '√') return { marks: [makeMath('msqrt', ...parts.flat())] };
      const listed = parts.flatMap((marks, at) => (at === 0 ? marks : [operator(','), ...marks]));
      return { marks: [makeMath('mi', term.name), row([operator('('), ...listed, operator(')')])] };
    }
    case '^': {
      const exponent = set(term.right, true);
      return { marks: [makeMath('msup', row(own(term.left).marks), row(exponent.bare ?? exponent.marks))] };
    }
  }
  const [left, right] = [own(term.left), own(term.right)];
  if (term.is === '/' && !isRaised) return divided(left, right);
  return { marks: [...left.marks, operator(term.is), ...right.marks] };
}

function divided(left: Part, right: Part): Part {
  const over = left.fraction?.over ?? left.bare ?? left.marks;
  const under = left.fraction
    ? [...left.fraction.under, operator('·'), ...right.marks]
    : (right.bare ?? right.marks);
  return {
    marks: [makeMath('mfrac', row(copies(over)), row(copies(under)))],
    fraction: { over, under },
  };
}

function row(marks: readonly Element[]): Element {
  const [only] = marks;
  return marks.length === 1 && only ? only : makeMath('mrow', ...marks);
}

function copies(marks: readonly Element[]): Element[] {
  return marks.map((mark) => mark.cloneNode(true) as Element);
}
