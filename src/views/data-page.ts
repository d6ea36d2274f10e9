/** The page that lists what there is for other programs. */
import type { Site } from '../../schemas/index.ts';
import type { Answers } from '../answers.ts';
import { phrase } from '../words/index.ts';
import { type DataResource, dataResources } from './data/package.ts';
import { apiIndexPath, apiProfilePath, apiUnitPath } from './paths.ts';
import { siteView } from './site.ts';

export interface DownloadView {
  readonly path: string;
  readonly title: string;
  readonly description: string;
  /** The columns with their units: “voltsRms (V)”. */
  readonly columns: string;
}

export interface DataPageView {
  readonly licence: Site['licence'];
  readonly notice: string | undefined;
  /** What was computed and what it rests on. */
  readonly tables: readonly DownloadView[];
  /** The readings, one file a session. */
  readonly readings: readonly DownloadView[];
  /** Documents of the API to begin with: the index, a unit, a profile. */
  readonly examples: readonly { readonly path: string; readonly what: string }[];
}

export function dataPage(answers: Answers): DataPageView {
  const { base } = answers;
  const { licence, notice } = siteView(answers);
  const resources = dataResources(answers);
  const isReadings = ({ source }: DataResource): boolean => source !== undefined;
  const [family] = base.families.keys();
  const profile = family === undefined ? undefined : base.profilesOfFamily.get(family)?.[0]?.id;
  return {
    licence,
    notice,
    tables: resources.filter((one) => !isReadings(one)).map(downloadView),
    readings: resources.filter(isReadings).map(downloadView),
    examples: [
      { path: apiIndexPath, what: phrase('where everything else is') },
      ...(family === undefined
        ? []
        : [{ path: apiUnitPath(family), what: phrase('a unit and its profiles') }]),
      ...(profile === undefined
        ? []
        : [{ path: apiProfilePath(profile), what: phrase('a profile: values, answers, what they rest on') }]),
    ],
  };
}

function downloadView({ path, title, description, schema }: DataResource): DownloadView {
  return {
    path,
    title,
    description,
    columns: schema.fields.map(({ name, unit }) => (unit ? `${name} (${unit})` : name)).join(', '),
  };
}
