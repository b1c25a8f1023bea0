import { expect, test } from 'vitest';
import { hindcast } from '../../../src/lib/model/ensemble/hindcast.ts';
import { hindsight } from '../../../src/lib/model/hindsight.ts';
import { howGood } from '../../../src/lib/server/services/how-good.ts';
import { outlookInput } from '../../../src/lib/server/services/lake-view.ts';
import { NotFound } from '../../../src/lib/server/services/not-found.ts';
import { drilledLake } from '../../support/drilled-lake.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

test('the latest winter with readings is shown, and all are counted', async () => {
	const { ctx, id } = await drilledLake();
	const good = await howGood(ctx, id);
	expect(good).toMatchObject({
		winter: '2026-27',
		winters: ['2026-27', '2025-26'],
		overWinters: 2,
		ofWinter: { count: 2 },
		ofAll: { count: 4 }
	});
	const told = hindcast(await outlookInput(ctx, id, { winter: '2026-27' }));
	expect(good.readings).toEqual(told);
	expect(good.ofWinter).toEqual(hindsight(told));
});

test('an earlier winter can be chosen, one without readings too', async () => {
	const { ctx, id } = await drilledLake();
	const earlier = await howGood(ctx, id, { winter: '2025-26' });
	expect(earlier.readings.map(({ on }) => on)).toEqual(['2025-12-15', '2026-01-10']);
	const empty = await howGood(ctx, id, { winter: '2020-21' });
	expect(empty).toMatchObject({ winter: '2020-21', readings: [], ofWinter: null, overWinters: 2 });
});

test('a lake without readings has nothing to show', async () => {
	const ctx = await freshContext();
	const { id } = await inventedLake(ctx);
	expect(await howGood(ctx, id)).toMatchObject({
		winter: null,
		winters: [],
		readings: [],
		ofAll: null,
		overWinters: 0
	});
});

test('a lake that is not there is not found', async () => {
	await expect(howGood(await freshContext(), 'nowhere')).rejects.toThrow(NotFound);
});
