/** `npm run bench [-- NAME [SIZE …]]`: runs the benchmarks, or one of them. Ratios count, not seconds. */
import { benchCheck } from './check.ts';
import { benchCodes } from './codes.ts';
import { benchDev } from './dev-edit.ts';
import { benchImpact } from './impact.ts';
import { benchMeasure } from './measure.ts';
import { benchPages } from './pages.ts';
import { benchScale } from './scale.ts';
import { benchServe } from './serve.ts';
import { benchTables } from './tables.ts';

const [name, ...sizes] = process.argv.slice(2);
const [size] = sizes;
const benches: Readonly<Record<string, () => void | Promise<void>>> = {
  measure: () => benchMeasure(Number(size ?? 10_000)),
  check: () => benchCheck(Number(size ?? 10_000)),
  impact: () => benchImpact(Number(size ?? 1000)),
  codes: () => benchCodes(Number(size ?? 10_000)),
  serve: () => benchServe(Number(size ?? 10)),
  pages: () => benchPages(Number(size ?? 3)),
  dev: () => benchDev(Number(size ?? 1000)),
  scale: () => benchScale(sizes.length > 0 ? sizes.map(Number) : [100, 1000, 10_000]),
  tables: () => benchTables(Number(size ?? 500)),
};
const chosen = name === undefined ? Object.keys(benches) : [name];
for (const one of chosen) {
  const bench = benches[one];
  if (!bench) {
    console.error(`There is no benchmark “${one}”. The benchmarks are: ${Object.keys(benches).join(', ')}.`);
    process.exitCode = 2;
    break;
  }
  await bench();
}
