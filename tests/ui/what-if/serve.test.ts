import { expect, test } from 'vitest';
import type { OutlookInput } from '#lib/model/outlook.ts';
import { answerOf } from '#lib/ui/what-if/answer.ts';
import { NO_CHANGE } from '#lib/ui/what-if/protocol.ts';
import { serve } from '#lib/ui/what-if/serve.ts';
import { inventedFuture } from '../../support/invented-future.ts';

const INPUT = { lakeId: 'pinder-lake', site: 'main' } as OutlookInput;
const ASK = { kind: 'ask', id: 3, change: { ...NO_CHANGE, snowFactor: 0 }, members: 100 } as const;

const NO_EFFECT = () => null;

test('the model is given what came first, the change and the members', () => {
	const calls: unknown[] = [];
	const answer = serve((...given) => {
		calls.push(given);
		return inventedFuture();
	}, NO_EFFECT);
	expect(answer({ kind: 'input', input: INPUT })).toBeNull();
	expect(answer(ASK)).toEqual({ kind: 'answer', id: 3, answer: answerOf(inventedFuture()) });
	expect(calls).toEqual([[INPUT, ASK.change, 100]]);
});

test('no ice is an answer, an error is told in its words', () => {
	const none = serve(() => null, NO_EFFECT);
	none({ kind: 'input', input: INPUT });
	expect(none(ASK)).toEqual({ kind: 'answer', id: 3, answer: null });
	const broken = serve(() => {
		throw new RangeError('members must be positive, got 0');
	}, NO_EFFECT);
	expect(broken(ASK)).toMatchObject({ kind: 'failed', message: 'asked before the input came' });
	broken({ kind: 'input', input: INPUT });
	expect(broken(ASK)).toMatchObject({ kind: 'failed', message: 'members must be positive, got 0' });
});

test('an answer is small: two weeks on, the peak and the dates', () => {
	const { ahead, peak, loads } = answerOf(inventedFuture());
	expect(ahead?.on).toBe('2027-02-09');
	expect(peak).toMatchObject({ on: '2027-03-25' });
	expect(loads.map(({ id }) => id)).toContain('pickup');
	expect(JSON.stringify({ ahead, peak, loads }).length).toBeLessThan(2000);
});

test('near the end of what is estimated the last day stands for two weeks on', () => {
	const { days, asOf } = inventedFuture();
	const short = days.filter(({ on }) => on <= '2027-01-30');
	expect(answerOf(inventedFuture({ days: short })).ahead?.on).toBe('2027-01-30');
	const before = days.filter(({ on }) => on < asOf);
	expect(answerOf(inventedFuture({ days: before }))).toMatchObject({ ahead: null, peak: null });
});

test('readings that wait are given to the model with the input, in the reader’s units', () => {
	const more = [{ id: 'waits' }] as never;
	const answer = serve(
		() => null,
		(input, given) => ({
			ice: null,
			loads: [],
			isAhead: false,
			asOf: `${input.words?.thickness(0.254)}, ${given.length} more`
		})
	);
	answer({ kind: 'input', input: INPUT });
	const inInches = { measure: 'imperial', mass: 'lb' } as const;
	const ask = { kind: 'readings', id: 5, more, units: inInches } as const;
	expect(answer(ask)).toMatchObject({ kind: 'effect', id: 5, effect: { asOf: '10 in, 1 more' } });
});
