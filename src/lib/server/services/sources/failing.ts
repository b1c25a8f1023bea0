import type { Context } from '../../context.ts';
import { listLogEntries } from '../../storage/fetch-log.ts';
import { readFetchStates } from '../../storage/fetch-states.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import type { SourcePart } from '../../weather/source/contract.ts';

/** What has failed again and again since the last answer. */
export interface Failing {
	part: SourcePart;
	/** The first failure of the run that the log still has. */
	since: Date;
	/** In a row. */
	failures: number;
	code: string;
	/** What was wrong and what to do. */
	text: string;
}

/** Further back the log is not read. */
const LOOKED_AT = 60;
const PARTS = ['forecast', 'history'] as const;

/** How a lake's use of a source fails at present; `null` while it is answered. */
export async function failingOf(
	{ db }: Context,
	use: Pick<LakeSourceRow, 'id' | 'source_id' | 'lake_id'>
): Promise<Failing | null> {
	const states = await readFetchStates(db, use.id);
	const part = PARTS.find((each) => (states[each]?.failures ?? 0) > 0);
	if (part === undefined) return null;
	const entries = await listLogEntries(db, {
		sourceId: use.source_id,
		lakeId: use.lake_id,
		limit: LOOKED_AT
	});
	const asked = entries.filter((entry) => entry.part === part && entry.outcome !== 'notAsked');
	const firstWell = asked.findIndex(({ outcome }) => outcome !== 'failed');
	const run = firstWell < 0 ? asked : asked.slice(0, firstWell);
	const [newest, oldest] = [run[0], run.at(-1)];
	if (!newest || !oldest) return null;
	const [fault] = JSON.parse(newest.faults) as { code: string; text: string }[];
	return {
		part,
		since: new Date(oldest.at),
		failures: states[part]?.failures ?? run.length,
		code: fault?.code ?? '',
		text: fault?.text ?? 'It did not answer.'
	};
}
