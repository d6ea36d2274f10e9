/**
 * What each line of a plan's arithmetic is, what it assumes and where its formula comes from, by the line's id: for the
 * page and for the command alike. The page is sent them as data (`planner.json`), so that they are no part of its scripts.
 */
import { phrase } from '../words/index.ts';

export interface LineText {
  readonly title: string;
  readonly note: string;
}

export type LineTexts = Readonly<Record<string, LineText>>;

/** The text of a line among those of all; one of several speakers has that of any: `power-of-speaker-2`. */
export function lineText(texts: LineTexts, id: string): LineText {
  const found = texts[id.replace(/-\d+$/, '')];
  if (!found) throw new Error(`the line “${id}” has no text`);
  return found;
}

/** The texts of all lines. */
export function lineTexts(): LineTexts {
  const bridged = phrase(
    'Outputs that are bridged are summed only where both legs of each have their own resistors and the input floats, or behind a converter with an isolated input.',
  );
  const passBand = phrase(
    'Over the frequencies read within the profile’s own pass band, the overall level being free.',
  );
  return {
    'gain-step': {
      title: phrase('Volume step to set the gain at'),
      note: phrase(
        'At this step or a lower one the unit itself does not clip, so that what is set is the amplifier’s gain. Tone controls stand at their middle. For a bass tone take the step at which the boosted band is clean.',
      ),
    },
    'tone-level': {
      title: phrase('Level the test tone must not exceed, of full scale'),
      note: phrase(
        'With this overlap the amplifier is at full power when the recording is this far below full scale; a louder tone would clip it.',
      ),
    },
    'gain-target': {
      title: phrase('Voltage to set at the amplifier’s output'),
      note: phrase(
        'Read with a true-rms meter that is good to the frequency of the tone, runs on its own battery and touches nothing else; loudspeakers are disconnected. The output may be bridged: neither terminal is ground, so never put the clip of a meter or oscilloscope on the chassis.',
      ),
    },
    'full-power-volts': {
      title: phrase('Volts at the amplifier’s rated power'),
      note: phrase('From P = V²/Z for volts rms into the rated impedance.'),
    },
    'above-least-input': {
      title: phrase('Level above what full power needs'),
      note: phrase('Below 0 dB the amplifier does not reach full power even with its gain fully up.'),
    },
    'above-most-input': {
      title: phrase('Level above what the input takes'),
      note: phrase('Above 0 dB the amplifier clips before the volume is up, even with its gain fully down.'),
    },
    'power-reached': {
      title: phrase('Share of the amplifier’s power that can be reached'),
      note: phrase('Power goes with the square of the volts. It is reached with the gain fully up.'),
    },
    attenuation: {
      title: phrase('Attenuation needed between output and input'),
      note: phrase(
        'The uncertainty is added, so that this much is enough. Stopping at a lower volume step does the same.',
      ),
    },
    'boosted-band-clips': {
      title: phrase('First step at which the boosted band may clip'),
      note: phrase(
        'The boosted band reaches the ceiling before 1 kHz does. Music seldom holds the band at full level, so that clipping may be heard some steps later.',
      ),
    },
    'headroom-loss': {
      title: phrase('Loudness given up to keep the boosted band clean'),
      note: phrase(
        'Against the highest step at which 1 kHz alone plays clean. Where either step is not certain, its range counts by the size of a step.',
      ),
    },
    'rear-gain': {
      title: phrase('Gain of the rear channels over the front ones for an even level'),
      note: phrase('For equal speakers at equal distance. Noise of the rear outputs is raised by as much.'),
    },
    'sum-of-alike': {
      title: phrase('Level of the sum where all outputs play the same'),
      note: `${phrase('Relative to one output.')} ${bridged}`,
    },
    'sum-of-one': {
      title: phrase('Level of the sum where one output plays alone'),
      note: `${phrase('Relative to that output: what is on one side only is this much lower.')} ${bridged}`,
    },
    'sum-load': {
      title: phrase('Lowest load on one output'),
      note: phrase(
        'Where the other outputs are silent and take its current. An output of a head unit drives far lower loads; some of them look for a speaker and mute without one, and then need a load resistor.',
      ),
    },
    'sum-resistor-power': {
      title: phrase('Most power in one of the resistors'),
      note: phrase(
        'With the far end at zero. Take a resistor rated for at least twice this: common practice, no source.',
      ),
    },
    'level-at-frequency': {
      title: phrase('Level at the lowest frequency wanted, relative to 1 kHz'),
      note: phrase(
        'From a response at a clean step; between two frequencies that were read, along a straight line over their logarithms.',
      ),
    },
    'boost-power': {
      title: phrase('Power at the boost’s frequency against that at 1 kHz'),
      note: phrase(
        'For one voltage, into one impedance. Below its resonance a small speaker moves as far as its suspension allows long before it gets hot, so that its rated power says nothing there.',
      ),
    },
    'high-pass-slope': {
      title: phrase('Slope of the protective high-pass'),
      note: phrase('A Butterworth filter of order n falls this fast an octave below its corner.'),
    },
    'boost-to-take-out': {
      title: phrase('What is to be taken out at the boost’s frequency'),
      note: phrase('The uncertainty is added, so that the filter is enough.'),
    },
    'protective-high-pass': {
      title: phrase('Corner of a high-pass that protects the speaker'),
      note: phrase(
        'Butterworth, half power at its corner. The maker’s advice for the speaker comes first where there is any.',
      ),
    },
    'response-rms': {
      title: phrase('Departure from the target before'),
      note: passBand,
    },
    'residual-rms': {
      title: phrase('Departure from the target that is left'),
      note: passBand,
    },
    'residual-largest': {
      title: phrase('Largest departure that is left'),
      note: passBand,
    },
    'correction-headroom': {
      title: phrase('Headroom the filters take'),
      note: phrase(
        'Turn the equaliser’s input down by this much, or the filters’ boosts may clip it at full level.',
      ),
    },
    'load-impedance': {
      title: phrase('Rated impedance of the speakers together'),
      note: phrase(
        'In series impedances add, in parallel their inverses do. Rated values; the true ones vary with frequency.',
      ),
    },
    'lowest-impedance': {
      title: phrase('Lowest impedance the speakers may have at any frequency'),
      note: phrase(
        'A speaker’s impedance may fall to 0.8 of its rated value (IEC 60268-5, 16.1, as transcribed); amplifiers that state a least rated load allow for it.',
      ),
    },
    'load-margin': {
      title: phrase('Rated impedance over the least the amplifier may drive'),
      note: phrase('Below 1 the amplifier is overloaded: it may shut down, overheat or fail.'),
    },
    'power-into-load': {
      title: phrase('Power into the speakers together'),
      note: phrase(
        'By the same volts into another load. An amplifier whose supply gives way makes less into a lower one; what its maker states for the load comes first.',
      ),
    },
    'power-of-speaker': {
      title: phrase('Power of one speaker'),
      note: phrase('By rated impedances; compare it with the rated power of the speaker.'),
    },
    'current-full-tone': {
      title: phrase('Current at a full tone on all channels'),
      note: phrase('A test tone draws this, music only for moments. The lower the supply, the more current.'),
    },
    'current-music': {
      title: phrase('Mean current at music'),
      note: phrase(
        'One-eighth of rated power stands for music (16 CFR 432.3(c)); dense music at full volume draws more.',
      ),
    },
    'charging-surplus': {
      title: phrase('Charging current left over while riding'),
      note: phrase('Below 0 A the battery drains while riding. At idle the generator delivers far less.'),
    },
    'battery-time': {
      title: phrase('Longest time with the engine off'),
      note: phrase(
        'With the ignition on as while riding. A battery that is old or cold holds less than is printed on it.',
      ),
    },
    fuse: {
      title: phrase('Fuse of the feed'),
      note: phrase(
        'Blade fuses by ISO 8820-3, as transcribed. It guards the wire, stands close to the battery, and is never larger than what the wire carries. What the amplifier’s maker asks for comes first; where it is more, the wire must carry that.',
      ),
    },
    'least-fuse': {
      title: phrase('Least rating of the fuse'),
      note: phrase(
        'A fuse that carries its full rating for long ages and opens: a quarter more, common practice, no source.',
      ),
    },
    'wire-gauge': {
      title: phrase('Gauge of the wire, feed and ground alike'),
      note: phrase(
        'Thicker is always allowed. Copper, with insulation for the place it runs through; protect it where it may chafe.',
      ),
    },
    'wire-diameter': {
      title: phrase('Diameter of the conductor'),
      note: phrase('ASTM B258. A stranded wire has as much copper and is a little thicker.'),
    },
    'wire-area': {
      title: phrase('Cross-section of the conductor'),
      note: phrase(
        'Of pure copper. Copper-clad aluminium has some 1.6 times the resistance and is not reckoned with.',
      ),
    },
    'wire-resistance': {
      title: phrase('Resistance of a kilometre of the wire'),
      note: phrase(
        'Annealed copper: 1/58 Ω·mm²/m at 20 °C, 0.00393 more for every kelvin (IEC 60028, as transcribed). Stranded wire has some 2 % more.',
      ),
    },
    'wire-drop': {
      title: phrase('Voltage lost in the wire, there and back'),
      note: phrase(
        'The return is reckoned as a wire of the same gauge and length. Grounds: clean bare metal or, better, the battery’s negative terminal; unit and amplifier to one point. A frame of steel or painted joints lose more.',
      ),
    },
    'wire-drop-share': {
      title: phrase('Share of the supply lost'),
      note: phrase('What is lost in the wire is missing at the amplifier, when it draws most.'),
    },
    'wire-table': {
      title: phrase('What the wire may carry by the table'),
      note: phrase(
        'NFPA 70 (NEC) 240.4(D) for AWG 18 to 10, table 310.16 for thicker wire, as transcribed. It is made for buildings; no table is made for motorcycles, so that taking this one is common practice. What the wire’s maker states, and local codes, come first.',
      ),
    },
    'wire-carries': {
      title: phrase('What the wire may carry where it runs'),
      note: phrase(
        'The table holds for 30 °C; heat goes with the square of the current, so that less room up to 60 °C leaves less current (NEC 310.15, from memory). Near an engine it is hot: keep away from it.',
      ),
    },
    'level-of-one': {
      title: phrase('Sound pressure level of one speaker at the ear'),
      note: phrase(
        'Re 20 µPa, in the free field: from a small source, without reflections or a windscreen, at frequencies the sensitivity holds for. A fairing may add some decibels. Speakers give a little less at full power as their coils get hot.',
      ),
    },
    'level-incoherent': {
      title: phrase('Level of all speakers, each playing its own signal'),
      note: phrase(
        'Powers add where the signals have nothing to do with each other, as most of the treble does at the ear.',
      ),
    },
    'level-coherent': {
      title: phrase('Level of all speakers, all playing the same in step'),
      note: phrase(
        'Pressures add where all speakers play the same and their sound arrives in step, as bass does.',
      ),
    },
    'one-watt-sensitivity': {
      title: phrase('Sensitivity at 1 W, 1 m'),
      note: phrase('2.83 V is 1 W into 8 Ω; into a lower impedance the same volts are more watts.'),
    },
    'allowed-time': {
      title: phrase('Longest time a day at this level'),
      note: phrase(
        'NIOSH 98-126: eight hours at 85 dB(A), half as long for every 3 dB more. The level here is not A-weighted, which errs to the safe side for bass. Wind and engine come on top; this is a limit for workers, with risk left below it.',
      ),
    },
  };
}
