/** Dates as bench sheets write them. What may be two days is asked. */

const months: readonly RegExp[] = [
  /^(jan|ene)/,
  /^feb/,
  /^(mar|mär|mae|mrz)/,
  /^(apr|abr)/,
  /^(may|mai|mayo)/,
  /^jun/,
  /^jul/,
  /^(aug|ago)/,
  /^(sep|set)/,
  /^(oct|okt)/,
  /^nov/,
  /^(dec|dez|dic)/,
];

/** ISO 8601; or a sentence on why the day is not clear. */
export function dateOf(text: string): { readonly date: string } | { readonly problem: string } {
  const plain = text.trim().replace(/\s+/g, ' ').toLowerCase();
  const iso = /^(\d{4})[-./](\d{1,2})[-./](\d{1,2})(?:[ t].*)?$/.exec(plain);
  if (iso) return checked(Number(iso[1]), Number(iso[2]), Number(iso[3]), text);
  const dotted = /^(\d{1,2})\. ?(\d{1,2})\. ?(\d{4}|\d{2})$/.exec(plain);
  if (dotted) return checked(fullYear(dotted[3] ?? ''), Number(dotted[2]), Number(dotted[1]), text);
  const slashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d{2})$/.exec(plain);
  if (slashed) {
    const [a, b] = [Number(slashed[1]), Number(slashed[2])];
    const year = fullYear(slashed[3] ?? '');
    if (a > 12) return checked(year, b, a, text);
    if (b > 12 || a === b) return checked(year, a, b, text);
    return { problem: `“${text}” may be ${isoDate(year, b, a)} or ${isoDate(year, a, b)}` };
  }
  const named =
    /^(?:\p{L}+,? )?(\d{1,2})(?:\.|st|nd|rd|th)? (?:de )?(\p{L}+)\.?,? (?:de )?(\d{4})$/u.exec(plain) ??
    swapped(/^(?:\p{L}+, )?(\p{L}+)\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/u.exec(plain));
  const month = named ? months.findIndex((one) => one.test(named[2] ?? '')) + 1 : 0;
  if (named && month > 0) return checked(Number(named[3]), month, Number(named[1]), text);
  return { problem: `“${text}” is no date` };
}

function swapped(parts: RegExpExecArray | null): readonly string[] | undefined {
  return parts ? [parts[0], parts[2] ?? '', parts[1] ?? '', parts[3] ?? ''] : undefined;
}

function fullYear(text: string): number {
  return text.length === 2 ? 2000 + Number(text) : Number(text);
}

function checked(year: number, month: number, day: number, text: string) {
  const date = isoDate(year, month, day);
  const time = Date.parse(`${date}T00:00:00Z`);
  const isDay = !Number.isNaN(time) && new Date(time).toISOString().startsWith(date);
  return isDay ? { date } : { problem: `“${text}” is no day of the calendar` };
}

function isoDate(year: number, month: number, day: number): string {
  return [String(year).padStart(4, '0'), ...[month, day].map((part) => String(part).padStart(2, '0'))].join(
    '-',
  );
}
