/** The planner: answers while a plan is filled in. Everything is worked out on the device; nothing is sent anywhere. */
import { canonicalCode } from '../../codes/canonical-code.ts';
import type { Change } from '../../decide/plan/changes.ts';
import type { JudgedPlan } from '../../decide/plan/judged-plan.ts';
import { type QueryFault, readQuery } from '../../decide/plan/read-query.ts';
import type { Verdict } from '../../decide/verdict.ts';
import { unitPath } from '../../views/paths.ts';
import {
  arithmeticProfile,
  codesOf,
  type PlannerCode,
  type PlannerData,
  type PlannerUnit,
  type PlannerUnitData,
  policyFrom,
  verdictProfile,
} from '../../views/planner-format.ts';
import { phrase } from '../../words/index.ts';
import { find } from '../find.ts';
import { make } from '../make.ts';
import { pause } from '../pause.ts';
import {
  answerHead,
  changeButtons,
  reasonsList,
  stagesList,
  suitsList,
  type Telling,
  verdictMark,
} from './answer.ts';
import type { Places } from './arithmetic.ts';
import { cautionItems, deferralWords } from './caution-items.ts';
import { formIn, keepInAddress, PlanForm, type Values, valuesOfAddress } from './form.ts';
import { judgedInParts } from './judged.ts';
import { type Loader, loaderOf } from './load.ts';

/** Typing rests this long before the answer is worked out again. */
const pauseMs = 150;

interface Shown {
  readonly values: Values;
  readonly verdict: Verdict;
}

async function start(root: HTMLElement): Promise<void> {
  const { base = '/', planner = '' } = root.dataset;
  const loader = loaderOf(base, planner);
  root.hidden = false;
  const status = find(root, '#plan-status', HTMLElement);
  try {
    const site = await loader.site();
    await pause();
    run(root, loader, site, base);
  } catch {
    status.textContent = phrase(
      'The planner’s data did not come through. Check the signal and load the page again.',
    );
  }
}

function run(root: HTMLElement, loader: Loader, site: PlannerData, base: string): void {
  const element = formIn(root);
  const form = new PlanForm(element, site);
  const policy = policyFrom(site);
  const typed = find(root, '#plan-typed', HTMLInputElement);
  const status = find(root, '#plan-status', HTMLElement);
  const body = find(root, '#plan-body', HTMLElement);
  const card = find(root, '#job-card', HTMLElement);
  const was = find(root, '#plan-was', HTMLElement);
  const see = find(root, '#plan-see', HTMLAnchorElement);
  let beside = '';
  let shown: Shown | undefined;
  let turn = 0;
  let timer: number | undefined;
  let printable: Promise<void> | undefined;

  const fill = (values: Values): void => {
    form.fill(values);
    beside = values.beside ?? '';
    typed.value = '';
    change();
  };

  /** Answers the plan as it now is, once it has rested. Until then neither answer nor card of the plan before is printed. */
  const change = (restMs = 0): void => {
    turn += 1;
    body.ariaBusy = 'true';
    card.hidden = true;
    window.clearTimeout(timer);
    printable = new Promise((isDone) => {
      timer = window.setTimeout(() => update().finally(isDone), restMs);
    });
  };

  const unitOf = (id: string): Promise<PlannerUnitData | undefined> => loader.unit(id).catch(() => undefined);

  const update = async (): Promise<void> => {
    const mine = turn;
    form.narrow();
    const unit = form.unit();
    const unitData = unit && (await unitOf(unit.id));
    if (mine !== turn) return;
    const codes = unitData ? codesOf(unitData) : [];
    if (!unit || unitData) form.offerCodes(codes);
    const values = form.values();
    keepInAddress({ ...values, ...(beside === '' ? {} : { beside }) });
    const { query, faults } = readQuery(values, site.catalogue);
    form.hint({
      least: query.amplifier?.leastVolts,
      most: query.amplifier?.mostVolts,
      watts: query.amplifier?.ratedWatts,
      load: query.amplifier?.ratedOhms,
    });
    if (unit && !unitData) {
      body.hidden = true;
      was.hidden = true;
      status.textContent = site.labels.captions.unitLost;
      return;
    }
    const own = codes.find(({ code }) => code === values.code);
    form.showFaults([...faults, ...rideFaults(values, unit, own !== undefined, site.labels)]);
    const lack = lacking(unit, own !== undefined, faults, base, site.labels);
    if (lack.length > 0 || !unit || !unitData || !own) {
      body.hidden = true;
      was.hidden = true;
      see.hidden = true;
      status.replaceChildren(...lack);
      return;
    }
    try {
      const ownData = await loader.profile(own.id);
      if (mine !== turn) return;
      const { channels } = unit;
      const others = Object.entries(unitData.profiles).flatMap(([id, sent]) =>
        id === own.id ? [] : [{ id, profile: verdictProfile(sent, channels, id) }],
      );
      const profile = arithmeticProfile(ownData, channels, own.id);
      const named = { id: own.id, profile };
      await pause();
      const judged = await judgedInParts(policy, query, named, { catalogue: site.catalogue, others });
      await pause();
      if (mine !== turn) return;
      const telling: Telling = {
        base,
        query,
        policy,
        labels: site.labels,
        names: { code: (id) => unitData.profiles[id]?.code ?? id },
        apply: (changes) => fill(changed(form.values(), changes, codes)),
      };
      showAnswer(root, judged, telling);
      body.ariaBusy = null;
      showBefore(values, judged.answer.verdict);
      status.replaceChildren(
        verdictMark(judged.answer.verdict),
        ` ${phrase('for {code}', { code: own.code })}`,
      );
      body.hidden = false;
      see.hidden = false;
      const arithmetic = async (): Promise<void> => {
        const { showArithmetic } = await import('./show-arithmetic.ts');
        const isCurrent = (): boolean => mine === turn;
        if (!isCurrent()) return;
        const places: Places = {
          base,
          profile: own.id,
          sourceTitles: site.sources,
          lineTexts: site.lines,
          sectionTitles: site.labels.sections,
          captions: site.labels.captions,
          advice: site.advice,
        };
        const sections = await showArithmetic({
          root,
          places,
          unit,
          codes,
          code: own.code,
          profile,
          query,
          isCurrent,
          beside: codes.find(({ code }) => code === beside),
          loader,
          chooseBeside: (code) => {
            beside = code;
            change();
          },
        });
        // The card that goes to paper is on no screen: it comes last.
        await pause();
        const { fillCard } = await import('./card.ts');
        if (!isCurrent()) return;
        const cautions = [
          ...cautionItems(sections.flatMap(({ lines }) => lines.flatMap((line) => line.cautions))),
          make('li', {}, deferralWords()),
        ];
        fillCard(card, { ...places, unit: unit.name, code: own.code, query, judged, sections, cautions });
      };
      // The verdict is painted before the arithmetic is loaded and worked out.
      await new Promise<void>((isDone) => {
        requestAnimationFrame(() => setTimeout(() => arithmetic().finally(isDone)));
      });
    } catch {
      if (mine !== turn) return;
      body.hidden = true;
      status.textContent = site.labels.captions.unitLost;
    }
  };

  /** The answer before the last change, with a way back. */
  const showBefore = (values: Values, verdict: Verdict): void => {
    const before = shown;
    shown = { values, verdict };
    if (!before || JSON.stringify(before.values) === JSON.stringify(values)) return;
    was.hidden = false;
    const back = make('button', { type: 'button', class: 'plan-back' }, phrase('Take the change back'));
    back.addEventListener('click', () => fill(before.values));
    const isSame = before.verdict === verdict;
    was.replaceChildren(
      make(
        'p',
        {},
        `${isSame ? phrase('Was and still is:') : phrase('Was:')} `,
        verdictMark(before.verdict),
        ...(isSame ? [] : [make('span', { class: 'plan-now' }, ` ${phrase('Now:')} `, verdictMark(verdict))]),
      ),
      back,
    );
  };

  /** Takes a typed code, however it is spaced and dashed: of the unit chosen, else of any. */
  const takeTyped = async (): Promise<void> => {
    const asked = typed.value;
    const canonical = canonicalCode(asked);
    const unit = form.unit()?.id;
    const found = await loader.code(canonical, unit).catch(() => undefined);
    if (typed.value !== asked) return;
    find(root, '#plan-typed-not', HTMLElement).hidden = found !== undefined || canonical.length < 4;
    if (!found) return;
    form.takeCode(found.code, found.family);
    change();
  };

  element.addEventListener('input', ({ target }) => {
    if (target === typed) return;
    const isTyped = target instanceof HTMLInputElement && target.type !== 'checkbox';
    change(isTyped ? pauseMs : 0);
  });
  element.addEventListener('submit', (event) => {
    event.preventDefault();
    change();
  });
  typed.addEventListener('input', () => void takeTyped());
  find(root, '#plan-again', HTMLButtonElement).addEventListener('click', () => {
    shown = undefined;
    fill({});
    element.querySelector('select')?.focus();
  });
  const print = find(root, '[data-print]', HTMLButtonElement);
  // The card that is printed is filled in last of all.
  print.addEventListener('click', async () => {
    await printable;
    window.print();
  });
  const asked = valuesOfAddress(window.location.search);
  fill(asked);
  // A code sent without its unit finds it.
  if (asked.unit === undefined && asked.code !== undefined) {
    typed.value = asked.code;
    void takeTyped();
  }
}

function showAnswer(root: HTMLElement, judged: JudgedPlan, telling: Telling): void {
  const put = (id: string, ...parts: readonly Node[]): void => {
    const place = find(root, `#${id}`, HTMLElement);
    place.replaceChildren(...parts);
    const section = place.closest<HTMLElement>('[data-optional]');
    if (section) section.hidden = parts.length === 0;
  };
  put('plan-head', ...answerHead(judged, telling));
  put('plan-reasons', reasonsList(judged, telling));
  put('plan-changes', ...(judged.changes.length > 0 ? changeButtons(judged, telling) : []));
  put('plan-suits', ...(judged.suits.length > 0 ? [suitsList(judged, telling)] : []));
  put('plan-stages', ...stagesList(judged, telling));
}

/** Values with changes made to them. */
function changed(values: Values, changes: readonly Change[], codes: readonly PlannerCode[]): Values {
  const next: Record<string, string> = { ...values };
  for (const one of changes) {
    if (one.change === 'profile') next.code = codes.find(({ id }) => id === one.to)?.code ?? next.code ?? '';
    else if (one.change === 'leave-out-rear') delete next.rear;
    else next[one.change] = one.to.id;
    // Numbers of one’s own belong to the amplifier they were taken from.
    if (one.change === 'amplifier') for (const own of ['least', 'most', 'watts', 'load']) delete next[own];
  }
  return next;
}

/** What an address says of the machine and is not known here. */
function rideFaults(
  values: Values,
  unit: PlannerUnit | undefined,
  isKnown: boolean,
  { captions }: PlannerData['labels'],
): QueryFault[] {
  if (values.unit !== undefined && !unit) {
    return [
      {
        field: 'unit',
        message: phrase('No unit is called “{name}”.', { name: values.unit }),
        help: phrase('Choose it from the list.'),
      },
    ];
  }
  if (values.code !== undefined && unit && !isKnown) {
    return [
      {
        field: 'code',
        message: phrase('{unit} has no known profile “{code}”.', { unit: unit.name, code: values.code }),
        help: captions.compareCode,
      },
    ];
  }
  return [];
}

/** What is still to be said before there is an answer; empty where there is one. */
function lacking(
  unit: PlannerUnit | undefined,
  isCodeKnown: boolean,
  faults: readonly QueryFault[],
  base: string,
  { captions }: PlannerData['labels'],
): (Node | string)[] {
  if (!unit) return [captions.sayUnit];
  if (!isCodeKnown) {
    return [
      `${phrase('Which code does your {unit} show?', { unit: unit.name })} `,
      make('a', { href: `${base}${unitPath(unit.id)}#read` }, phrase('How to read it')),
    ];
  }
  return faults.length > 0 ? [captions.putRight] : [];
}

const root = document.querySelector<HTMLElement>('#plan');
if (root) void start(root);
