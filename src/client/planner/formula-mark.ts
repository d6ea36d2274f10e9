/** A formula as it is set in print, in MathML: the same text that is computed, see decide/plan/formula.ts. */
import { makeMath } from '../make.ts';

const names = new Set(['lg', 'max', 'min', 'floor', 'ceil']);

/** `V_set = …` as a `<math>` element; a formula in plain words is given back as text. */
export function formulaMark(symbol: string, formula: string): Element {
  const math = makeMath('math', makeMath('mrow', symbolMark(symbol), operator('='), ...read(formula)));
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

function read(text: string): readonly Element[] {
  const tokens = text.match(/\d+(?:\.\d+)?|[\p{L}√][\p{L}\p{N}_]*|\S/gu) ?? [];
  let at = 0;
  // A fraction within an exponent would be too small to read: there it stands on the line.
  let exponents = 0;
  const next = (): string => tokens[at] ?? '';
  const taken = (): string => tokens[at++] ?? '';

  function sum(): readonly Element[] {
    let marks = [...product()];
    while (next() === '+' || next() === '−') marks = [...marks, operator(taken()), ...product()];
    return marks;
  }
  function product(): readonly Element[] {
    let so = power();
    while (next() === '·' || next() === '/') {
      const sign = taken();
      const right = power();
      if (sign === '·') so = { marks: [...so.marks, operator('·'), ...right.marks] };
      else if (exponents > 0) so = { marks: [...so.marks, operator('/'), ...right.marks] };
      else so = divided(so, right);
    }
    return so.marks;
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
  function power(): Part {
    if (next() === '−') return { marks: [operator(taken()), ...power().marks] };
    const base = atom();
    if (next() !== '^') return base;
    at += 1;
    exponents += 1;
    const exponent = power();
    exponents -= 1;
    return { marks: [makeMath('msup', row(base.marks), row(exponent.bare ?? exponent.marks))] };
  }
  function atom(): Part {
    const token = taken();
    if (token === '(') {
      const inner = sum();
      at += 1;
      return { marks: [row([operator('('), ...copies(inner), operator(')')])], bare: inner };
    }
    if (token === '√') {
      const { bare = [] } = atom();
      return { marks: [makeMath('msqrt', ...bare)] };
    }
    if (names.has(token)) return { marks: [makeMath('mi', token), ...listed()] };
    if (/^\d/.test(token)) return { marks: [makeMath('mn', token)] };
    return { marks: [symbolMark(token)] };
  }
  function listed(): readonly Element[] {
    at += 1;
    let marks = [operator('('), ...sum()];
    while (next() === ',') marks = [...marks, operator(taken()), ...sum()];
    at += 1;
    return [row([...marks, operator(')')])];
  }
  return sum();
}

function row(marks: readonly Element[]): Element {
  const [only] = marks;
  return marks.length === 1 && only ? only : makeMath('mrow', ...marks);
}

function copies(marks: readonly Element[]): Element[] {
  return marks.map((mark) => mark.cloneNode(true) as Element);
}
