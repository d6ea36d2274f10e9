/** Everything below the verdict: loaded once that is on the screen. The equaliser’s settings come last of all. */
import type { JudgedPlan } from '../../decide/plan/judged-plan.ts';
import type { PlanQuery } from '../../decide/plan/query.ts';
import { correctionSection, type Section, sectionIds, workings } from '../../decide/plan/workings.ts';
import type { JudgedProfile } from '../../decide/table-given.ts';
import {
  arithmeticProfile,
  type PlannerCode,
  type PlannerData,
  type PlannerUnit,
} from '../../views/planner-format.ts';
import { phrase } from '../../words/index.ts';
import { find } from '../find.ts';
import { make } from '../make.ts';
import { sectionMark } from './arithmetic.ts';
import { besideParts } from './beside.ts';
import { fillCard } from './card.ts';
import { levelFigure, responseFigure } from './figures.ts';
import { fittedCorrection } from './fitted.ts';
import type { Loader } from './load.ts';
import { correctedCurves, gainLevels, plotPoints } from './plot-data.ts';

export interface ArithmeticOf {
  readonly root: HTMLElement;
  readonly base: string;
  readonly site: PlannerData;
  readonly unit: PlannerUnit;
  /** Of the unit’s profiles. */
  readonly codes: readonly PlannerCode[];
  readonly code: string;
  readonly profile: JudgedProfile;
  readonly query: PlanQuery;
  readonly judged: JudgedPlan;
  /** Whether this is still the plan on the screen. */
  readonly isCurrent: () => boolean;
  readonly beside: PlannerCode | undefined;
  readonly loader: Loader;
  readonly chooseBeside: (code: string) => void;
}

export async function showArithmetic(of: ArithmeticOf): Promise<void> {
  const { query, profile, isCurrent } = of;
  const sections = workings(query, profile);
  showSections(of, sections);
  showBesideChoice(of);
  await showBeside(of);
  if (!query.amplifier?.equaliser || !isCurrent()) return;
  const found = await fittedCorrection(profile.output);
  if (!isCurrent()) return;
  const fitted = correctionSection(query, profile.output, () => found);
  const order = (id: Section['id']): number => sectionIds.indexOf(id);
  showSections(
    of,
    [...sections, fitted].sort((a, b) => order(a.id) - order(b.id)),
  );
}

function showSections(of: ArithmeticOf, sections: readonly Section[]): void {
  const { root, base, site, unit, code, query, judged, profile } = of;
  const { output } = profile;
  const place = find(root, '#plan-arithmetic', HTMLElement);
  const open = new Set(
    [...place.querySelectorAll<HTMLElement>('details[open]')].map((one) => one.dataset.section),
  );
  const places = { base, profile: output.profile, sourceTitles: site.sources };
  place.replaceChildren(...sections.map((section) => sectionMark(section, open.has(section.id), places)));
  // A formula too long for a phone is moved sideways: by keys too. Its width is known once it is unfolded.
  for (const details of place.querySelectorAll('details')) {
    const letMove = (): void => {
      for (const formula of details.querySelectorAll<HTMLElement>('.plan-formula')) {
        if (formula.scrollWidth > formula.clientWidth) formula.tabIndex = 0;
      }
    };
    details.addEventListener('toggle', letMove);
    letMove();
  }
  const figures = find(root, '#plan-figures', HTMLElement);
  figures.replaceChildren(...figuresOf(of, sections));
  const card = root.querySelector<HTMLElement>('#job-card');
  if (card) {
    fillCard(card, { unit: unit.name, code, query, judged, sections, sourceTitles: site.sources });
  }
}

function figuresOf({ profile, unit }: ArithmeticOf, sections: readonly Section[]): HTMLElement[] {
  const { output } = profile;
  const level = gainLevels(output, unit.volume, sections);
  const correction = sections.flatMap((one) => one.correction ?? [])[0];
  const corrected = correction && correctedCurves(output, correction);
  const curves = corrected ?? { curves: plotPoints(output) };
  return [
    ...(level
      ? [
          figure(
            phrase('Level by volume step. Shaded: clean.'),
            levelFigure(level, phrase('Level by volume step')),
          ),
        ]
      : []),
    ...(curves.curves.length > 0
      ? [
          figure(
            corrected
              ? phrase('Response as it is and with the equaliser settings below.')
              : phrase('Response at the clean steps. A band about a curve is its uncertainty (95 %).'),
            responseFigure(curves, phrase('Frequency response')),
          ),
        ]
      : []),
  ];
}

function figure(caption: string, drawing: SVGElement): HTMLElement {
  return make('figure', {}, make('figcaption', {}, caption), drawing);
}

function showBesideChoice({ root, codes, code, beside, chooseBeside }: ArithmeticOf): void {
  const select = find(root, '#plan-beside-code', HTMLSelectElement);
  const options = codes.filter((one) => one.code !== code).map((one) => new Option(one.code, one.code));
  select.replaceChildren(new Option(phrase('None'), ''), ...options);
  select.value = beside?.code ?? '';
  select.onchange = () => chooseBeside(select.value);
}

async function showBeside({
  root,
  unit,
  code,
  profile,
  beside,
  loader,
  isCurrent,
}: ArithmeticOf): Promise<void> {
  const place = find(root, '#plan-beside', HTMLElement);
  if (!beside || beside.code === code) {
    place.replaceChildren();
    return;
  }
  try {
    const data = await loader.profile(beside.id);
    if (!isCurrent()) return;
    const other = { code: beside.code, profile: arithmeticProfile(data, unit.channels, beside.id) };
    place.replaceChildren(...besideParts({ code, profile }, other));
  } catch {
    place.replaceChildren(
      make('p', {}, phrase('Its data did not come through. Check the signal and choose it again.')),
    );
  }
}
