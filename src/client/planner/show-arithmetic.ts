/** Everything below the verdict: loaded once that is on the screen. The equaliser’s settings come last of all. */
import type { PlanQuery } from '../../decide/plan/query.ts';
import { correctionSection, type Section, sectionIds, workings } from '../../decide/plan/workings.ts';
import type { JudgedProfile } from '../../decide/table-given.ts';
import type { PlannerCode, PlannerUnit } from '../../views/planner-format.ts';
import { phrase } from '../../words/index.ts';
import { find } from '../find.ts';
import { make } from '../make.ts';
import { pause } from '../pause.ts';
import { type Places, sectionMark } from './arithmetic.ts';
import { levelFigure, responseFigure } from './figures.ts';
import { fittedCorrection } from './fitted.ts';
import type { Loader } from './load.ts';
import { correctedCurves, gainLevels, plotPoints } from './plot-data.ts';

export interface ArithmeticOf {
  readonly root: HTMLElement;
  readonly places: Places;
  readonly unit: PlannerUnit;
  /** Of the unit’s profiles. */
  readonly codes: readonly PlannerCode[];
  readonly code: string;
  readonly profile: JudgedProfile;
  readonly query: PlanQuery;
  /** Whether this is still the plan on the screen. */
  readonly isCurrent: () => boolean;
  readonly beside: PlannerCode | undefined;
  readonly loader: Loader;
  readonly chooseBeside: (code: string) => void;
}

/** In parts, between which the page answers to a tap; gives the sections. */
export async function showArithmetic(of: ArithmeticOf): Promise<readonly Section[]> {
  const { root, query, profile, isCurrent } = of;
  const place = find(root, '#plan-arithmetic', HTMLElement);
  const sections = workings(query, profile, of.places.advice);
  const marks: HTMLDetailsElement[] = [];
  for (const section of sections) {
    await pause();
    if (!isCurrent()) return [];
    marks.push(sectionMark(section, of.places));
  }
  // Asked for only now: the rider may have unfolded one in a pause.
  const open = new Set([...place.querySelectorAll('details[open]')].map(({ id }) => id));
  for (const mark of marks) mark.open = open.has(mark.id);
  place.replaceChildren(...marks);
  showBesideChoice(of);
  await showFigures(of, sections);
  await showBeside(of);
  if (query.amplifier?.equaliser && isCurrent()) {
    const found = await fittedCorrection(profile.output);
    if (!isCurrent()) return [];
    const fitted = correctionSection(query, profile.output, () => found);
    const next = sections.findIndex(({ id }) => sectionIds.indexOf(id) > sectionIds.indexOf(fitted.id));
    sections.splice(next < 0 ? sections.length : next, 0, fitted);
    await showFigures(of, sections);
    if (!isCurrent()) return [];
    const mark = sectionMark(fitted, of.places);
    mark.open = open.has(mark.id);
    place.insertBefore(mark, marks[next] ?? null);
  }
  return sections;
}

async function showFigures(of: ArithmeticOf, sections: readonly Section[]): Promise<void> {
  await pause();
  if (of.isCurrent()) find(of.root, '#plan-figures', HTMLElement).replaceChildren(...figuresOf(of, sections));
}

function figuresOf({ profile, unit, places }: ArithmeticOf, sections: readonly Section[]): HTMLElement[] {
  const { output } = profile;
  const { captions } = places;
  const level = gainLevels(output, unit.volume, sections);
  const correction = sections.flatMap((one) => one.correction ?? [])[0];
  const corrected = correction && correctedCurves(output, correction);
  const curves = corrected ?? { curves: plotPoints(output) };
  return [
    ...(level ? [figure(captions.levelShaded, levelFigure(level, captions.level))] : []),
    ...(curves.curves.length > 0
      ? [
          figure(
            corrected ? captions.responseCorrected : captions.responseClean,
            responseFigure(curves, captions.response),
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
  places,
  unit,
  code,
  profile,
  beside,
  loader,
  isCurrent,
}: ArithmeticOf): Promise<void> {
  const place = find(root, '#plan-beside', HTMLElement);
  const parts =
    beside && beside.code !== code
      ? await import('./beside.ts')
          .then(({ besideProfile }) => besideProfile({ code, profile }, beside, unit.channels, loader))
          .catch(() => [make('p', {}, places.captions.lost)])
      : [];
  if (isCurrent()) place.replaceChildren(...parts);
}
