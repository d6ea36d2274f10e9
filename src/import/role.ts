/** What a column of a sheet holds; and the same in words, as the preview shows it and `--columns` takes it. */
import { type Channel, channels } from '../../schemas/index.ts';
import { channelOf } from './channels.ts';
import { numberOf } from './numbers.ts';
import {
  type HzUnit,
  hertz,
  hzUnitOf,
  type ThdUnit,
  thdUnitOf,
  type VoltsUnit,
  voltsUnitOf,
} from './units.ts';

/** What the head of a column says of all its readings: a sheet may have a column for each output or frequency. */
export interface Fixed {
  readonly channel?: Channel;
  readonly hz?: number;
  readonly step?: number;
  readonly repeat?: number;
}

/** Columns that say which reading a row is of. */
export const keyNames = ['profile', 'unit', 'channel', 'step', 'hz', 'repeat'] as const;
export type KeyName = (typeof keyNames)[number];

export type Role =
  | { readonly is: Exclude<KeyName, 'hz'> }
  | { readonly is: 'hz'; readonly unit: HzUnit }
  | { readonly is: 'volts'; readonly unit: VoltsUnit | undefined; readonly fixed: Fixed }
  | { readonly is: 'thd'; readonly unit: ThdUnit | undefined; readonly fixed: Fixed }
  | { readonly is: 'note' };

/** `volts mV FL 63 Hz`, as `--columns` takes it. */
export function roleText(role: Role): string {
  if (role.is === 'hz') return role.unit === 'Hz' ? 'hz' : 'hz kHz';
  if (role.is !== 'volts' && role.is !== 'thd') return role.is;
  const { channel, hz, step, repeat } = role.fixed;
  return [
    role.is,
    role.unit,
    channel,
    hz === undefined ? undefined : `${hz}Hz`,
    step === undefined ? undefined : `step${step}`,
    repeat === undefined ? undefined : `repeat${repeat}`,
  ]
    .filter((part) => part !== undefined)
    .join(' ');
}

/** The role a person writes; a sentence on what cannot be understood instead. */
export function roleNamed(text: string): Role | string {
  const [word = '', ...rest] = text.trim().split(/\s+/);
  const is = word.toLowerCase();
  if (is === 'note' || is === 'ignore') return rest.length === 0 ? { is: 'note' } : unknown(rest[0] ?? '');
  if (is === 'hz' || is === 'khz') {
    const unit = rest.length === 0 ? hzUnitOf(is) : hzUnitOf(rest.join(' '));
    return unit ? { is: 'hz', unit } : unknown(rest.join(' '));
  }
  const key = keyNames.find((one) => one === is);
  if (key && key !== 'hz') return rest.length === 0 ? { is: key } : unknown(rest[0] ?? '');
  if (is === 'code') return { is: 'profile' };
  if (is !== 'volts' && is !== 'thd') {
    return `“${text.trim()}” says nothing of what a column holds.`;
  }
  const fixed: { -readonly [K in keyof Fixed]: Fixed[K] } = {};
  let unit: string | undefined;
  for (const part of rest) {
    const channel = channels.find((one) => one === part.toUpperCase()) ?? channelOf(part);
    const [, name, number = ''] = /^(step|repeat)(\d+)$/i.exec(part) ?? [];
    const hz = /^([\d.]+)(k?hz)$/i.exec(part);
    if (channel) fixed.channel = channel;
    else if (name) fixed[name.toLowerCase() as 'step' | 'repeat'] = Number(number);
    else if (hz) fixed.hz = hertz(numberOf(hz[1] ?? '', 'point') ?? 0, hzUnitOf(hz[2] ?? '') ?? 'Hz');
    else if (unit === undefined && (is === 'volts' ? voltsUnitOf(part) : thdUnitOf(part))) unit = part;
    else return unknown(part);
  }
  return is === 'volts'
    ? { is, unit: unit === undefined ? undefined : voltsUnitOf(unit), fixed }
    : { is, unit: unit === undefined ? undefined : thdUnitOf(unit), fixed };
}

function unknown(part: string): string {
  return `“${part}” is not understood there.`;
}

/** For messages: what may stand behind the equals sign. */
export const roleHelp =
  'A column is one of: profile, unit, channel, step, hz, repeat, note; volts with V, mV, dBV, dBu, Vpp or Vp; thd with %, ratio or dB; volts and thd also with FL, 63Hz, step12 or repeat2 where the column is for one.';
