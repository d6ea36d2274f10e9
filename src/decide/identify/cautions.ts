/** What is to be said before anybody puts a meter to a speaker output. Always printed. */
export const meterCautions: readonly string[] = [
  'Only when parked: on its stand, on level ground, out of traffic. Never take readings while riding.',
  'Ignition on, engine off. Never run the engine indoors, not even with the door open: exhaust holds carbon monoxide, which has no smell and kills. Be done in about ten minutes, for the battery’s sake.',
  'Bridged outputs have no ground side: both terminals are driven. Put one lead of a battery-run meter on each terminal of the same output, never a lead on ground or the frame, and let no probe touch both terminals: it can destroy the unit. Where in doubt take every output for bridged.',
  'Mind your hearing: begin at the lowest step. Disconnect the speakers where the unit allows it, or keep the volume bearable and wear hearing protection.',
  'Play sine tones and read AC volts. Anything but a sine needs a true-rms meter, and many hand-held meters read too little above 1 kHz: look for the frequency range in their instructions.',
];
