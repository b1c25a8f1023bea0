import { expect, test } from 'vitest';
import { addDays } from '#lib/model/calendar.ts';
import { iceOutForecasts, iceOutScores } from '../../../src/commands/validate/ice-out.ts';
import { asShipped, priorKnowledge } from '../../../src/commands/validate/modes.ts';
import { selectScored } from '../../../src/commands/validate/selection.ts';
import { readTidyFolder } from '../../../src/commands/validate/tidy-folder.ts';
import { inventedFolder } from './tidy-winters.ts';

const THAW_FROM = '2002-03-15';
const FROZEN_THEN_WARM = (on: string) => (on < THAW_FROM ? -8 : 12);

function forecasts(iceOutOn: string, air_degC: (on: string) => number, usesReadings = false) {
	const readings = [
		{ on: '2002-01-20', total_cm: 30 },
		{ on: '2002-03-10', total_cm: 45 }
	];
	const lakes = [{ code: 'A', freezeUpOn: '2001-12-01', iceOutOn, readings }];
	const { winters } = selectScored(readTidyFolder(inventedFolder({ lakes, air_degC })));
	return iceOutForecasts(winters, { ...priorKnowledge(asShipped), usesReadings });
}

test('ice-out is foretold on the day of the largest reading, 14 and 30 days later', () => {
	const leads_d = forecasts('2002-05-30', FROZEN_THEN_WARM).map(({ lead_d }) => lead_d);
	expect(leads_d).toEqual([0, 14, 30]);
});

test('a forecast that would be issued on the day of ice-out or later is not scored', () => {
	const leads_d = forecasts('2002-03-24', FROZEN_THEN_WARM).map(({ lead_d }) => lead_d);
	expect(leads_d).toEqual([0]);
});

test('the error is foretold minus seen: a later ice-out on record makes it smaller', () => {
	const [early] = forecasts('2002-04-10', FROZEN_THEN_WARM);
	const [late] = forecasts('2002-04-20', FROZEN_THEN_WARM);
	expect((early?.error_d ?? NaN) - (late?.error_d ?? NaN)).toBe(10);
	expect(early?.isReached).toBe(true);
});

test('readings taken by the day of issue move the forecast where they are used', () => {
	const [without] = forecasts('2002-04-20', FROZEN_THEN_WARM);
	const [anchored] = forecasts('2002-04-20', FROZEN_THEN_WARM, true);
	expect(anchored?.error_d).not.toBe(without?.error_d);
});

test('ice that outlasts the weather counts with its last day and is counted', () => {
	const [foretold] = forecasts('2002-06-20', () => -8);
	expect(foretold).toMatchObject({ error_d: 10, isReached: false, isInside80: false });
	const scores = iceOutScores(foretold ? [foretold] : []);
	expect(scores).toMatchObject({ n: 1, mae_d: 10, bias_d: 10, neverReached: 1, coverage80: 0 });
	expect(scores.after30).toMatchObject({ n: 0, mae_d: null });
});

test('the window holds a likely day and not one far from it', () => {
	const [likely] = forecasts('2002-04-05', FROZEN_THEN_WARM);
	const foretoldOn = addDays('2002-04-05', likely?.error_d ?? 0);
	const [inside] = forecasts(foretoldOn, FROZEN_THEN_WARM);
	expect(inside).toMatchObject({ error_d: 0, isInside80: true });
	const [outside] = forecasts('2002-06-20', FROZEN_THEN_WARM);
	expect(outside?.isInside80).toBe(false);
});
