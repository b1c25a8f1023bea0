import { expect, test } from 'vitest';
import {
	editReading,
	leaveVersion,
	otherVersions,
	takeVersion,
	versionsAside
} from '../../../src/lib/server/services/edit-reading.ts';
import { readingInput } from '../../../src/lib/server/services/reading-input.ts';
import { addReadings, getReading } from '../../../src/lib/server/services/readings.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';

const HOLE = { on: '2027-01-10', place: 'Bay', kind: 'measured', holes: [{ total_m: 0.31 }] };

async function storedReading() {
	const ctx = await freshContext();
	const { id: lake } = await inventedLake(ctx);
	const [id = ''] = await addReadings(ctx, lake, 'main', [readingInput.parse(HOLE)]);
	const edit = (change: object, version: number | null = null) =>
		editReading(ctx, lake, id, { change, version });
	return {
		ctx,
		lake,
		id,
		edit,
		place: async () => (await getReading(ctx, lake, id)).place,
		aside: () => versionsAside(ctx, lake, id)
	};
}

test('each change counts the version up, and what it replaced is kept', async () => {
	const { ctx, lake, id, edit } = await storedReading();
	expect(await edit({ place: 'First' }, 1)).toMatchObject({ status: 'stored', version: 2 });
	expect(await edit({ place: 'Second' })).toMatchObject({ status: 'stored', version: 3 });
	const before = await otherVersions(ctx, lake, id);
	expect(before.map(({ version, kind, reading }) => [version, kind, reading.place])).toEqual([
		[2, 'replaced', 'First'],
		[1, 'replaced', 'Bay']
	]);
});

test('a change of an older version never goes over a newer one: both are kept', async () => {
	const { edit, place, aside } = await storedReading();
	await edit({ place: 'Hers' }, 1);
	const late = await edit({ place: 'His' }, 1);
	expect(late).toMatchObject({ status: 'aside', version: 2, stands: { place: 'Hers' } });
	expect(await place()).toBe('Hers');
	expect((await aside()).map(({ reading }) => reading.place)).toEqual(['His']);
});

test('what is set aside is kept once, however often it is sent', async () => {
	const { edit, aside } = await storedReading();
	await edit({ place: 'Hers' }, 1);
	await edit({ place: 'His' }, 1);
	await edit({ place: 'His' }, 1);
	expect(await aside()).toHaveLength(1);
});

test('two changes to the same are no conflict', async () => {
	const { edit, aside } = await storedReading();
	await edit({ place: 'Both' }, 1);
	expect(await edit({ place: 'Both' }, 1)).toMatchObject({ status: 'stored', version: 2 });
	expect(await aside()).toEqual([]);
});

test('whoever chooses takes the one that waits, and the other is kept as replaced', async () => {
	const { ctx, lake, id, edit, place, aside } = await storedReading();
	await edit({ place: 'Hers' }, 1);
	await edit({ place: 'His' }, 1);
	const [waits] = await aside();
	await takeVersion(ctx, lake, id, waits?.id ?? 0);
	expect(await place()).toBe('His');
	expect(await aside()).toEqual([]);
	const kept = (await otherVersions(ctx, lake, id)).map(({ reading }) => reading.place);
	expect(kept).toContain('Hers');
});

test('whoever leaves what stands is asked no more, and the other is kept as declined', async () => {
	const { ctx, lake, id, edit, place, aside } = await storedReading();
	await edit({ place: 'Hers' }, 1);
	await edit({ place: 'His' }, 1);
	const [waits] = await aside();
	await leaveVersion(ctx, lake, id, waits?.id ?? 0);
	expect(await place()).toBe('Hers');
	expect(await aside()).toEqual([]);
	expect((await otherVersions(ctx, lake, id))[0]).toMatchObject({ kind: 'declined' });
});

test('storing the waiting one over the newest version settles it', async () => {
	const { edit, place, aside } = await storedReading();
	await edit({ place: 'Hers' }, 1);
	await edit({ place: 'His' }, 1);
	await edit({ place: 'His' }, 2);
	expect(await place()).toBe('His');
	expect(await aside()).toEqual([]);
});

test('of many changes at the same moment none is lost', async () => {
	const { ctx, lake, id, edit, place } = await storedReading();
	const places = Array.from({ length: 8 }, (_, at) => `at once ${at}`);
	await Promise.all(places.map((each) => edit({ place: each }, 1)));
	const all = await otherVersions(ctx, lake, id);
	const kept = [await place(), ...all.map(({ reading }) => reading.place)];
	expect(kept.toSorted()).toEqual(['Bay', ...places].toSorted());
});
