/** Formulas: the text a page shows is the text that is computed, so that the two cannot differ. */

/** The value of a symbol. */
export type ValueOf = (symbol: string) => number;

/** A formula read once: its value for given values of its symbols. */
export type Formula = (of: ValueOf) => number;

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
export function readFormula(text: string): Formula {
  const tokens = text.match(token) ?? [];
  let at = 0;
  const taken = (...wanted: string[]): string | undefined =>
    wanted.includes(tokens[at] ?? '') ? tokens[at++] : undefined;
  const need = (sign: string): void => {
    if (!taken(sign)) throw new Error(`“${text}”: “${sign}” expected at “${tokens[at] ?? 'the end'}”`);
  };

  function sum(): Formula {
    let so = product();
    for (let sign = taken('+', '−'); sign; sign = taken('+', '−')) {
      const [left, right] = [so, product()];
      so = sign === '+' ? (of) => left(of) + right(of) : (of) => left(of) - right(of);
    }
    return so;
  }
  function product(): Formula {
    let so = power();
    for (let sign = taken('·', '/'); sign; sign = taken('·', '/')) {
      const [left, right] = [so, power()];
      so = sign === '·' ? (of) => left(of) * right(of) : (of) => left(of) / right(of);
    }
    return so;
  }
  function power(): Formula {
    if (taken('−')) {
      const positive = power();
      return (of) => -positive(of);
    }
    const base = atom();
    if (!taken('^')) return base;
    const exponent = power();
    return (of) => base(of) ** exponent(of);
  }
  function atom(): Formula {
    const here = tokens[at] ?? 'the end';
    at += 1;
    if (here === '(') {
      const inner = sum();
      need(')');
      return inner;
    }
    if (/^\d/.test(here)) return () => Number(here);
    const apply = functions[here];
    if (apply) {
      need('(');
      const parts = [sum()];
      while (taken(',')) parts.push(sum());
      need(')');
      return (of) => apply(...parts.map((part) => part(of)));
    }
    if (here === 'π') return () => Math.PI;
    if (/^\p{L}/u.test(here)) return (of) => of(here);
    throw new Error(`“${text}”: unexpected “${here}”`);
  }

  const whole = sum();
  if (at !== tokens.length) throw new Error(`“${text}”: “${tokens.slice(at).join(' ')}” is left over`);
  return whole;
}
