/** The four outputs as benches call them: FL, front left, VL for vorne links, delantero izquierdo. */
import type { Channel } from '../../schemas/index.ts';

const front = 'f|front|v|vorn|vorne|vorder|vorderer|del|delantero|delantera|frontal';
const rear = 'r|rear|back|h|hinten|hinter|hinterer|heck|tras|trasero|trasera';
const left = 'l|left|links|linker|li|izq|izquierdo|izquierda';
const right = 'r|right|rechts|rechter|re|der|derecho|derecha';

const anyOf = (...lists: readonly string[]): RegExp => new RegExp(`^(?:${lists.join('|')})$`, 'u');
const isFront = anyOf(front);
const isRear = anyOf(rear);
const isLeft = anyOf(left);
const isRight = anyOf(right);
/** Words that say only that it is an output. */
const isFiller = anyOf(
  'ch|channel|output|out|speaker|spk|kanal|ausgang|lautsprecher|ls|canal|salida|altavoz',
);

const short: Readonly<Record<string, Channel>> = {
  fl: 'FL',
  lf: 'FL',
  vl: 'FL',
  fr: 'FR',
  rf: 'FR',
  vr: 'FR',
  rl: 'RL',
  lr: 'RL',
  hl: 'RL',
  rr: 'RR',
  hr: 'RR',
};

/** The output a text names, capitals and separators aside; undefined where it names none. */
export function channelOf(text: string): Channel | undefined {
  const words = text
    .toLowerCase()
    .split(/[^\p{L}\d]+/u)
    .filter((word) => word !== '' && !isFiller.test(word));
  const [one = '', two] = words;
  if (words.length === 1) return Object.hasOwn(short, one) ? short[one] : joined(one);
  if (words.length !== 2 || two === undefined) return undefined;
  return pair(one, two) ?? pair(two, one);
}

function pair(end: string, side: string): Channel | undefined {
  const isFore = isFront.test(end);
  if (!isFore && !isRear.test(end)) return undefined;
  if (isLeft.test(side)) return isFore ? 'FL' : 'RL';
  return isRight.test(side) ? (isFore ? 'FR' : 'RR') : undefined;
}

/** `frontleft`, `vornelinks` */
function joined(word: string): Channel | undefined {
  for (let cut = 3; cut < word.length - 2; cut += 1) {
    const found = pair(word.slice(0, cut), word.slice(cut)) ?? pair(word.slice(cut), word.slice(0, cut));
    if (found) return found;
  }
  return undefined;
}
