/** Two profiles side by side: curves over one another, and what differs by more than its uncertainty. */
import { sideBySide } from '../../decide/plan/side-by-side.ts';
import type { JudgedProfile } from '../../decide/table-given.ts';
import { decimalsFor, formatNumber, formatQuantity } from '../../measure/format.ts';
import type { Unit } from '../../measure/quantity.ts';
import { characteristicLabel } from '../../views/characteristic-label.ts';
import { arithmeticProfile, type PlannerCode, type PlannerUnit } from '../../views/planner-format.ts';
import { phrase } from '../../words/index.ts';
import { make } from '../make.ts';
import { responseFigure } from './figures.ts';
import type { Loader } from './load.ts';
import { plotPoints } from './plot-data.ts';

interface Besides {
  readonly code: string;
  readonly profile: JudgedProfile;
}

/**
 * Figure and table of a profile beside another of its unit.
 * @throws where its data cannot be loaded.
 */
export async function besideProfile(
  one: Besides,
  { id, code }: PlannerCode,
  channels: PlannerUnit['channels'],
  loader: Loader,
): Promise<HTMLElement[]> {
  const other = { code, profile: arithmeticProfile(await loader.profile(id), channels, id) };
  return [...overlaid(one, other), differences(one, other)];
}

/** The clean responses of both at the highest step each was read at. */
function overlaid(one: Besides, other: Besides): HTMLElement[] {
  const curves = [one, other].flatMap(({ code, profile }) => {
    const [response] = plotPoints(profile.output);
    return response ? [{ ...response, label: code }] : [];
  });
  const [first, second] = curves;
  if (!first || !second) return [];
  const caption = phrase('Response of {one} at step {step} and {other} at step {otherStep}.', {
    one: first.label,
    step: first.step,
    other: second.label,
    otherStep: second.step,
  });
  return [
    make(
      'figure',
      {},
      make('figcaption', {}, caption),
      responseFigure({ curves }, phrase('Responses of two profiles')),
    ),
  ];
}

function differences(one: Besides, other: Besides): HTMLElement {
  const rows = sideBySide(one.profile.output, other.profile.output);
  const head = ['', one.code, other.code, phrase('Difference')].map((text) =>
    make('th', { scope: 'col' }, text),
  );
  return make(
    'table',
    { class: 'stack plan-beside' },
    make(
      'caption',
      { class: 'visually-hidden' },
      phrase('{one} and {other}', { one: one.code, other: other.code }),
    ),
    make('thead', {}, make('tr', {}, ...head)),
    make(
      'tbody',
      {},
      ...rows.map(({ name, one: own, other: its, difference, differs }) =>
        make(
          'tr',
          { 'data-differs': differs === undefined ? 'bound' : String(differs) },
          make('th', { scope: 'row' }, characteristicLabel(name)),
          make('td', { 'data-label': one.code }, formatQuantity(own)),
          make('td', { 'data-label': other.code }, formatQuantity(its)),
          make(
            'td',
            { 'data-label': phrase('Difference') },
            make(
              'span',
              {},
              difference ? differenceText(difference, own.unit) : phrase('only a limit is known'),
            ),
            differs === false
              ? make('span', { class: 'block fine' }, phrase('the same within uncertainty'))
              : undefined,
          ),
        ),
      ),
    ),
  );
}

function differenceText(
  { value, expandedUncertainty }: { value: number; expandedUncertainty: number },
  unit: Unit,
): string {
  const decimals = decimalsFor(expandedUncertainty, unit);
  const text = formatNumber(value, decimals);
  const sign = value > 0 && Number(text) !== 0 ? '+' : '';
  const named = unit === '1' ? '' : `\u00a0${unit}`;
  const plusMinus =
    expandedUncertainty > 0 ? ` ±\u00a0${formatNumber(expandedUncertainty, decimals)}${named}` : '';
  return `${sign}${text}${named}${plusMinus}`;
}
