import { describe, expect, test } from 'vitest';
import { evidenceOf, figureOf, numberOf, SheetDecimals } from '../../src/import/numbers.ts';

describe('one number tells', () => {
  test.each([
    ['7.59', 'point'],
    ['7,59', 'comma'],
    ['0,345', 'comma'],
    ['1234,567', 'comma'],
    ['1.234,5', 'comma'],
    ['1,234.5', 'point'],
    ['1,234,567', 'point'],
    ['1.234.567', 'comma'],
    ["1'234.5", 'point'],
    ['1 234,5', 'comma'],
    ['1,234', 'either'],
    ['12.000', 'either'],
    ['1000', 'nothing'],
    ['1e-3', 'nothing'],
    ['1.5E-3', 'point'],
    ['1,23,4', 'no number'],
    ['7.59 7.60', 'no number'],
    ['1.2.3', 'no number'],
  ])('%s: %s', (text, evidence) => {
    expect(evidenceOf(text)).toBe(evidence);
  });

  test('what is clear is read whatever the sheet says, and what is not by the sheet alone', () => {
    expect(numberOf('1.234,5', undefined)).toBe(1234.5);
    expect(numberOf("1'234.5", undefined)).toBe(1234.5);
    expect(numberOf('1\u00a0234,5', undefined)).toBe(1234.5);
    expect(numberOf('\u22123,5', undefined)).toBe(-3.5);
    expect(numberOf('1,5E-03', undefined)).toBe(0.0015);
    expect(numberOf('1,234', undefined)).toBeUndefined();
    expect(numberOf('1,234', 'comma')).toBe(1.234);
    expect(numberOf('1,234', 'point')).toBe(1234);
    expect(numberOf('1.2.3', 'point')).toBeUndefined();
  });
});

test('figures are taken off what stands behind them', () => {
  expect(figureOf('350 mV')).toEqual({ text: '350', unit: 'mV', bound: '' });
  expect(figureOf('1,25kHz')).toEqual({ text: '1,25', unit: 'kHz', bound: '' });
  expect(figureOf('< 0,05 %')).toEqual({ text: '0,05', unit: '%', bound: '<' });
  expect(figureOf('-10.0 dBV')).toEqual({ text: '-10.0', unit: 'dBV', bound: '' });
  expect(figureOf('OL')).toBeUndefined();
});

describe('a whole sheet tells', () => {
  const conclude = (cells: readonly string[], said?: 'point' | 'comma') => {
    const decimals = new SheetDecimals();
    cells.forEach((cell, row) => {
      decimals.see(cell, row + 2, 3);
    });
    return decimals.conclude(said);
  };

  test('by one cell that can be read in one way', () => {
    expect(conclude(['1,234', '7,59'])).toMatchObject({ sign: 'comma', why: 'D3 “7,59”' });
    expect(conclude(['1,234', '7.59'])).toMatchObject({ sign: 'point' });
    expect(conclude(['12', '13'])).toMatchObject({ sign: undefined });
  });

  test('what stays open is asked', () => {
    expect(conclude(['1,234', '2,345'])).toMatchObject({
      sign: undefined,
      question: 'D2 “1,234” may be 1234 or 1.234, and no other cell tells which.',
    });
    expect(conclude(['1,234'], 'comma')).toMatchObject({ sign: 'comma' });
  });

  test('both ways in one sheet is asked too', () => {
    const { question } = conclude(['7,59', '0.35']);
    expect(question).toBe(
      'Decimals are written both ways: with a comma in D2 “7,59”, with a point in D3 “0.35”.',
    );
  });
});
