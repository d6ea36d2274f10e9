/** `readback check`: is everything sourced, and does nothing contradict itself? */
import { checkContent, isFailing, jsonReport, textReport } from '../../check/index.ts';
import { type ContentOption, exitCodes, type JsonOption, type Output, printJson } from '../command.ts';

export interface CheckOptions extends ContentOption, JsonOption {
  readonly format: 'text' | 'json';
}

export async function check(options: CheckOptions, output: Output): Promise<number> {
  const { findings } = await checkContent(options.content);
  if (options.json || options.format === 'json') printJson(output, jsonReport(findings));
  else output.out(textReport(findings, { colour: output.colour, folder: options.content }));
  return isFailing(findings) ? exitCodes.findings : exitCodes.ok;
}
