import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { FAULTY, folder, GOOD, LIBRARY, paving } from './run.ts';

describe('a plan', () => {
  test('as SVG on standard output, in the same bytes every time', () => {
    const { code, out, err } = paving(['draw', '-'], { input: GOOD });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" class="plan"[^]*<\/svg>\n$/);
    expect(out).toContain('<title id="plan-title">Back terrace</title>');
    expect(out).toMatch(/Area terrace: 4 sides; field of slab-16, \d+ whole, \d+ cut\./);
    expect(paving(['draw', '-'], { input: GOOD }).out).toBe(out);
  });

  test('in a file', () => {
    const cwd = folder({ 'terrace.paving': GOOD });
    const ran = paving(['draw', '-o', 'terrace.svg', 'terrace.paving'], { cwd });
    expect(ran).toEqual({ code: 0, out: '', err: '' });
    expect(readFileSync(path.join(cwd, 'terrace.svg'), 'utf8')).toBe(paving(['draw', 'terrace.paving'], { cwd }).out);
  });

  test('in words', () => {
    const { code, out, err } = paving(['draw', '--format', 'text', '-'], { input: GOOD });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^Plan of Back terrace\n\nArea terrace\n\n {2}Laying begins at \(0 in, 0 in\) on the plan/);
    expect(out).toMatch(/^ {2}near +12 ft +meets house-wall$/m);
    expect(out).toMatch(/^ {2}field +slab-16 +\d+ +\d+$/m);
    expect(out.endsWith('Cut wet, with lungs, eyes and ears protected.\n')).toBe(true);
  });

  test('of one format that is known', () => {
    const { code, err } = paving(['draw', '--format', 'pdf', '-'], { input: GOOD });
    expect({ code, err }).toEqual({ code: 2, err: "paving: --format can't be pdf. Write svg or text.\n" });
  });
});

describe('a job with errors', () => {
  test('is drawn as far as it is sound, and what has no numbers is told', () => {
    const cwd = folder({ 'yard.paving': FAULTY });
    const drawn = paving(['draw', 'yard.paving'], { cwd });
    const hint = 'paving: yard.paving has errors; what is sound is drawn. See: paving check yard.paving\n';
    expect({ code: drawn.code, err: drawn.err }).toEqual({ code: 1, err: hint });
    expect(drawn.out).toContain('data-key="area:terrace/field/whole/slab-16"');
    expect(drawn.out).toContain('>path: its own text has an error</text>');
    const told = paving(['draw', '--format', 'text', 'yard.paving'], { cwd });
    expect({ code: told.code, err: told.err }).toEqual({ code: 1, err: hint });
    expect(told.out).toContain('\nNo numbers\n  path: its own text has an error\n');
  });

  test('shows the outline of an area alone where its units cannot be laid', () => {
    const crossed = GOOD.replace('outline rectangle 12 x 16 ft', 'outline A to B to C to D').concat(
      'point A at (0, 0)\npoint B at (4, 4) ft\npoint C at (4, 0) ft\npoint D at (0, 4) ft\n'
    );
    const { code, out } = paving(['draw', '-'], { input: crossed.replace(/near meets[^]*?the rest/, 'all round') });
    expect(code).toBe(1);
    expect(out).toContain('>terrace: no numbers</text>');
    expect(out).toMatch(/class="plan-outline-only plan-pen"[^>]* stroke-dasharray="[\d.]+"/);
    expect(out).not.toContain('/field/');
  });
});

describe('one job at a time', () => {
  test('several are refused by name, and nothing is drawn', () => {
    const cwd = folder({ 'a.paving': GOOD, 'b.paving': GOOD });
    expect(paving(['draw', '-o', 'all.svg', '.'], { cwd })).toEqual({
      code: 2,
      out: '',
      err: 'paving: these are 2 jobs. Name one: a.paving, b.paving.\n'
    });
  });

  test('a library beside it is no second one', () => {
    const job = `use "units.paving"\n${GOOD.replace(/^unit .*\n/m, '')}`;
    const cwd = folder({ 'a.paving': job, 'units.paving': LIBRARY });
    expect(paving(['draw', '.'], { cwd })).toMatchObject({ code: 0, err: '' });
  });

  test('a library alone gives nothing to draw', () => {
    const { code, out, err } = paving(['draw', 'units.paving'], { cwd: folder({ 'units.paving': LIBRARY }) });
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('no file here has a job, so there is nothing to draw.');
  });

  test('none is asked for', () => {
    expect(paving(['draw'])).toEqual({
      code: 2,
      out: '',
      err: 'paving: name a job spec, such as: paving draw -o terrace.svg terrace.paving\n'
    });
  });

  test('one that is not there, or cannot be written', () => {
    expect(paving(['draw', 'none.paving'])).toMatchObject({ code: 2, out: '' });
    const ran = paving(['draw', '-o', 'no/such/folder.svg', '-'], { input: GOOD });
    expect(ran).toMatchObject({ code: 2, out: '' });
    expect(ran.err).toContain("can't be written");
  });
});
