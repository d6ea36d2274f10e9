/** What a phone needs to put the site on its home screen. */

import type { APIRoute } from 'astro';
import { href } from '../components/href.ts';
import { dotIcons } from '../components/mark.ts';
import { siteHere } from '../components/site-here.ts';
import { papers } from '../views/papers.ts';
import { shortName } from '../views/short-name.ts';
import { phrase } from '../words/index.ts';

export const GET: APIRoute = () => {
  const site = siteHere();
  const manifest = {
    id: href(''),
    name: site.name,
    short_name: shortName(site.name),
    description: site.tagline,
    lang: phrase('en'),
    start_url: href(''),
    scope: href(''),
    display: 'standalone',
    theme_color: site.colours.accent,
    background_color: papers.light,
    icons: [
      { src: href('favicon.svg'), type: 'image/svg+xml', sizes: 'any', purpose: 'any' },
      ...Object.entries(dotIcons)
        .filter(([name]) => name !== 'touch-180')
        .map(([name, { size, purpose }]) => ({
          src: href(`icons/${name}.png`),
          type: 'image/png',
          sizes: `${size}x${size}`,
          purpose,
        })),
    ],
  };
  return new Response(JSON.stringify(manifest), { headers: { 'content-type': 'application/manifest+json' } });
};
