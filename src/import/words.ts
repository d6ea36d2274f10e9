/** What columns are called in the trade: English, German, Spanish. All in lower case. */
import type { KeyName } from './role.ts';

export type ColumnWord = KeyName | 'volts' | 'level' | 'thd' | 'thd+n' | 'note';

const lists: Readonly<Record<ColumnWord, string>> = {
  profile:
    'profile|profile id|profile code|code|tune|tuning|tuning code|tune code|calibration|calibration code|cal|service code|perfil|código|codigo|profil|profilcode|kennung|abstimmung|kode',
  unit: 'unit|head unit|headunit|radio|family|gerät|geraet|radiogerät|familie|unidad|equipo|familia',
  channel: 'channel|ch|chan|output channel|speaker output|kanal|ausgang|lautsprecherausgang|canal|salida',
  step: 'step|steps|volume|vol|volume step|vol step|volume setting|volume level|loudness step|lautstärke|lautstaerke|lautstärkestufe|lautst|stufe|schritt|volumen|paso|nivel de volumen|paso de volumen|notch|click|clicks',
  hz: 'hz|khz|freq|frequency|test frequency|tone|test tone|tone frequency|frequenz|prüffrequenz|messfrequenz|ton|frecuencia|frec',
  repeat:
    'repeat|rep|repeat no|run|take|pass|trial|wiederholung|durchgang|messung nr|repetición|repeticion|pasada',
  volts:
    'volts|volt|voltage|volts rms|vrms|v rms|output voltage|output volts|rms|rms volts|voltsrms|spannung|ausgangsspannung|effektivspannung|u|ueff|u eff|tensión|tension|voltaje|voltios|tensión de salida',
  level:
    'level|output level|reading|value|measured|measured value|amplitude|output|meter|meter reading|pegel|ausgangspegel|messwert|wert|ablesung|anzeige|nivel|lectura|valor|medida|salida medida',
  thd: 'thd|thdpercent|thd percent|distortion|total harmonic distortion|harmonic distortion|klirr|klirrfaktor|klirrgrad|verzerrung|verzerrungen|distorsión|distorsion|distorsión armónica',
  'thd+n': 'thd+n|thd n|thdn|thd + n|sinad',
  note: 'note|notes|remark|remarks|comment|comments|bemerkung|bemerkungen|notiz|notizen|kommentar|anmerkung|nota|notas|observaciones|comentario|date|datum|fecha|time|uhrzeit|hora|no|nr|nr.|#|lfd nr|index|row|zeile|fila|technician|initials|checked|ok|pass fail|temperature|temp|supply|load',
};

const meanings = new Map<string, ColumnWord>(
  (Object.entries(lists) as [ColumnWord, string][]).flatMap(([word, list]) =>
    list.split('|').map((one) => [one, word] as const),
  ),
);

/** What a column of this name holds; undefined where the name is none of the trade’s. */
export function columnWord(name: string): ColumnWord | undefined {
  return meanings.get(name);
}

/** Every name that is known, for “did you mean”. */
export const columnNames: readonly string[] = [...meanings.keys()].filter((name) => name.length > 3);
