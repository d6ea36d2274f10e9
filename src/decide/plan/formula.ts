/** Formulas: the text a page shows is the text that is computed, so that the two cannot differ. */

/** A formula as it was read: what a page sets in print, and what is computed. */
export type Term =
  | { readonly is: 'number'; readonly text: string }
  | { readonly is: 'symbol'; readonly name: string }
  | { readonly is: 'brackets'; readonly inner: Term }
  | { readonly is: 'call'; readonly name: string; readonly parts: readonly Term[] }
  | { readonly is: 'negative'; readonly of: Term }
  | { readonly is: '+' | '−' | '·' | '/' | '^'; readonly left: Term; readonly right: Term };

/** The value of a symbol. */
export type ValueOf = (symbol: string) => number;

/** What may stand before a bracket. `lg` is the logarithm to base 10; `floor` and `ceil` round to whole numbers. */
const functions: Readonly<Record<string, (...of: number[]) => number>> = {
  lg: Math.log10,
  '√': Math.sqrt,
  max: Math.max,
  min: Math.min,
  floor: Math.floor,
  ceil: Math.ceil,
};

/** A number, a symbol or a function, or a sign. */
const token = /\d+(?:\.\d+)?|[\p{L}√][\p{L}\p{N}_]*|\S/gu;

/** The formula with each of its symbols written as `written` says, and a space kept where it was. */
export function withSymbols(text: string, written: (symbol: string) => string): string {
  return text.replace(token, (one) =>
    /^\p{L}/u.test(one) && one !== 'π' && !Object.hasOwn(functions, one) ? written(one) : one,
  );
}

/**
 * Reads a formula of numbers, π, symbols (`V_max`), + − · / ^, brackets and functions. A formula that cannot be read is
 * the programmer's error and throws.
 */
export function readFormula(text: string): Term {
  const tokens = text.match(token) ?? [];
  let at = 0;
  const taken = <Sign extends string>(...wanted: readonly Sign[]): Sign | undefined => {
    const found = wanted.find((one) => one === tokens[at]);
    if (found) at += 1;
    return found;
  };
  const isWrong = (): never => {
    throw new Error(`“${text}” cannot be read from its part ${at + 1}`);
  };
  const need = (sign: string): void => {
    if (!taken(sign)) isWrong();
  };

  function sum(): Term {
    let so = product();
    for (let is = taken('+', '−'); is; is = taken('+', '−')) so = { is, left: so, right: product() };
    return so;
  }
  function product(): Term {
    let so = power();
    for (let is = taken('·', '/'); is; is = taken('·', '/')) so = { is, left: so, right: power() };
    return so;
  }
  function power(): Term {
    if (taken('−')) return { is: 'negative', of: power() };
    const base = atom();
    const is = taken('^');
    return is ? { is, left: base, right: power() } : base;
  }
  function atom(): Term {
    const here = tokens[at] ?? isWrong();
    at += 1;
    if (here === '(') {
      const inner = sum();
      need(')');
      return { is: 'brackets', inner };
    }
    if (/^\d/.test(here)) return { is: 'number', text: here };
    if (Object.hasOwn(functions, here)) {
      need('(');
      const parts = [sum()];
      while (taken(',')) parts.push(sum());
      need(')');
      return { is: 'call', name: here, parts };
    }
    if (/^\p{L}/u.test(here)) return { is: 'symbol', name: here };
    return isWrong();
  }

  const whole = sum();
  if (at !== tokens.length) isWrong();
  return whole;
}

/** What a formula comes to for given values of its symbols. */
export function evaluate(term: Term, of: ValueOf): number {
  switch (term.is) {
    case 'number':
      return Number(term.text);
    case 'symbol':
      return term.name === 'π' ? Math.PI : of(term.name);
    case 'brackets':
      return evaluate(term.inner, of);
    case 'call':
      return functions[term.name]?.(...term.parts.map((part) => evaluate(part, of))) ?? Number.NaN;
    case 'negative':
      return -evaluate(term.of, of);
  }
  const [left, right] = [evaluate(term.left, of), evaluate(term.right, of)];
  switch (term.is) {
    case '+':
      return left + right;
    case '−':
      return left - right;
    case '·':
      return left * right;
    case '/':
      return left / right;
    case '^':
      return left ** right;
  }
}
