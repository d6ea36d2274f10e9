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

/**
 * Reads a formula of numbers, π, symbols (`V_max`), + − · / ^, brackets and functions. A formula that cannot be read is
 * the programmer's error and throws.
 */
export function readFormula(text: string): Formula {
  const tokens = text.match(/\d+(?:\.\d+)?|[\p{L}√][\p{L}\p{N}_]*|\S/gu) ?? [];
  let at = 0;
  const taken = (...wanted: string[]): string | undefined =>
    wanted.includes(tokens[at] ?? '') ? tokens[at++] : undefined;
  const need = (token: string): void => {
    if (!taken(token)) throw new Error(`“${text}”: “${token}” expected at “${tokens[at] ?? 'the end'}”`);
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
    const token = tokens[at] ?? 'the end';
    at += 1;
    if (token === '(') {
      const inner = sum();
      need(')');
      return inner;
    }
    if (/^\d/.test(token)) return () => Number(token);
    const apply = functions[token];
    if (apply) {
      need('(');
      const parts = [sum()];
      while (taken(',')) parts.push(sum());
      need(')');
      return (of) => apply(...parts.map((part) => part(of)));
    }
    if (token === 'π') return () => Math.PI;
    if (/^\p{L}/u.test(token)) return (of) => of(token);
    throw new Error(`“${text}”: unexpected “${token}”`);
  }

  const whole = sum();
  if (at !== tokens.length) throw new Error(`“${text}”: “${tokens.slice(at).join(' ')}” is left over`);
  return whole;
}
