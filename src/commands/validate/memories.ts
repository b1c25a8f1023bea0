import { evidenceOf, learn, type Evidence, type SiteMemory } from '#lib/model/ensemble/memory.ts';
import type { LakeWinter } from './lake-winter.ts';
import { asReading } from './lake-winter.ts';
import type { ParametersOf } from './modes.ts';

export type MemoryOf = (winter: LakeWinter) => SiteMemory | null;

export const untaught: MemoryOf = () => null;

/** For each winter what the lake's other winters taught, earlier and later ones; never its own. */
export function taughtByOtherWinters(
	winters: readonly LakeWinter[],
	parametersOf: ParametersOf
): MemoryOf {
	const evidence = new Map(
		winters.map((winter): [LakeWinter, Evidence[]] => [winter, taught(winter, parametersOf)])
	);
	return (winter) => {
		const others = winters.filter((other) => other.lakeKey === winter.lakeKey && other !== winter);
		return learn(
			others.flatMap((other) => evidence.get(other) ?? []),
			others.length
		);
	};
}

function taught(winter: LakeWinter, parametersOf: ParametersOf): Evidence[] {
	const readings = winter.readings.map(asReading);
	const past = { ...winter, freezeUpBy: null, events: [], readings };
	return evidenceOf(past, winter.lake, parametersOf(winter));
}
