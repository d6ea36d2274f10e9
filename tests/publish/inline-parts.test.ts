import { expect, test } from 'vitest';
import { headerPolicy, pagePolicy, policyDigests } from '../../src/publish/content-policy.ts';
import { inlineParts } from '../../src/publish/inline-parts.ts';

test('scripts and styles within a page, and the attributes that are either', () => {
  expect(
    inlineParts(
      '<style>a{}</style><p style="color:red" title="on">x</p><script type="module">let a = "<b style>";</script>' +
        '<script src="a.js"></script><script type="application/json">{}</script><img alt="" onerror=run()>',
    ),
  ).toEqual({
    styles: ['a{}'],
    scripts: ['let a = "<b style>";'],
    attributes: ['p style', 'img onerror'],
  });
});

test('what stands in an attribute, a comment or a text is no script', () => {
  const html = `<p title="<script>evil()</script>">&lt;script>evil()</p><!-- <script>evil()</script> --><i data-x='"><style>'></i>`;
  expect(inlineParts(html)).toEqual({ styles: [], scripts: [], attributes: [] });
});

// The digest of "abc" is the worked example of SHA-256 in FIPS 180-4 (published with the standard by NIST).
test('digests are those of SHA-256, in base64', () => {
  const [digest] = policyDigests({ scripts: ['abc'], styles: [] }).scripts;
  const hex = Buffer.from(/'sha256-(.+)'/.exec(digest ?? '')?.[1] ?? '', 'base64').toString('hex');
  expect(hex).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
});

test('the policy of the header allows what any page needs, and says who may frame them', () => {
  const one = policyDigests({ scripts: ['a'], styles: ['s'] });
  const other = policyDigests({ scripts: ['b'], styles: ['s'] });
  const policy = headerPolicy([one, other]);
  for (const digest of [...one.scripts, ...other.scripts, ...one.styles]) expect(policy).toContain(digest);
  expect(policy).toContain("frame-ancestors 'self'");
  expect(pagePolicy(one)).not.toContain('frame-ancestors');
  expect(pagePolicy(one)).not.toContain([...other.scripts][0]);
  expect(policy).not.toMatch(/unsafe-inline|'unsafe-eval'|https?:|\*/);
});
