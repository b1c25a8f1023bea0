import type { Words } from '#lib/model/words.ts';
import type { Context } from '../../context.ts';
import { comingOff } from '../coming-off.ts';
import { logFailure } from '../failure.ts';
import { lakeView } from '../lake-view.ts';
import { nextTurn } from '../next-turn.ts';
import { WhileUnchanged } from '../while-unchanged.ts';
import { wordsSample } from '../words-sample.ts';
import { digestOf, type LakeDigest } from './digest.ts';

/** A few kilobytes each. */
const KEPT = 2000;
/**
 * So long a digest is taken for one of now where nothing was written: what goes by the clock in it, a
 * forecast that gets too old, is then late by as much. Ages are told from their instants.
 */
const SPAN_MS = 5 * 60_000;

const unchanged = new WhileUnchanged<LakeDigest>(KEPT, SPAN_MS);

/** A site of a lake. */
export interface DigestOf {
	lake: string;
	site: string;
}

/** A site's digest, or why there is none yet. */
export type DigestState =
	{ kind: 'known'; digest: LakeDigest } | { kind: 'comingUp' } | { kind: 'failed'; logged: string };

/** Digests under way, by database and by what is asked. */
const underWay = new WeakMap<Context['db'], Map<string, Promise<DigestState>>>();

let last: Promise<unknown> = Promise.resolve();

/**
 * Digests of sites, as far as they are known or made within a time; the others are made one after the
 * other, with turns for other requests in between, and are known to whoever asks later.
 */
export async function lakeDigests(
	ctx: Context,
	sites: readonly DigestOf[],
	{ words, wait_ms }: { words: Words; wait_ms: number }
): Promise<DigestState[]> {
	const asked = await Promise.all(sites.map((each) => digestNow(ctx, each, words)));
	let timer: ReturnType<typeof setTimeout> | undefined;
	const timeUp = new Promise<DigestState>((done) => {
		timer = setTimeout(() => done({ kind: 'comingUp' }), wait_ms);
	});
	const states = await Promise.all(
		asked.map((each) => ('made' in each ? Promise.race([each.made, timeUp]) : each))
	);
	clearTimeout(timer);
	return states;
}

/** In a box, so that it is not awaited with the question whether it is known. */
interface Coming {
	made: Promise<DigestState>;
}

async function digestNow(ctx: Context, of: DigestOf, words: Words): Promise<DigestState | Coming> {
	const key = JSON.stringify([of.lake, of.site, wordsSample(words)]);
	const { value, stamp } = await unchanged.look(ctx, of.lake, key);
	if (value !== null) return { kind: 'known', digest: value };
	const running = underWay.get(ctx.db) ?? new Map<string, Promise<DigestState>>();
	underWay.set(ctx.db, running);
	// One that was begun before something was written does for nobody who asks after it.
	const run = `${stamp} ${key}`;
	const known = running.get(run);
	if (known) return { made: known };
	const made = last
		.then(nextTurn)
		.then(() => make(ctx, of, words, key))
		.finally(() => running.delete(run));
	running.set(run, made);
	last = made;
	return { made };
}

/** To the winter's end, though home shows today alone: the lake's page asks the same and finds it kept. */
async function make(
	ctx: Context,
	{ lake, site }: DigestOf,
	words: Words,
	key: string
): Promise<DigestState> {
	try {
		const { value, keep } = await unchanged.look(ctx, lake, key);
		if (value !== null) return { kind: 'known', digest: value };
		const view = await lakeView(ctx, lake, { site, words, toWinterEnd: true });
		const digest = digestOf(view, await comingOff(ctx, view));
		if (!view.standsIn) keep(digest);
		return { kind: 'known', digest };
	} catch (cause) {
		return { kind: 'failed', logged: logFailure(`digest of ${lake}, ${site}`, cause) };
	}
}
