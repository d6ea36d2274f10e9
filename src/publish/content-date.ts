/** The date a site says its content is of. */
import { CannotRun } from '../base/index.ts';

/**
 * The day of the build, ISO 8601; the day SOURCE_DATE_EPOCH names (seconds since 1970, in UTC) where it is
 * set, so that the same content gives the same files on any day.
 * @throws CannotRun where it is set to something else.
 */
export function contentDate(env: Readonly<Record<string, string | undefined>>, now: Date): string {
  const { SOURCE_DATE_EPOCH: epoch } = env;
  if (epoch === undefined || epoch === '') {
    const [month, day] = [now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0'));
    return `${now.getFullYear()}-${month}-${day}`;
  }
  const date = new Date(Number(epoch) * 1000);
  if (!/^\d+$/.test(epoch) || Number.isNaN(date.getTime())) {
    throw new CannotRun(
      `SOURCE_DATE_EPOCH is “${epoch}”, which is no number of seconds since 1970.`,
      'Set it to a whole number such as the output of git log -1 --format=%ct, or leave it out.',
    );
  }
  return date.toISOString().slice(0, 10);
}
