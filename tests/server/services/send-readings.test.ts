import { expect, test } from 'vitest';
import { getReading, listReadings } from '../../../src/lib/server/services/readings.ts';
import {
	ClientIdTaken,
	sendReadings,
	sentReading
} from '../../../src/lib/server/services/send-readings.ts';
import { freshContext, inventedLake } from '../../support/fresh-context.ts';
import { updateReading } from '../../support/update-reading.ts';

const HOLE = { on: '2027-01-10', place: 'Bay', kind: 'measured', holes: [{ total_m: 0.31 }] };
const ids = Array.from({ length: 4 }, () => crypto.randomUUID());

async function lakeToSendTo() {
	const ctx = await freshContext();
	const { id: lake } = await inventedLake(ctx);
	const send = (...readings: object[]) =>
		sendReadings(
			ctx,
			lake,
			'main',
			readings.map((reading) => sentReading.parse(reading))
		);
	return { ctx, lake, send, stored: () => listReadings(ctx, lake, 'main') };
}

test('what is sent twice under one id is stored once, and answered alike', async () => {
	const { send, stored } = await lakeToSendTo();
	const first = await send({ ...HOLE, clientId: ids[0] });
	expect(await send({ ...HOLE, clientId: ids[0] })).toEqual(first);
	expect(await send({ ...HOLE, clientId: ids[0]?.toUpperCase() })).toEqual(first);
	expect(await stored()).toHaveLength(1);
});

test('two at the same moment are stored once', async () => {
	const { send, stored } = await lakeToSendTo();
	const both = await Promise.all([1, 2].map(() => send({ ...HOLE, clientId: ids[0] })));
	expect(both[0]).toEqual(both[1]);
	expect(await stored()).toHaveLength(1);
});

test('another reading under a known id is refused, and nothing of its parcel is stored', async () => {
	const { send, stored } = await lakeToSendTo();
	await send({ ...HOLE, clientId: ids[0] });
	const other = { ...HOLE, holes: [{ total_m: 0.32 }], clientId: ids[0] };
	await expect(send({ ...HOLE, place: 'Point', clientId: ids[1] }, other)).rejects.toThrow(
		ClientIdTaken
	);
	expect((await stored()).map(({ holes }) => holes[0]?.total_m)).toEqual([0.31]);
});

test('without an id the same hole is stored as often as it comes', async () => {
	const { send, stored } = await lakeToSendTo();
	await send(HOLE);
	await send(HOLE);
	expect(await stored()).toHaveLength(2);
});

test('holes of one visit join one reading, each once', async () => {
	const { ctx, lake, send, stored } = await lakeToSendTo();
	await send({ ...HOLE, clientId: ids[0] });
	const [joined] = await send({
		...HOLE,
		holes: [{ total_m: 0.29 }],
		clientId: ids[1],
		joins: ids[0]
	});
	await send({ ...HOLE, holes: [{ total_m: 0.29 }], clientId: ids[1], joins: ids[0] });
	await send({ ...HOLE, holes: [{ total_m: 0.3 }], clientId: ids[2], joins: ids[0] });
	expect(await stored()).toHaveLength(1);
	const { holes } = await getReading(ctx, lake, joined ?? '');
	expect(holes.map(({ total_m }) => total_m)).toEqual([0.31, 0.29, 0.3]);
});

test('a hole of another place joins nothing', async () => {
	const { send, stored } = await lakeToSendTo();
	await send({ ...HOLE, clientId: ids[0] });
	await send({ ...HOLE, place: 'Point', clientId: ids[1], joins: ids[0] });
	expect(await stored()).toHaveLength(2);
});

test('what was mended on the server since is not sent over by a repetition', async () => {
	const { ctx, lake, send, stored } = await lakeToSendTo();
	const [id = ''] = await send({ ...HOLE, clientId: ids[0] });
	await updateReading(ctx, lake, id, { place: 'Mended' });
	await send({ ...HOLE, clientId: ids[0] });
	expect((await stored()).map(({ place }) => place)).toEqual(['Mended']);
});

test('an id that is none is refused', () => {
	expect(sentReading.safeParse({ ...HOLE, clientId: 'one' }).success).toBe(false);
});

test('a hole of a day to come is stored by nobody: it would be fresh once its day is there', async () => {
	const { send, stored, ctx, lake } = await lakeToSendTo();
	const ahead = { ...HOLE, on: '2027-02-11' };
	await expect(send(ahead)).rejects.toThrow('2027-02-11 is after today at the lake, 2027-02-10');
	await expect(send(HOLE, ahead)).rejects.toThrow('is after today');
	expect(await stored()).toEqual([]);
	const [id = ''] = await send({ ...HOLE, on: '2027-02-10' });
	const moved = updateReading(ctx, lake, id, { on: '2027-02-28' });
	await expect(moved).rejects.toThrow('is after today');
	expect((await getReading(ctx, lake, id)).on).toBe('2027-02-10');
});
