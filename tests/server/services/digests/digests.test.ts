import { expect, test, vi } from 'vitest';
import { METRIC_WORDS as words } from '../../../../src/lib/model/words.ts';
import { lakeDigests } from '../../../../src/lib/server/services/digests/digests.ts';
import { readingInput } from '../../../../src/lib/server/services/reading-input.ts';
import { addReadings } from '../../../../src/lib/server/services/readings.ts';
import { drilledLake } from '../../../support/drilled-lake.ts';
import { inventedLake } from '../../../support/fresh-context.ts';

const main = (lake: string) => ({ lake, site: 'main' });
const AMPLE = { words, wait_ms: 60_000 };

async function digest(ctx: Parameters<typeof lakeDigests>[0], id: string) {
	const [state] = await lakeDigests(ctx, [main(id)], AMPLE);
	if (state?.kind !== 'known') throw new Error(`no digest: ${state?.kind}`);
	return state.digest;
}

test('a digest is kept while nothing is written, and made anew after a break-through', async () => {
	const { ctx, id } = await drilledLake();
	const first = await digest(ctx, id);
	expect(first.day?.total_m.p50).toBeGreaterThan(0.1);
	expect(await digest(ctx, id)).toBe(first);
	const reading = { on: '2027-02-09', kind: 'wentThrough', place: 'narrows', holes: [] };
	await addReadings(ctx, id, 'main', [readingInput.parse(reading)]);
	const after = await digest(ctx, id);
	expect(after.wentThroughOn).toBe('2027-02-09');
	expect(first.wentThroughOn).toBeNull();
});

test('the bound has changed by as much as it differs from the day before', async () => {
	const { ctx, id } = await drilledLake();
	const { boundChange_m, growth_m_d } = await digest(ctx, id);
	expect(Math.abs(boundChange_m ?? NaN)).toBeLessThan(0.03);
	expect(Math.abs(growth_m_d ?? NaN)).toBeLessThan(0.03);
});

test('what is not made in time is coming up, and known to who asks later', async () => {
	const { ctx, id } = await drilledLake();
	const other = await inventedLake(ctx);
	const early = await lakeDigests(ctx, [main(id), main(other.id)], { words, wait_ms: 0 });
	expect(early.map(({ kind }) => kind)).toEqual(['comingUp', 'comingUp']);
	const later = await lakeDigests(ctx, [main(id), main(other.id)], AMPLE);
	expect(later.map(({ kind }) => kind)).toEqual(['known', 'known']);
});

test('a lake that fails is told, and keeps no other from being told', async () => {
	const { ctx, id } = await drilledLake();
	const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
	const states = await lakeDigests(ctx, [main('nowhere'), main(id)], AMPLE);
	expect(states.map(({ kind }) => kind)).toEqual(['failed', 'known']);
	expect(said).toHaveBeenCalledTimes(1);
	said.mockRestore();
});
