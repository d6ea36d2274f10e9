/** The arithmetic of a plan on a profile, section by section: what is planned decides which lines there are. */
import { greatestBoost, headlineValue, type ProfileOutput } from '../../measure/index.ts';
import { phrase } from '../../words/index.ts';
import type { JudgedProfile } from '../table-given.ts';
import type { Advice } from './advice.ts';
import { boostPower, levelAt, protectiveHighPass } from './bandwidth.ts';
import { carryOver } from './carry-over.ts';
import { rearGain, rearState, summedFeed } from './channels.ts';
import type { Correction } from './equaliser/corrected.ts';
import type { Correctable } from './equaliser/to-correct.ts';
import { fuseAndWire } from './fuse.ts';
import { gainStep, gainTarget } from './gain-target.ts';
import { headroom } from './headroom.ts';
import { hearing } from './hearing.ts';
import { matchInput } from './input-match.ts';
import type { ArithmeticLine, Refusal } from './line.ts';
import type { PlanQuery, Speaker } from './query.ts';
import { notMeasuredText } from './reasons.ts';
import { oneSpeaker, speakerLoad } from './speakers.ts';
import { charging, musicShare, supplyCurrents } from './supply.ts';

export const sectionIds = [
  'gain',
  'headroom',
  'channels',
  'bandwidth',
  'correction',
  'speakers',
  'supply',
  'hearing',
  'carry-over',
] as const;
export type SectionId = (typeof sectionIds)[number];

/** One section of a plan's arithmetic. */
export interface Section {
  readonly id: SectionId;
  readonly lines: readonly ArithmeticLine[];
  /** What cannot be worked out or must not be done, and why; what follows without arithmetic. */
  readonly remarks: readonly string[];
  readonly correction?: Correction;
}

/** A summing network’s resistor, and the usual impedance of a low-level input: common practice, no source. */
const usualSum = { resistorOhms: 1000, inputOhms: 10_000 };

/** What the wires are laid in: common practice, no source. */
const usualFeed = { mostDropPercent: 3, conductorCelsius: 60, aroundCelsius: 40 };

/** Finds an equaliser’s settings: handed in, as it takes long and a page loads it last. */
export type Corrects = (output: Correctable) => Correction | Refusal;

/** The sections that apply, each with at least one line or remark; without `corrects` none about an equaliser. */
export function workings(
  query: PlanQuery,
  profile: JudgedProfile,
  advice: Advice,
  corrects?: Corrects,
): Section[] {
  const { output } = profile;
  const sections: Section[] = [
    gainSection(query, output),
    headroomSection(output),
    channelsSection(query, profile, advice),
    bandwidthSection(query, output),
    ...(corrects ? [correctionSection(query, output, corrects)] : []),
    speakersSection(query, advice),
    supplySection(query, advice),
    hearingSection(query),
    carryOverSection(query, profile, advice),
  ];
  return sections.filter(
    ({ lines, remarks, correction: found }) => lines.length + remarks.length > 0 || found,
  );
}

function section(
  id: SectionId,
  ...parts: readonly (readonly ArithmeticLine[] | ArithmeticLine | Refusal | undefined)[]
): Section {
  const lines: ArithmeticLine[] = [];
  const remarks: string[] = [];
  for (const part of parts) {
    if (part === undefined) continue;
    if ('refused' in part) remarks.push(part.refused);
    else if ('length' in part) lines.push(...part);
    else lines.push(part);
  }
  return { id, lines, remarks };
}

function gainSection({ amplifier, overlapDb }: PlanQuery, output: ProfileOutput): Section {
  if (!amplifier) return section('gain');
  const volts = headlineValue(output, 'clean-volts');
  const step = headlineValue(output, 'highest-clean-step');
  if (!volts || !step) return section('gain', { refused: notMeasuredText(output, 'clean-volts') });
  const match = matchInput(volts, amplifier);
  const toneDbfs = Math.min(step.conditions.signalDbfs, -overlapDb);
  const { ratedWatts, ratedOhms: loadOhms, sources } = amplifier;
  return section(
    'gain',
    'refused' in match ? match : match.lines,
    gainStep(step, toneDbfs),
    gainTarget({ ratedWatts, loadOhms, sources, overlapDb, toneDbfs }),
  );
}

function headroomSection(output: ProfileOutput): Section {
  const clean = headlineValue(output, 'highest-clean-step');
  const boost = greatestBoost(output);
  // Without a boost nothing clips before 1 kHz does.
  if (!clean || !boost || boost.value < 0.5) return section('headroom');
  return section('headroom', headroom(clean, headlineValue(output, 'boosted-clean-step'), output));
}

function channelsSection(
  { amplifier, rear }: PlanQuery,
  { channels, output }: JudgedProfile,
  advice: Advice,
): Section {
  if (!rear) return section('channels');
  const state = rearState(channels, output.mutedChannels, headlineValue(output, 'rear-to-front'));
  const level = headlineValue(output, 'rear-to-front');
  const volts = headlineValue(output, 'clean-volts');
  if (state.rear === 'plays' && level) return section('channels', rearGain(level));
  if (state.rear === 'unknown')
    return section('channels', { refused: notMeasuredText(output, 'rear-to-front') });
  const why = state.rear === 'none' ? advice.noRear : advice.silentRear;
  if (!amplifier || amplifier.place === 'factory') return section('channels', { refused: why });
  const feed = volts && summedFeed({ feeds: 2, ...usualSum, cleanVolts: volts });
  return section('channels', { refused: `${why} ${advice.feedRear}` }, feed);
}

function bandwidthSection({ front, rear, subwoofer }: PlanQuery, output: ProfileOutput): Section {
  const wanted = [subwoofer, front, rear].filter((one) => one !== undefined);
  const [lowest] = [...wanted].sort((a, b) => a.lowestHz - b.lowestHz);
  const response = output.responses.find(
    ({ step }) => step <= (headlineValue(output, 'highest-clean-step')?.value ?? 0),
  );
  const boost = greatestBoost(output);
  const boostHz = headlineValue(output, 'bass-boost-frequency');
  const small = [front, rear].filter((one) => one !== undefined)[0];
  const sources = headlineValue(output, 'lower-corner')?.sources ?? boost?.sources ?? [];
  return section(
    'bandwidth',
    lowest && response && levelAt(response, lowest.lowestHz, sources),
    lowest && !response ? { refused: notMeasuredText(output, 'lower-corner') } : undefined,
    boost && small && boost.value >= 0.5 ? boostPower(boost) : undefined,
    boost && boostHz && small && boost.value > small.mostBassBoostDb
      ? protectiveHighPass(boost, boostHz, protectionOf(small))
      : undefined,
  );
}

function protectionOf({
  lowestHz,
  mostBassBoostDb,
  sources,
}: Speaker): Parameters<typeof protectiveHighPass>[2] {
  return { lowestHz, mostBoostDb: mostBassBoostDb, order: 4, sources };
}

/** An equaliser’s settings, where the plan has one. */
export function correctionSection(
  { amplifier }: PlanQuery,
  output: ProfileOutput,
  corrects: Corrects,
): Section {
  if (!amplifier?.equaliser) return section('correction');
  const found = corrects(output);
  if ('refused' in found) return section('correction', found);
  return { ...section('correction', found.lines), correction: found };
}

function speakersSection({ amplifier, front, rear, subwoofer }: PlanQuery, advice: Advice): Section {
  if (!amplifier) return section('speakers');
  const { ratedWatts, ratedOhms, leastOhms, sources } = amplifier;
  const places = [
    [phrase('a front speaker'), front],
    [phrase('a rear speaker'), rear],
    [phrase('the subwoofer'), subwoofer],
  ] as const;
  const seen = new Set<string>();
  const loads = places.flatMap(([id, speaker]) => {
    if (!speaker || seen.has(speaker.id)) return [];
    seen.add(speaker.id);
    return [
      speakerLoad(
        oneSpeaker(id, speaker.ratedOhms),
        { ratedWatts, ratedOhms, leastOhms, sources },
        speaker.sources,
      ),
    ];
  });
  const overload = loads.some(({ drives }) => !drives);
  return section(
    'speakers',
    loads.flatMap(({ lines }) => lines),
    overload ? { refused: advice.lowImpedance } : undefined,
  );
}

function supplySection(query: PlanQuery, advice: Advice): Section {
  const { amplifier, supplyVolts, wireMetres, generatorAmperes, machineAmperes, batteryAmpereHours } = query;
  if (!amplifier || amplifier.place === 'factory') return section('supply');
  const [full, music] = supplyCurrents({
    amplifierClass: amplifier.operatingClass,
    ratedWatts: amplifier.ratedWatts * amplifier.channels,
    supplyVolts,
    sources: amplifier.sources,
  });
  const feed = fuseAndWire({ current: full, lengthM: wireMetres, supplyVolts, ...usualFeed, advice });
  const isKnown =
    generatorAmperes !== undefined && machineAmperes !== undefined && batteryAmpereHours !== undefined;
  return section(
    'supply',
    [full, music],
    feed,
    isKnown
      ? charging({ generatorAmperes, machineAmperes, batteryAmpereHours, sources: [] }, music)
      : undefined,
    { refused: advice.groundAndCare },
  );
}

function hearingSection({ amplifier, front, rear, earMetres }: PlanQuery): Section {
  const speaker = front ?? rear;
  if (!amplifier || !speaker) return section('hearing');
  return section(
    'hearing',
    hearing({
      sensitivityDb: speaker.sensitivityDb,
      at: '1 W',
      ratedOhms: speaker.ratedOhms,
      watts: Math.min(amplifier.ratedWatts, speaker.ratedWatts) * musicShare,
      distanceM: earMetres,
      speakers: front && rear ? 4 : 2,
      sources: [...new Set([...amplifier.sources, ...speaker.sources])],
    }),
  );
}

function carryOverSection(
  { replacementUnit, amplifier }: PlanQuery,
  { data }: JudgedProfile,
  advice: Advice,
): Section {
  if (!replacementUnit) return section('carry-over');
  const rule = carryOver(data.system, amplifier?.place === 'factory');
  return section('carry-over', { refused: advice[rule.advice] });
}
