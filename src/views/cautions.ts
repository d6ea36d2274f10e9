/** The full wording of every caution, once for the whole site. */
import type { CautionId } from '../../schemas/index.ts';
import { phrase } from '../words/index.ts';

export interface CautionText {
  readonly id: CautionId;
  /** What to do or not to do, in a few words. */
  readonly title: string;
  /** Why, and what else to heed. */
  readonly text: string;
}

function wordingOf(id: CautionId): Omit<CautionText, 'id'> {
  const wording: Readonly<Record<CautionId, Omit<CautionText, 'id'>>> = {
    parked: {
      title: phrase('Only when parked.'),
      text: phrase(
        'Put the motorcycle on its stand, on level ground, out of traffic. Never work a service screen while riding or with a passenger on the machine.',
      ),
    },
    'engine-off-indoors': {
      title: phrase('Ignition on, engine off.'),
      text: phrase(
        'The service screen needs the ignition, not the engine. Never run the engine indoors, not even with the door open: exhaust holds carbon monoxide, which has no smell and kills.',
      ),
    },
    'look-only': {
      title: phrase('Look, change nothing.'),
      text: phrase(
        'Service screens also hold settings and resets. Read the code and leave. Do not confirm, save or reset anything; a wrong setting can need a workshop to undo.',
      ),
    },
    'battery-drain': {
      title: phrase('Mind the battery.'),
      text: phrase(
        'With the ignition on and the engine off, lamps and audio drain the battery. Be done in about ten minutes, or connect a charger meant for motorcycle batteries, and follow its instructions.',
      ),
    },
    'bridged-outputs': {
      title: phrase('No ground on these outputs.'),
      text: phrase(
        'The speaker outputs are bridged: both terminals are driven and neither is ground. Never connect either one to ground, nor the ground clip of an oscilloscope, a grounded meter or an amplifier input that ties its shield to ground. It can destroy the head unit. Measure with a floating meter, or differentially.',
      ),
    },
    'disconnect-battery': {
      title: phrase('Disconnect the battery before wiring.'),
      text: phrase(
        'Take the negative cable off first and put it back last, as the owner’s handbook of the machine describes. Never cut or join wires on a live harness.',
      ),
    },
    fuse: {
      title: phrase('Fuse close to the battery, sized for the wire.'),
      text: phrase(
        'Every wire from the battery needs a fuse as near to the battery as it can be, rated for no more than that wire can carry. Without it a chafed wire is a fire. Local codes and the amplifier’s handbook decide; where in doubt have a licensed workshop do it.',
      ),
    },
    hearing: {
      title: phrase('Mind your hearing.'),
      text: phrase(
        'Test tones and motorcycle systems are loud enough to harm hearing for good. Begin at the lowest volume step, keep away from the speakers, and wear hearing protection for tests at high volume. On the road you must still hear the traffic.',
      ),
    },
  };
  return wording[id];
}

/** The cautions with these ids, each once, in the order given. */
export function cautionTexts(ids: readonly CautionId[]): CautionText[] {
  return [...new Set(ids)].map((id) => ({ id, ...wordingOf(id) }));
}

/** Printed beneath every set of cautions. */
export function cautionDeferral(): string {
  return phrase(
    'Local law and codes, the maker’s handbook and a licensed workshop come before anything written here.',
  );
}
