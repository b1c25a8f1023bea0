import type { Context } from '../../context.ts';
import type { LakeSourceRow } from '../../storage/lake-sources.ts';
import { listSources } from './sources.ts';

/** What has to stand wherever a source's data are shown. */
export interface Attribution {
	source: string;
	name: string;
	text: string;
	url: string | null;
	licence: string | null;
}

/** The attributions of the sources that have told a lake anything, the most trusted first. */
export async function attributionsOf(
	ctx: Context,
	uses: readonly LakeSourceRow[]
): Promise<Attribution[]> {
	const told = uses.filter(({ has_precipitation }) => has_precipitation !== null);
	if (told.length === 0) return [];
	const sources = new Map((await listSources(ctx)).map((record) => [record.id, record]));
	return told.flatMap(({ source_id }) => {
		const { source } = sources.get(source_id) ?? { source: null };
		if (!source) return [];
		const { attribution, attributionUrl, licence } = source.terms;
		return [
			{
				source: source_id,
				name: source.name,
				text: attribution,
				url: attributionUrl ?? null,
				licence: licence ?? null
			}
		];
	});
}
