/** Asks for an entry field by field; each answer is held against the schema at once. */
import type { Base, DataPath } from '../../base/index.ts';
import { type EntryAnswers, faultsOf, isWithin, typedValue } from './answers.ts';
import type { Dialogue } from './dialogue.ts';
import type { NewKind } from './entry-file.ts';
import type { BlockShape, Field, RecordShape, Shape, UnionShape, ValueShape } from './fields.ts';

/** Longer lists of ids are counted, not told. */
const mostIdsTold = 15;

/** What a question is about, and where its answer goes. */
interface Asked {
  readonly name: string;
  readonly about: string;
  readonly needed: boolean;
  readonly path: DataPath;
  /** Puts the answer in its place; undefined takes it out again. */
  put(value: unknown): void;
}

export class Questions {
  readonly answers: EntryAnswers = {};
  readonly #kind: NewKind;
  readonly #shape: BlockShape | UnionShape;
  readonly #base: Base;
  readonly #dialogue: Dialogue;

  constructor(kind: NewKind, shape: BlockShape | UnionShape, base: Base, dialogue: Dialogue) {
    this.#kind = kind;
    this.#shape = shape;
    this.#base = base;
    this.#dialogue = dialogue;
  }

  /** Asks for everything. @param after is called when a field of the entry itself has been answered. */
  async askAll(after: () => Promise<void>): Promise<void> {
    await this.#askWithin(this.#shape, this.answers, [], after);
  }

  async #askWithin(
    shape: BlockShape | UnionShape,
    block: EntryAnswers,
    path: DataPath,
    after?: () => Promise<void>,
  ): Promise<void> {
    const fields = shape.is === 'block' ? shape.fields : await this.#askKey(shape, block, path);
    for (const field of fields) {
      const { name } = field;
      await this.#ask(field.shape, {
        ...field,
        path: [...path, name],
        put: (value) => {
          if (value === undefined) delete block[name];
          else block[name] = value;
        },
      });
      await after?.();
    }
  }

  /** Asks which kind of block it is; gives the other fields of that kind. */
  async #askKey(shape: UnionShape, block: EntryAnswers, path: DataPath): Promise<readonly Field[]> {
    const { key, members } = shape;
    const choices = members.flatMap(({ values }) => values);
    const abouts = new Set(
      members.map(({ block: { fields } }) => fields.find(({ name }) => name === key)?.about ?? ''),
    );
    const [about = ''] = abouts.size === 1 ? abouts : [];
    await this.#askValue(
      { is: 'value', holds: 'text', choices, entriesIn: undefined, inQuotes: false },
      {
        name: key,
        about,
        needed: true,
        path: [...path, key],
        put: (value) => {
          block[key] = value;
        },
      },
    );
    const member = members.find(({ values }) => values.includes(String(block[key])));
    return member?.block.fields.filter(({ name }) => name !== key) ?? [];
  }

  async #ask(shape: Shape, asked: Asked): Promise<void> {
    switch (shape.is) {
      case 'value':
        return this.#askValue(shape, asked);
      case 'list': {
        const { of, least } = shape;
        if (of.is === 'value') return this.#askValues(of, asked);
        if (of.is === 'block' || of.is === 'union') return this.#askBlocks(of, least, asked);
        throw new Error(`nothing is known of asking for lists of “${of.is}”`);
      }
      case 'record':
        return this.#askRecord(shape, asked);
      default: {
        if (!asked.needed && !(await this.#wants(`${headOf(asked)} Fill it in?`))) return;
        if (asked.needed) this.#dialogue.tell(`\n${headOf(asked)}`);
        const block: EntryAnswers = {};
        asked.put(block);
        return this.#askWithin(shape, block, asked.path);
      }
    }
  }

  async #askValue(shape: ValueShape, asked: Asked): Promise<void> {
    for (;;) {
      const text = await this.#answer(`${headOf(asked)}${this.#hint(shape, asked.needed)}`);
      asked.put(text === '' ? undefined : typedValue(shape, text));
      if (this.#isRight(asked.path)) return;
      asked.put(undefined);
    }
  }

  async #askValues(of: ValueShape, asked: Asked): Promise<void> {
    const list: unknown[] = [];
    const hint = `${this.#hint(of, true)} One at a time; Enter when there are no more.`;
    for (let head = `${headOf(asked)}${hint}`; ; head = `${asked.name}, one more?`) {
      const text = await this.#answer(head);
      if (text !== '') list.push(typedValue(of, text));
      asked.put(list.length > 0 || asked.needed ? list : undefined);
      if (text !== '') {
        if (!this.#isRight([...asked.path, list.length - 1])) list.pop();
        continue;
      }
      if (this.#isRight(asked.path)) return;
    }
  }

  async #askBlocks(of: BlockShape | UnionShape, least: number, asked: Asked): Promise<void> {
    const list: EntryAnswers[] = [];
    this.#dialogue.tell(`\n${headOf(asked)}`);
    while (
      list.length < least ||
      (await this.#wants(list.length === 0 ? `${asked.name}: add one?` : `${asked.name}: another one?`))
    ) {
      const block: EntryAnswers = {};
      list.push(block);
      asked.put(list);
      this.#dialogue.tell(`${asked.name}, number ${list.length}`);
      await this.#askWithin(of, block, [...asked.path, list.length - 1]);
    }
  }

  async #askRecord(shape: RecordShape, asked: Asked): Promise<void> {
    const record: EntryAnswers = {};
    asked.put(record);
    for (
      let head = `${headOf(asked)} As “name: value”; Enter ends them.`;
      ;
      head = `${asked.name}, one more?`
    ) {
      const text = await this.#answer(head);
      if (text === '') break;
      const [, name, value] = /^([^:]+):(.+)$/.exec(text) ?? [];
      if (name === undefined || value === undefined) {
        this.#dialogue.tell('  Write a name, a colon and a value.');
        continue;
      }
      record[name.trim()] = typedValue(shape.of, value);
      if (!this.#isRight([...asked.path, name.trim()])) delete record[name.trim()];
    }
    if (Object.keys(record).length === 0 && !asked.needed) asked.put(undefined);
  }

  async #wants(question: string): Promise<boolean> {
    return /^(?:y|yes)$/i.test(await this.#answer(`${question} (yes, or Enter for no)`));
  }

  async #answer(question: string): Promise<string> {
    return (await this.#dialogue.ask(`${question}\n> `)).trim();
  }

  /** Whether nothing is wrong with what stands at a path; says what is. */
  #isRight(path: DataPath): boolean {
    const faults = faultsOf(this.#kind, this.#shape, this.answers, this.#base);
    const own = faults.filter((fault) => isWithin(fault.path, path));
    for (const { message, help } of own) this.#dialogue.tell(`  ${message}\n  → ${help}`);
    return own.length === 0;
  }

  #hint({ holds, choices, entriesIn }: ValueShape, needed: boolean): string {
    const ids = entriesIn === undefined ? [] : [...this.#base[entriesIn].keys()];
    const known = ids.length > mostIdsTold ? [`${ids.length} are known`] : ids;
    const told = holds === 'yes-no' ? ['yes or no'] : choices.length > 1 ? choices : known;
    return `${told.length > 0 ? ` (${told.join(', ')})` : ''}${needed ? '' : ' Enter leaves it out.'}`;
  }
}

function headOf({ name, about }: Pick<Asked, 'name' | 'about'>): string {
  return about === '' ? `${name}:` : `${name}: ${about}`;
}
