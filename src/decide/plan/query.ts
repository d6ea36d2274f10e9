/** What a rider plans: by classes of equipment, or by the numbers of his own. */
import type { AmplifierEquipment, SpeakerEquipment } from '../../../schemas/index.ts';

/** A class of equipment as a plan uses it: its id, what it is, and where that comes from. */
export type Amplifier = { readonly id: string } & Omit<AmplifierEquipment, 'is' | 'order' | 'summary'>;
export type Speaker = { readonly id: string } & Omit<SpeakerEquipment, 'is' | 'order' | 'summary'>;

/** What is bought, in the order most would. */
export const purchases = ['amplifier', 'front', 'rear', 'subwoofer'] as const;
export type Purchase = (typeof purchases)[number];

export interface PlanQuery {
  /** The factory amplifier the machine has now; undefined where it has none. */
  readonly fitted: Amplifier | undefined;
  /** What the unit is to drive; undefined where it drives the speakers itself. */
  readonly amplifier: Amplifier | undefined;
  readonly front: Speaker | undefined;
  readonly rear: Speaker | undefined;
  readonly subwoofer: Speaker | undefined;
  /** What the rider would rather buy first, where money comes in stages. */
  readonly first: Purchase | undefined;
  /** Whether another unit takes the place of this one. */
  readonly replacementUnit: boolean;
  /** Length of the feed from battery to amplifier, one way, metres. */
  readonly wireMetres: number;
  /** Volts of the running machine at the amplifier. */
  readonly supplyVolts: number;
  /** From the speakers to the rider's ear, metres. */
  readonly earMetres: number;
  /** Overlap of the gain setting, dB. */
  readonly overlapDb: number;
  /** Current of the generator and of the machine itself, amperes; undefined where the rider does not know. */
  readonly generatorAmperes: number | undefined;
  readonly machineAmperes: number | undefined;
  readonly batteryAmpereHours: number | undefined;
}

/** What a plan is taken to be where the rider has not said: common practice, no source. */
export const usualQuery: PlanQuery = {
  fitted: undefined,
  amplifier: undefined,
  front: undefined,
  rear: undefined,
  subwoofer: undefined,
  first: undefined,
  replacementUnit: false,
  wireMetres: 2,
  supplyVolts: 13.8,
  earMetres: 0.7,
  overlapDb: 5,
  generatorAmperes: undefined,
  machineAmperes: undefined,
  batteryAmpereHours: undefined,
};
