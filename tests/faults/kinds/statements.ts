/** Statements that no longer say what the readings come to, and profiles said to be what they are not. */
import type { Claim } from '../../../schemas/index.ts';
import { underMainConditions } from '../../../src/measure/main-conditions.ts';
import type { Demo } from '../demo.ts';
import type { Dice } from '../dice.ts';
import { type FaultKind, type Mistake, onLine } from '../kind.ts';

interface PlacedClaim {
  readonly file: string;
  readonly line: number;
  readonly field: string;
  readonly stated: number;
  readonly claim: Claim;
  /** The values computed at any step, and how far a statement may lie off them. */
  readonly low: number;
  readonly high: number;
  readonly allowed: number;
}

/** Claims with a number, each with what the readings come to. */
function claims(demo: Demo, traits: readonly string[]): PlacedClaim[] {
  return [...demo.answers.base.statements.values()].flatMap((statement) =>
    statement.data.claims.flatMap((claim, index): PlacedClaim[] => {
      const output = demo.answers.outputs.get(claim.profile);
      const field = Object.keys(claim).find((key) => key.startsWith('value')) ?? '';
      const stated = (claim as unknown as Readonly<Record<string, unknown>>)[field];
      if (!output || !traits.includes(claim.trait) || claim.trait === 'muted' || typeof stated !== 'number')
        return [];
      const computed = underMainConditions(output, claim.trait);
      const values = computed.map((one) => one.value);
      const tolerance = Math.max(
        ...Object.entries(claim).map(([key, value]) => (key.startsWith('tolerance') ? Number(value) : 0)),
      );
      return [
        {
          file: statement.file,
          line: statement.place(['claims', index, field]).line,
          field,
          stated,
          claim,
          low: Math.min(...values),
          high: Math.max(...values),
          allowed: Math.hypot(tolerance, Math.max(...computed.map((one) => one.expandedUncertainty))),
        },
      ];
    }),
  );
}

function restated(demo: Demo, { file, line, field }: PlacedClaim, value: number): Mistake {
  return onLine(demo, file, line, `    ${field}: ${value}`);
}

/** Moves a claim beyond everything computed, by three to six times what is allowed. */
function stale(traits: readonly string[], decimals: number) {
  return (dice: Dice, demo: Demo): Mistake => {
    const one = dice.pick(claims(demo, traits));
    const off = one.allowed * dice.between(3, 6);
    const value = one.low - off > 0.1 && dice.chance() ? one.low - off : one.high + off;
    return restated(demo, one, Number(value.toFixed(decimals)));
  };
}

const shownBy = 'the readings come to another value, by more than both can be off';

export const statementKinds: readonly FaultKind[] = [
  { name: 'stale clean volts', rule: 'stated-versus-computed', shownBy, make: stale(['clean-volts'], 1) },
  {
    name: 'stale clean step',
    rule: 'stated-versus-computed',
    shownBy,
    make: (dice, demo) => {
      const one = dice.pick(claims(demo, ['highest-clean-step']));
      return restated(demo, one, one.stated + dice.pick([-7, -5, 5]));
    },
  },
  { name: 'stale bass boost', rule: 'stated-versus-computed', shownBy, make: stale(['bass-boost'], 1) },
  {
    name: 'stale corner',
    rule: 'stated-versus-computed',
    shownBy,
    make: stale(['lower-corner', 'upper-corner'], 0),
  },
  {
    name: 'minus lost from a rear level',
    rule: 'stated-versus-computed',
    shownBy,
    make: (dice, demo) => {
      const one = dice.pick(claims(demo, ['rear-to-front']).filter(({ stated }) => stated < -1));
      return restated(demo, one, -one.stated);
    },
  },
  {
    name: 'kilohertz for hertz',
    rule: ['stated-versus-computed', 'unit-slip'],
    shownBy,
    make: (dice, demo) => {
      const one = dice.pick(claims(demo, ['upper-corner']));
      return restated(demo, one, dice.pick([one.stated / 1000, one.stated / 100]));
    },
  },
  {
    name: 'peak volts stated for rms',
    rule: ['stated-versus-computed', 'unit-slip'],
    shownBy,
    make: (dice, demo) => {
      const one = dice.pick(claims(demo, ['clean-volts']));
      return restated(demo, one, Number((one.stated * Math.SQRT2).toFixed(1)));
    },
  },
  {
    name: 'silent output stated to play, or the other way round',
    rule: 'stated-versus-computed',
    shownBy: 'the readings of that output say otherwise',
    make: (dice, demo) => {
      const { file, line, text, match } = dice.pick(
        demo.linesWhere(/^statements\//, /^ {4}value: (true|false)$/),
      );
      return onLine(demo, file, line, text.replace(/true|false/, match[1] === 'true' ? 'false' : 'true'));
    },
  },
  {
    name: 'statement of another profile',
    rule: 'stated-versus-computed',
    shownBy: 'that profile reads otherwise',
    make: (dice, demo) => {
      const one = dice.pick(claims(demo, ['clean-volts', 'bass-boost', 'lower-corner']));
      const { trait, profile } = one.claim;
      if (trait === 'muted') throw new Error('a muted claim has no number');
      const others = [...demo.answers.outputs.values()].filter((output) => {
        const computed = underMainConditions(output, trait).filter(({ bound }) => bound === 'exact');
        return (
          computed.length > 0 &&
          output.profile.split('/')[0] === profile.split('/')[0] &&
          computed.every(
            (value) =>
              Math.abs(value.value - one.stated) > 2 * Math.hypot(one.allowed, value.expandedUncertainty),
          )
        );
      });
      const line =
        demo
          .lines(one.file)
          .findLastIndex((text, at) => at < one.line && text.includes(`profile: ${profile}`)) + 1;
      const text = (demo.lines(one.file)[line - 1] ?? '').replace(profile, dice.pick(others).profile);
      return { ...onLine(demo, one.file, line, text), places: [{ file: one.file, lines: [line, one.line] }] };
    },
  },
  {
    name: 'said to be the same as a profile it is not',
    rule: 'same-output',
    shownBy: 'the readings of the two differ',
    make: (dice, demo) => {
      const { file, line, match } = dice.pick(demo.linesWhere(/^profiles\//, /^sameAs: (.*)$/));
      const family = file.split('/')[1] ?? '';
      const own = file.slice('profiles/'.length, -'.yaml'.length);
      const others = (demo.answers.base.profilesOfFamily.get(family) ?? []).filter(
        ({ id }) => id !== own && id !== match[1],
      );
      return onLine(demo, file, line, `sameAs: ${dice.pick(others).id}`);
    },
  },
  {
    name: 'said to be the same, and quite another',
    rule: 'same-output',
    shownBy: 'the readings of the two differ',
    make: (dice, demo) => {
      const { file, line, text } = dice.pick(
        demo.linesWhere(/^profiles\//, /^about:/).filter((one) => !demo.text(one.file).includes('sameAs')),
      );
      const family = file.split('/')[1] ?? '';
      const own = file.slice('profiles/'.length, -'.yaml'.length);
      const twin = (id: string): boolean =>
        [...(demo.answers.outputGroups.get(family)?.groups ?? [])].some(
          ({ profiles }) => profiles.includes(id) && profiles.includes(own),
        );
      const others = (demo.answers.base.profilesOfFamily.get(family) ?? []).filter(
        // A profile that itself points back here would make a circle, which is another mistake.
        ({ id, data }) => id !== own && !twin(id) && data.sameAs === undefined,
      );
      return onLine(demo, file, line, `sameAs: ${dice.pick(others).id}\n${text}`);
    },
  },
];
