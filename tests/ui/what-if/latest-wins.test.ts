import { expect, test } from 'vitest';
import { LatestWins } from '#lib/ui/what-if/latest-wins.ts';

function queue() {
	const sent: number[] = [];
	return { sent, asked: new LatestWins<{ id: number }>(({ id }) => sent.push(id)) };
}

test('while one is answered only the newest of the others waits', () => {
	const { sent, asked } = queue();
	for (const id of [0, 1, 2, 3]) asked.ask({ id });
	expect(sent).toEqual([0]);
	expect(asked.answered(0)).toBe(true);
	expect(sent).toEqual([0, 3]);
	expect(asked.answered(3)).toBe(true);
	expect(sent).toEqual([0, 3]);
	expect(asked.isBusy).toBe(false);
});

test('an answer that nobody waits for is not wanted', () => {
	const { sent, asked } = queue();
	expect(asked.answered(7)).toBe(false);
	asked.ask({ id: 0 });
	expect(asked.answered(7)).toBe(false);
	expect(asked.isBusy).toBe(true);
	expect(sent).toEqual([0]);
});

test('what is forgotten is neither sent nor shown, and what is asked next is', () => {
	const { sent, asked } = queue();
	asked.ask({ id: 0 });
	asked.ask({ id: 1 });
	asked.forget();
	asked.ask({ id: 2 });
	expect(asked.answered(0)).toBe(false);
	expect(sent).toEqual([0, 2]);
	expect(asked.answered(2)).toBe(true);
});
