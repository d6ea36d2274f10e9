/**
 * Dependencies point one way:
 * words → schemas → base → measure → codes / tables → import, decide → answers → impact / prose → check → views → plot/pages … → publish → cli.
 * The texts of the interface (words) may be said in any room.
 * Pure computation imports neither the site generator nor the file system nor the DOM.
 */
const rooms = {
  words: [],
  schemas: [],
  base: ['schemas'],
  measure: ['schemas', 'base'],
  codes: ['schemas'],
  tables: ['schemas', 'measure'],
  decide: ['schemas', 'measure', 'tables'],
  answers: ['schemas', 'base', 'measure', 'decide', 'tables'],
  impact: ['schemas', 'base', 'measure', 'decide', 'tables', 'answers'],
  prose: ['schemas', 'base', 'measure', 'answers'],
  check: ['schemas', 'base', 'measure', 'decide', 'codes', 'tables', 'answers', 'impact', 'prose'],
  import: ['schemas', 'base', 'measure', 'codes', 'tables'],
  plot: ['schemas', 'measure'],
  walk: ['schemas'],
  views: [
    'schemas',
    'base',
    'measure',
    'decide',
    'codes',
    'tables',
    'answers',
    'impact',
    'prose',
    'check',
    'import',
    'plot',
    'walk',
  ],
  site: ['schemas', 'measure', 'codes', 'tables', 'decide', 'answers', 'plot', 'walk', 'views', 'client'],
  client: ['measure', 'codes', 'tables', 'decide', 'plot', 'walk', 'views', 'worker'],
  worker: [],
  publish: [
    'schemas',
    'base',
    'measure',
    'decide',
    'codes',
    'tables',
    'answers',
    'impact',
    'prose',
    'check',
    'plot',
    'views',
    'worker',
  ],
  cli: [
    'schemas',
    'base',
    'measure',
    'decide',
    'codes',
    'tables',
    'answers',
    'impact',
    'prose',
    'check',
    'import',
    'views',
    'publish',
  ],
  demo: ['schemas', 'base', 'measure'],
};

const places = {
  schemas: '^schemas/',
  answers: '^src/(?:answers|kept-outputs)\\.ts$',
  site: '^src/(pages|layouts|components|styles|content\\.config)',
};
const place = (room) => places[room] ?? `^src/${room}/`;

const oneWay = Object.entries(rooms).map(([room, allowed]) => ({
  name: `${room}-depends-one-way`,
  severity: 'error',
  from: { path: place(room) },
  to: { path: '^(src|schemas)/', pathNot: ['words', room, ...allowed].map(place) },
}));

const pure =
  '^(schemas/(?!write-json)|src/(words|measure|codes|tables|decide|impact|prose|check|import|plot|walk)/)';

export default {
  forbidden: [
    ...oneWay,
    {
      name: 'no-circles',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-feel-library-in-the-browser',
      comment:
        'It is larger than all scripts together; pages decide with pieces (src/views/table-outcomes.ts).',
      severity: 'error',
      from: { path: '^src/(client|worker)/' },
      to: { path: '(^|/)node_modules/feelin/', reachable: true },
    },
    {
      name: 'pure-rooms-touch-no-files',
      comment:
        'Computation gets data and gives data; files are read by the base and written by publish and cli.',
      severity: 'error',
      from: { path: pure },
      to: {
        path: ['^(node:)?(fs|path|child_process|http|https|net|process|os)(/|$)', '^node_modules/astro/'],
      },
    },
  ],
  options: {
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.astro$' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'node', 'types'] },
  },
};
