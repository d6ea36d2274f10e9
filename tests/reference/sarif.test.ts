/**
 * SARIF logs against the JSON Schema of SARIF 2.1.0 (OASIS, sarif-schema-2.1.0, release 5), as the npm
 * package @microsoft/jest-sarif 1.0.0-beta.0 (MIT) ships it.
 */
import { readFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { type Report, rules, sarifReport } from '../../src/check/index.ts';
import { brokenReport } from '../check/reporters/broken-example.ts';

const schemaFile = new URL('sarif-2.1.0-rtm.5.schema.json', import.meta.url);
// It is written for JSON Schema draft 4. All it has of it that later drafts have not is the name of its own id
// (none of its bounds are exclusive), so without that it means the same to Ajv.
const { id, $schema, ...schema } = JSON.parse(readFileSync(schemaFile, 'utf8')) as Record<string, unknown>;
const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
addFormats.default(ajv);
const validate = ajv.compile(schema);

const report = await brokenReport();

interface Log {
  runs: {
    tool: { driver: { rules: { id: string }[] } };
    results: {
      ruleId: string;
      ruleIndex: number;
      level: string;
      partialFingerprints: Record<string, string>;
      locations: { physicalLocation: { artifactLocation: { uri: string }; region: object } }[];
    }[];
  }[];
}

function logOf(given: Report): Log {
  return JSON.parse(JSON.stringify(sarifReport(given, rules))) as Log;
}

describe('SARIF 2.1.0', () => {
  test('the schema is that of SARIF 2.1.0, and refuses what is no log', () => {
    expect($schema).toBe('http://json-schema.org/draft-04/schema#');
    expect(id).toMatch(/sarif-schema-2\.1\.0|sarif-2\.1\.0-rtm\.5/);
    expect(JSON.stringify(schema)).not.toContain('"exclusiveM');
    expect(validate({ version: '2.1.0' })).toBe(false);
    expect(validate({ version: '2.1.0', runs: [{ tool: { driver: { rules: [] } } }] })).toBe(false);
  });

  test.each([
    ['with findings', report],
    ['without', { ...report, findings: [] }],
    ['since a revision', { ...report, since: { revision: 'main', commit: 'abc', older: 1 } }],
    ['in a folder whose name needs escaping', { ...report, folder: '../bench & Höhe/50%' }],
  ])('a log %s is valid', (_, given) => {
    expect(validate(logOf(given)), JSON.stringify(validate.errors)).toBe(true);
  });

  test('every result names its rule, level and place, and can be told from the others', () => {
    const [run] = logOf(report).runs;
    expect(run?.results).toHaveLength(report.findings.length);
    run?.results.forEach((result, index) => {
      expect(run.tool.driver.rules[result.ruleIndex]?.id).toBe(result.ruleId);
      expect(result.level).toBe(report.findings[index]?.severity);
      const { file, line, column, endLine, endColumn } = report.findings[index]?.place ?? {};
      const [location] = result.locations;
      expect(location?.physicalLocation.artifactLocation.uri).toBe(`content/${file}`);
      expect(location?.physicalLocation.region).toEqual({
        startLine: line,
        startColumn: column,
        endLine,
        endColumn,
      });
    });
    const prints = run?.results.map(({ partialFingerprints }) => partialFingerprints['findingHash/v1']);
    expect(new Set(prints).size).toBe(report.findings.length);
  });

  test('fingerprints stay where lines are added above, and alike findings are counted on', () => {
    const [first] = report.findings;
    if (!first) throw new Error('no finding');
    const prints = (given: Report) =>
      logOf(given).runs[0]?.results.map(({ partialFingerprints }) => partialFingerprints['findingHash/v1']);
    const [one, two] = prints({ ...report, findings: [first, first] }) ?? [];
    expect(one).not.toBe(two);
    expect(prints({ ...report, findings: [first] })).toEqual([one]);
  });
});
