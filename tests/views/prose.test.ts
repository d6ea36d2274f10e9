import { expect, test } from 'vitest';
import { TextFile } from '../../src/base/index.ts';
import { readMarkdown } from '../../src/base/markdown.ts';
import { siteLinks } from '../../src/views/guide-page.ts';
import { proseHtml } from '../../src/views/prose.ts';

const html = (markdown: string, topLevel: 2 | 3 = 2): Promise<string> =>
  proseHtml(
    readMarkdown(new TextFile('guides/x.md', `---\ntitle: x\n---\n\n${markdown}`)).body,
    topLevel,
    siteLinks('/help/'),
  );

test('headings get ids and begin at the level of the page', async () => {
  expect(await html('# Set the gain\n\n## Set the gain')).toBe(
    '<h2 id="set-the-gain">Set the gain</h2>\n<h3 id="set-the-gain-2">Set the gain</h3>',
  );
  expect(await html('## Why', 3)).toBe('<h3 id="why">Why</h3>');
});

test('links from the top of the site go below the base path, others stay', async () => {
  expect(await html('[unit](/units/brasslight/) [here](#why) [there](https://example.invalid/a)')).toBe(
    '<p><a href="/help/units/brasslight/">unit</a> <a href="#why">here</a> <a href="https://example.invalid/a">there</a></p>',
  );
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

test('tables, lists and emphasis come through', async () => {
  const text = await html('| a | b |\n|---|---|\n| 1 | 2 |\n\n- **one**\n- two');
  expect(text).toContain('<td>1</td>');
  expect(text).toContain('<strong>one</strong>');
});
