/** A session.yaml to fill in, made from its schema: every field with what belongs in it. */
import { sessionSchema } from '../../../schemas/index.ts';
import { entryTemplate } from '../entry-template.ts';

/**
 * The text of a session.yaml in which everything but the kind of signal is left for the person who took the
 * readings: `readback check` names each field that is still empty.
 */
export function sessionTemplate({ signal }: { readonly signal: 'sine' | 'sweep' }): string {
  const head = [
    '# Conditions of this session. Fill in what follows each colon, then run: readback check',
    '# Fields that may be left out stand behind a number sign.',
  ];
  const fields = entryTemplate(sessionSchema.shape, {
    valueOf: (path) => (path === 'signal.kind' ? signal : ''),
    isLeftOut: () => true,
  });
  return `${[...head, ...fields].join('\n')}\n`;
}
