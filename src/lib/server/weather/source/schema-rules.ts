import { pathProblem } from './path-rules.ts';
import type { Call, Mapping } from './schema.ts';
import { mentions } from './template.ts';

/** What the parts of a mapping must be to each other. */
export function mappingProblems(mapping: Mapping): string[] {
	const { layout, rows, time, values } = mapping;
	const problems: string[] = [];
	if (layout === 'rows' && rows === undefined) problems.push('rows must say where the rows are');
	if (layout !== 'rows' && rows !== undefined)
		problems.push('rows goes with the layout "rows" only');
	if (!values.air && !(values.min && values.max)) {
		problems.push('values must have air, or min and max: the temperature is what makes ice');
	}
	const own = Object.values(values).some((value) => value?.time !== undefined);
	if (own && layout !== 'columns') problems.push('times of their own go with "columns" only');
	if (mapping.step === 'daily' && time.form === 'interval') {
		problems.push('daily values are dated by their day, not by an interval');
	}
	if (layout === 'csv') return problems;
	return [...problems, ...pathsOf(mapping).flatMap((path) => pathProblem(path) ?? [])];
}

export function callProblems({ format, mapping, first = [], address }: Call): string[] {
	const problems: string[] = [];
	if ((format === 'csv') !== (mapping.layout === 'csv')) {
		problems.push('the layout "csv" goes with the format "csv", and only with it');
	}
	const asked = [...first.map((step) => step.address), address];
	if (mentions([asked[0] ?? ''], 'next'))
		problems.push('{next} needs a call before it that names it');
	return [...problems, ...first.flatMap(({ next }) => pathProblem(next) ?? [])];
}

function pathsOf({ rows, time, values, issued, station }: Mapping): string[] {
	const ofValues = Object.values(values).flatMap((value) =>
		value ? [value.path, value.time, value.orElse?.path] : []
	);
	const zone = typeof time.zone === 'object' && 'path' in time.zone ? time.zone.path : undefined;
	return [
		rows,
		time.path,
		time.clock,
		zone,
		...ofValues,
		issued,
		...Object.values(station ?? {})
	].filter((path) => path !== undefined);
}
