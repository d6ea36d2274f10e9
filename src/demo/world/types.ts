/** The shapes the demo world is written in. */
import type { Profile, Session } from '../../../schemas/index.ts';
import type { Tuning, UnitModel } from '../output-model.ts';

/** A profile: its entry (family and bench sessions are filled in) and what it does to the output. */
export interface DemoProfile {
  readonly code: string;
  readonly otherSpellings?: readonly string[];
  readonly origin: Profile['origin'];
  readonly system: Profile['system'];
  readonly soldAs?: readonly string[];
  readonly sameAs?: string;
  readonly tellApart?: Profile['tellApart'];
  readonly about: string;
  /** Sources apart from the bench sessions. */
  readonly sources: readonly string[];
  readonly tuning: Tuning;
}

/** A family: its hardware, its rated load, its profiles in the order the service screen lists them. */
export interface DemoFamily {
  readonly id: string;
  readonly unit: UnitModel;
  readonly ratedLoadOhms: number;
  readonly profiles: readonly DemoProfile[];
}

/** A bench: the instrument, the source and how much one reading differs from the next. */
export interface DemoBench {
  readonly id: string;
  /** What it is called in titles. */
  readonly title: string;
  readonly takenBy: string;
  readonly instrument: Session['instrument'];
  readonly levelToleranceDb: number;
  readonly loadTolerancePercent: number;
  /** Standard deviation of repeats, relative to the reading. */
  readonly repeatScatter: number;
  readonly keptAt: string;
  readonly trust: 'high' | 'medium';
  readonly trustReason: string;
}

/** A bench session as planned: who, when, under which conditions, which profiles in which order. */
export interface DemoSession {
  readonly id: string;
  readonly date: string;
  readonly bench: string;
  readonly from: string;
  readonly loadOhms: number;
  readonly supply: Session['supply'];
  readonly method: string;
  readonly profiles: readonly string[];
}
