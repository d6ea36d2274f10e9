import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Entry, TextFile } from '../../src/base/index.ts';
import { readMarkdown } from '../../src/base/markdown.ts';
import { formatQuantity, valuesNamed } from '../../src/measure/index.ts';
import { citedSources, proseHtml } from '../../src/views/prose.ts';
import { answersWith, html } from '../prose/example.ts';
import { allViews, demoAnswers } from './sample.ts';

test('headings get ids and begin at the level of the page', async () => {
  expect(await html('# Set the gain\n\n## Set the gain')).toBe(
    '<h2 id="set-the-gain">Set the gain</h2>\n<h3 id="set-the-gain-2">Set the gain</h3>',
  );
  expect(await html('## Why', 3)).toBe('<h3 id="why">Why</h3>');
});

test('a heading does not take the id of a section of the page', async () => {
  expect(await html('## Sources')).toBe('<h2 id="sources-2">Sources</h2>');
});

test('links from the top of the site go below the base path, others stay', async () => {
  expect(await html('[unit](/units/moorlight/) [here](#why) [there](https://example.invalid/a)')).toBe(
    '<p><a href="/help/units/moorlight/">unit</a> <a href="#why">here</a> <a href="https://example.invalid/a">there</a></p>',
  );
});

test('links to the files of entries lead to their pages', async () => {
  expect(
    await html(
      '[a](reading-a-code.md#what-to-look-at) [b](../profiles/moorlight/km-4417.yaml) [c](/plans/two-channel)',
    ),
  ).toBe(
    '<p><a href="/help/guides/reading-a-code/#what-to-look-at">a</a> <a href="/help/profiles/moorlight/km-4417/">b</a> <a href="/help/plans/two-channel/">c</a></p>',
  );
});

test('a value stands with its uncertainty and leads to its row', async () => {
  const { answers } = await answersWith('Text.');
  const volts = answers.outputs
    .get('moorlight/km-4417')
    ?.characteristics.find((one) => one.name === 'clean-volts');
  if (!volts) throw new Error('the example base has no clean volts');
  const shown = formatQuantity(volts);
  expect(shown).toMatch(/^6\.\d+\u00a0V ±\u00a0/);
  const text = await html('It gives :value[moorlight/km-4417 clean-volts].');
  expect(text).toContain('href="/help/profiles/moorlight/km-4417/#value-clean-volts"');
  expect(text).toContain(`>${shown}</a>.`);
  expect(text).toContain(
    'title="Clean output, KM-4417: front left, step 24, 1\u00a0kHz; 4\u00a0Ω per channel',
  );
  const alone = await html(':value[moorlight/km-4417 clean-volts]{form=value}');
  expect(alone).toContain(`>${shown.split(' ±')[0] ?? ''}</a>`);
});

test('a value at another step leads to the row of that step', async () => {
  const answers = await demoAnswers();
  const output = answers.outputs.get('brasslight/8b0s-i5z');
  const boosts = output ? valuesNamed(output, 'bass-boost') : [];
  expect(boosts.length).toBeGreaterThan(1);
  const page = (await allViews(answers, 'profilePages')).find(({ id }) => id === 'brasslight/8b0s-i5z');
  for (const [at, boost] of boosts.entries()) {
    const { step, loadOhms, supplyVolts, signalDbfs } = boost.conditions;
    const attributes = `step=${step ?? ''} load=${loadOhms} supply=${supplyVolts} signal=${signalDbfs}`;
    const directive = `:value[brasslight/8b0s-i5z bass-boost]{${attributes}}`;
    const source = new TextFile('guides/x.md', `---\nx: 1\n---\n${directive}`);
    const { body, positions } = readMarkdown(source);
    const data = { title: 'x', summary: 'x', order: 1, cautions: [], sources: [] };
    const guide = new Entry('guides', 'x', source, data, () => ({ positions, body }));
    const text = await proseHtml(answers, guide, 2, '/');
    const anchor = at === 0 ? 'value-bass-boost' : `value-bass-boost-${at + 1}`;
    expect(text).toContain(`#${anchor}"`);
    expect(text).toContain(`>${formatQuantity(boost)}</a>`);
    const rows = [...(page?.values ?? []), ...(page?.moreValues ?? []), ...(page?.otherValues ?? [])];
    expect(rows.find((row) => row.anchor === anchor)?.value).toBe(formatQuantity(boost));
  }
});

test('codes, citations and limits', async () => {
  expect(await html(':code[fellside/310]')).toBe(
    '<p><a href="/help/profiles/fellside/310/"><span class="code">31<span class="zero">0</span></span></a></p>',
  );
  expect(await html(':cited[*about* 2.83 V]{source=maker-bulletin}')).toBe(
    '<p><a href="/help/sources/maker-bulletin/" title="Source: Maker&#x27;s bulletin 7: units and their profiles"><em>about</em> 2.83 V</a></p>',
  );
  expect(await html('at most :limit[clean-distortion]')).toBe('<p>at most 1\u00a0%</p>');
  const { guide } = await answersWith(
    ':cited[3 V]{source=rider-letter} and :cited[4 V]{source=loft-session}',
  );
  expect(citedSources(guide)).toEqual(['rider-letter', 'loft-session']);
});

test('what stands for nothing is shown as written, and colons stay', async () => {
  expect(await html('A :valeu[x y] and :value[no/where clean-volts]; 9:30, note:see.')).toBe(
    '<p>A :valeu[x y] and :value[no/where clean-volts]; 9:30, note:see.</p>',
  );
  expect(await html(':::note[x]\nInside.\n:::')).toBe('<p>:::note[x]</p>\n<p>Inside.</p>');
  expect(await html('::video[x]{src=y}')).toBe('<p>::video[x]{src=y}</p>');
});

test('a link within a link becomes plain text', async () => {
  expect(await html('[a :code[moorlight/km-4417]](/units/)')).toBe(
    '<p><a href="/help/units/">a <span><span class="code">KM-4417</span></span></a></p>',
  );
});

test('footnotes lead to and fro', async () => {
  const text = await html('Text.[^1]\n\n[^1]: Note.');
  const ids = [...text.matchAll(/ id="([^"]+)"/g)].map((match) => match[1]);
  for (const [, target] of text.matchAll(/ href="#([^"]+)"/g)) expect(ids).toContain(target);
});

// What OWASP's XSS filter evasion cheat sheet begins with.
test('scripts, handlers and script addresses do not come through', async () => {
  const hostile = [
    '<script>alert(1)</script>',
    '<img src=x onerror=alert(1)>',
    '[click](javascript:alert(1))',
    '![x](data:text/html;base64,PHNjcmlwdD4=)',
    '<a href="#" onclick="alert(1)">x</a>',
  ].join('\n\n');
  expect(await html(hostile)).not.toMatch(/script|onerror|onclick|data:/i);
});

test('directives with odd content do not execute', async () => {
  const hostile = [
    ':cited[<img src=x onerror=alert(1)> 3 V]{source=maker-bulletin}',
    ':cited[[x](javascript:alert(1))]{source=maker-bulletin onclick="alert(1)"}',
    ':value[moorlight/km-4417 clean-volts]{onmouseover="alert(1)" style="x:y"}',
    ':code[moorlight/km-4417]{.a #b href="javascript:alert(1)"}',
    ':::script{src="//evil.invalid/x.js"}\nalert(1)\n:::',
    ':script[alert(1)]',
    '::iframe{src="https://evil.invalid"}',
    ':value[__proto__ constructor]{__proto__=1}',
  ].join('\n\n');
  const text = await html(hostile);
  const tags = [...text.matchAll(/<(\/?[a-z0-9]+)([^>]*)>/g)];
  expect(new Set(tags.map(([, tag]) => tag))).toEqual(new Set(['p', '/p', 'a', '/a']));
  for (const [, , attributes = ''] of tags) {
    const names = [...attributes.matchAll(/ ([a-z-]+)="/g)].map((match) => match[1] ?? '');
    for (const name of names) expect(['href', 'title', 'class']).toContain(name);
    expect(attributes).not.toMatch(/href="javascript:/i);
  }
});

test('tables, lists and emphasis come through', async () => {
  const text = await html('| a | b |\n|---|---|\n| 1 | 2 |\n\n- **one**\n- two');
  expect(text).toContain('<td>1</td>');
  expect(text).toContain('<strong>one</strong>');
});

test('any body gives HTML of known tags only', async () => {
  const piece = fc.constantFrom(
    ':value[',
    ':cited[',
    ':code[',
    ']',
    '{',
    '}',
    'source=maker-bulletin',
    '"',
    'moorlight/km-4417',
    ' clean-volts',
    '<script>',
    '<b onclick=x>',
    '[a](javascript:',
    ')',
    '\n\n',
    ':::x\n',
    '::y',
    '# ',
    '&lt;script&gt;',
    '![a](',
  );
  const { guide, answers } = await answersWith('Text.');
  expect(guide.body && answers).toBeTruthy();
  await fc.assert(
    fc.asyncProperty(fc.array(piece, { maxLength: 25 }), async (pieces) => {
      const text = await html(pieces.join(''));
      expect(text).not.toMatch(/<(script|iframe|b |object|style)/i);
      expect(text).not.toMatch(/<[a-z][^>]*\s(on\w+|style)=/i);
      expect(text).not.toMatch(/href="javascript:/i);
    }),
    { numRuns: 60 },
  );
});
