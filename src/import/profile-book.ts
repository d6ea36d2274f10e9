/** Which profile a code in a sheet stands for: exactly one known, or proposals, never a silent guess. */
import { type Base, codeSlug, familyNamed, nearest, profileId } from '../base/index.ts';
import { type CodeIndex, canonicalCode, codePattern, findCode } from '../codes/index.ts';
import type { Cell } from './cell.ts';

export interface NewProfile {
  readonly id: string;
  readonly family: string;
  readonly code: string;
}

export type ProfileFound =
  | { readonly id: string; readonly note?: string; readonly problem?: never }
  | { readonly problem: string; readonly help: string };

export interface BookSettings {
  readonly base: Base;
  readonly index: CodeIndex;
  /** The unit all codes are of, by id. */
  readonly family: string | undefined;
  /** Codes as the sheet writes them → the profile they are said to be. */
  readonly said: ReadonlyMap<string, string>;
  /** Codes said to be of profiles not yet known, as the screen shows them. */
  readonly fresh: readonly string[];
}

export class ProfileBook {
  readonly #settings: BookSettings;
  readonly #found = new Map<string, ProfileFound>();
  readonly #fresh = new Map<string, NewProfile>();

  constructor(settings: BookSettings) {
    this.#settings = settings;
  }

  /** Profiles that were met and are not there yet. */
  get newProfiles(): readonly NewProfile[] {
    return [...this.#fresh.values()];
  }

  /** What was taken for what, where it is not written alike. */
  get notes(): string[] {
    return [...this.#found.values()].flatMap(({ problem, ...found }) =>
      problem === undefined && 'note' in found && found.note !== undefined ? [found.note] : [],
    );
  }

  /** @param unit what the sheet says the unit is. */
  find(cell: Cell, unit: string | undefined): ProfileFound {
    const key = `${cell}\n${unit ?? ''}`;
    let found = this.#found.get(key);
    if (!found) {
      found = this.#lookUp(String(cell), unit, typeof cell === 'number');
      this.#found.set(key, found);
    }
    return found;
  }

  #lookUp(text: string, unit: string | undefined, isNumber: boolean): ProfileFound {
    const { base, said, index } = this.#settings;
    const id = said.get(text.toLowerCase()) ?? text.toLowerCase();
    if (base.profiles.has(id)) return id === text ? { id } : { id, note: `${text} is ${id}, as you say` };
    const family = unit === undefined ? this.#settings.family : familyNamed(base, unit)?.id;
    if (unit !== undefined && family === undefined) {
      const guess = nearest(
        unit,
        [...base.families.values()].flatMap((one) => [one.id, one.data.name]),
      );
      return {
        problem: `There is no unit “${unit}”.`,
        help: guess ? `Did you mean “${guess}”?` : `The units are: ${[...base.families.keys()].join(', ')}.`,
      };
    }
    const wanted = canonicalCode(text);
    const same = [...base.profiles.values()].filter(
      ({ data }) =>
        (family === undefined || data.family === family) &&
        [data.code, ...data.otherSpellings].some((one) => canonicalCode(one) === wanted),
    );
    const [only] = same;
    if (only && same.length === 1) {
      return only.data.code === text
        ? { id: only.id }
        : { id: only.id, note: `${text} is ${only.data.code} (${only.id})` };
    }
    if (only) {
      return {
        problem: `The code ${text} is one of several units: ${same.map(({ data }) => data.family).join(', ')}.`,
        help: `Say which: --unit ${only.data.family}, or a column with the unit.`,
      };
    }
    const isFresh = this.#settings.fresh.some((one) => canonicalCode(one) === wanted);
    return isFresh ? this.#newProfile(text, family) : this.#unknown(text, family, isNumber, index);
  }

  #newProfile(text: string, family: string | undefined): ProfileFound {
    const { base, fresh } = this.#settings;
    const code = fresh.find((one) => canonicalCode(one) === canonicalCode(text)) ?? text;
    if (family === undefined) {
      return {
        problem: `${code} is to be a new profile, and of which unit is not said.`,
        help: `Say --unit with one of: ${[...base.families.keys()].join(', ')}.`,
      };
    }
    const pattern = codePattern(base.families.get(family)?.data.code.pattern ?? '');
    if (pattern.kind === 'ready' && !pattern.matches(code)) {
      return {
        problem: `${code} is no code of ${family}: they look like ${base.families.get(family)?.data.code.pattern}.`,
        help: 'Look at the screen again, or say another --unit.',
      };
    }
    const profile = { id: profileId(family, code), family, code };
    if (codeSlug(code) === '' || base.profiles.has(profile.id)) {
      return {
        problem: `No file name follows from ${code} that is not taken.`,
        help: 'Write the profile by hand first.',
      };
    }
    this.#fresh.set(profile.id, profile);
    return { id: profile.id };
  }

  #unknown(text: string, family: string | undefined, isNumber: boolean, index: CodeIndex): ProfileFound {
    const mangled =
      isNumber || /^\d{4}-\d\d-\d\d$|^\d+[.,]?\d*E[+]\d+$|^\d{1,2}[-. ]\p{L}{3,4}$/iu.test(text)
        ? ' Spreadsheets make numbers and dates of codes such as 1.10 or 5-08: format the column as text, and type the code again.'
        : '';
    const { candidates } = findCode(index, text, { ...(family === undefined ? {} : { family }), limit: 3 });
    const [best] = candidates;
    const proposals = candidates.map(({ code, profile, note }) => `${code} (${profile}; ${note})`).join(', ');
    return {
      problem: `No profile has the code ${text}.${mangled}`,
      help: best
        ? `Perhaps ${proposals}. Say --code "${text}=${best.profile}" if it is, or --new "${text}" if it is a profile not yet known.`
        : `Say --new "${text}" if it is a profile not yet known, or correct it.`,
    };
  }
}
