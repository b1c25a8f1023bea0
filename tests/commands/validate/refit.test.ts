import { expect, test } from 'vitest';
import type { LakeWinter } from '../../../src/commands/validate/lake-winter.ts';
import { REFITTED, refitted } from '../../../src/commands/validate/refit.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

function lake(code: string, total_cm: number) {
	return { code, freezeUpOn: '2001-12-01', readings: [{ on: '2002-01-15', total_cm }] };
}

function invented(a_cm: number, b_cm: number): LakeWinter[] {
	const lakes = [lake('A', a_cm), lake('B', b_cm)];
	return selectScored(readTidyFolder(inventedFolder({ lakes, air_degC: () => -10 }))).winters;
}

function parametersOf(code: string, winters: LakeWinter[]) {
	const winter = winters.find(({ lakeKey }) => lakeKey === `invented/${code}`);
	return winter ? refitted(winters)(winter) : undefined;
}

test('the readings of a lake do not touch the parameters that it is scored with', () => {
	const parameters = parametersOf('A', invented(20, 40));
	expect(parameters).toBeDefined();
	expect(parametersOf('A', invented(60, 40))).toEqual(parameters);
});

test('the readings of the other lakes do: thicker ice there asks for more exchange', () => {
	const thin = parametersOf('A', invented(40, 30));
	const thick = parametersOf('A', invented(40, 75));
	expect(thick?.exchange_W_m2K).toBeGreaterThan(thin?.exchange_W_m2K ?? Infinity);
});

test('a lake alone cannot be left out', () => {
	const alone = invented(40, 50).filter(({ lakeKey }) => lakeKey === 'invented/A');
	expect(() => refitted(alone)).toThrow('two lakes or more');
});

test('what is fitted anew is declared with a range', () => {
	expect(REFITTED.length).toBeGreaterThanOrEqual(3);
	expect(REFITTED.every(({ low, high }) => low < high)).toBe(true);
});
