import fc from 'fast-check';
import { KINDS } from './fuzz/kinds.ts';
import { Turns } from './fuzz/turns.ts';

/** So many tries share what they work on: then it is made anew. */
const TOGETHER = 250;
const LONGEST_TURN_MS = 1000;
const LONGEST_TRY_MS = 10_000;
const MOST_TOLD = 20;

/**
 * Sends so many random inputs of a kind to the app, and tells after each batch what has come of them so
 * far. The same seed sends the same. `begin N` goes before each batch, so that one that never ends can be
 * named.
 */
async function work(name: string, count: number, seed: number): Promise<void> {
	const kind = KINDS[name];
	if (!kind)
		throw new Error(`there is no kind ${name}; there are ${Object.keys(KINDS).join(', ')}`);
	const turns = new Turns();
	const faults: string[] = [];
	const statuses: Record<number, number> = {};
	let longestTry_ms = 0;
	let longestTurn_ms = 0;
	for (let done = 0; done < count; done += TOGETHER) {
		say(`begin ${done}`);
		const opened = await kind.open();
		const numRuns = Math.min(TOGETHER, count - done);
		for (const input of fc.sample(kind.inputs, { numRuns, seed: seed + done })) {
			await turns.begin();
			const { status, text } = await opened.take(input).catch(thrown);
			const { whole_ms, longest_ms } = await turns.end();
			longestTry_ms = Math.max(longestTry_ms, whole_ms);
			longestTurn_ms = Math.max(longestTurn_ms, longest_ms);
			statuses[status] = (statuses[status] ?? 0) + 1;
			const isSlow = longest_ms > LONGEST_TURN_MS || whole_ms > LONGEST_TRY_MS;
			if ((status < 500 && !isSlow) || faults.length >= MOST_TOLD) continue;
			const sent = JSON.stringify(input)?.slice(0, 1500);
			faults.push(`${status} after ${Math.round(whole_ms)} ms: ${text.slice(0, 600)}\n  ${sent}`);
		}
		await opened.close();
		report(done + numRuns);
	}
	function report(tried: number): void {
		const rss_MB = Math.round(process.resourceUsage().maxRSS / 1024);
		const times = {
			longestTry_ms: Math.round(longestTry_ms),
			longestTurn_ms: Math.round(longestTurn_ms)
		};
		say(JSON.stringify({ count: tried, faults, statuses, ...times, rss_MB }));
	}
}

function thrown(cause: unknown): { status: number; text: string } {
	const text = cause instanceof Error ? (cause.stack ?? cause.message) : String(cause);
	return { status: 500, text };
}

function say(line: string): void {
	process.stdout.write(`${line}\n`);
}

const [name = '', count = '100', seed = '1'] = process.argv.slice(2);
await work(name, Number(count), Number(seed));
