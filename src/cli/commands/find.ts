/** `readback find CODE`: which profile has this code, as far as it was read right? */
import type { FindResult } from '../../../schemas/results/find.ts';
import { type Base, readBase } from '../../base/index.ts';
import { adviceFor, buildCodeIndex, type CodeIndex, type Display, findCode } from '../../codes/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';
import { unitOf } from '../unit.ts';

export interface FindOptions extends ContentOption, JsonOption {
  readonly unit?: string;
}

export async function find(typed: string, options: FindOptions, output: Output): Promise<number> {
  const { base } = await readBase(options.content);
  const result = findResult(base, typed, options.unit);
  if (options.json) printJson(output, result);
  else {
    output.out(result.advice);
    for (const { code, family, profile, probability, note } of result.candidates) {
      const unit = base.families.get(family)?.data.name ?? family;
      output.out(`  ${code.padEnd(12)} ${unit.padEnd(14)} ${percent(probability)}  ${note}  (${profile})`);
    }
  }
  return result.verdict === 'unknown' ? exitCodes.findings : exitCodes.ok;
}

/**
 * Looks a code up in a base.
 * @throws CannotRun where `unit` names no family.
 */
export function findResult(base: Base, typed: string, unit: string | undefined): FindResult {
  const family = unit === undefined ? undefined : unitOf(base, unit).id;
  const search = findCode(codeIndexOf(base), typed, family === undefined ? {} : { family });
  return {
    typed,
    verdict: search.verdict,
    advice: adviceFor(search),
    candidates: [...search.candidates, ...search.elsewhere].map(
      ({ code, family, profile, probability, note }) => ({ code, family, profile, probability, note }),
    ),
  };
}

/** The codes of a base, ready to be searched. */
export function codeIndexOf(base: Base): CodeIndex {
  return buildCodeIndex(
    [...base.profiles.values()].map(({ id, data }) => ({
      code: data.code,
      family: data.family,
      profile: id,
      otherSpellings: data.otherSpellings,
      ...displayOf(base, data.family),
    })),
  );
}

/** Codes are compared by what looks alike on their family's display. */
function displayOf(base: Base, family: string): { readonly display?: Display } {
  const display = base.families.get(family)?.data.face.screen.display;
  return display === undefined ? {} : { display };
}

function percent(probability: number): string {
  const shown = Math.round(probability * 100);
  return `${shown === 0 ? '<1' : shown} %`.padStart(6);
}
