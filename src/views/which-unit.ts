/** The page that finds out which unit a rider has: by model line and year, or by sight. */
import type { Answers } from '../answers.ts';
import type { SightedUnit } from '../decide/index.ts';
import type { FaceData } from '../plot/face.ts';
import { unitPath } from './paths.ts';
import { faceData } from './unit-page.ts';

/** A unit on the page: what it is told by, and its drawing. */
export interface UnitSightView extends SightedUnit {
  readonly path: string;
  readonly face: FaceData;
}

/** The units a model line came with, year by year. */
export interface ModelView {
  readonly model: string;
  readonly spans: readonly {
    readonly years: string;
    readonly name: string;
    readonly path: string;
  }[];
}

export interface WhichUnitView {
  readonly units: readonly UnitSightView[];
  /** By name. */
  readonly models: readonly ModelView[];
  /** All years any unit was fitted in, newest first. */
  readonly years: readonly number[];
  /** The widest face, millimetres: what all are drawn to the scale of. */
  readonly widestMm: number;
}

export function whichUnitView({ base }: Answers): WhichUnitView {
  const families = [...base.families.values()];
  const units = families.map((family): UnitSightView => {
    const { name, fitment, identify } = family.data;
    const features = identify.map(({ feature }) => feature);
    return { id: family.id, name, fitment, features, face: faceData(family), path: unitPath(family.id) };
  });
  const fitted = units.flatMap(({ name, path, fitment }) => fitment.map((one) => ({ ...one, name, path })));
  const models = [...new Set(fitted.map(({ model }) => model))].sort((a, b) => a.localeCompare(b));
  const years = new Set(
    fitted.flatMap(({ fromYear, toYear }) =>
      Array.from({ length: Math.max(0, toYear - fromYear + 1) }, (_, at) => fromYear + at),
    ),
  );
  return {
    units,
    models: models.map((model) => ({
      model,
      spans: fitted
        .filter((one) => one.model === model)
        .sort((a, b) => a.fromYear - b.fromYear || a.toYear - b.toYear)
        .map(({ fromYear, toYear, name, path }) => ({
          years: fromYear === toYear ? `${fromYear}` : `${fromYear}–${toYear}`,
          name,
          path,
        })),
    })),
    years: [...years].sort((a, b) => b - a),
    widestMm: Math.max(0, ...units.map(({ face }) => face.widthMm)),
  };
}
