import { isTimeZone } from './lake-days.ts';
import { hasFixedDepth, pathProblem } from './path-rules.ts';
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
	if (rows !== undefined && !hasFixedDepth(rows))
		problems.push('rows must name the way down, without ..');
	const own = Object.values(values).some((value) => value?.time !== undefined);
	if (own && layout !== 'columns') problems.push('times of their own go with "columns" only');
	if (mapping.step === 'daily' && time.form === 'interval') {
		problems.push('daily values are dated by their day, not by an interval');
	}
	if (typeof time.zone === 'object' && 'name' in time.zone && !isTimeZone(time.zone.name)) {
		problems.push(`"${time.zone.name}" is not a time zone; use a name such as Europe/Oslo`);
	}
	const paths = layout === 'csv' ? [] : pathsOf(mapping);
	return [
		...problems,
		...amountProblems(mapping),
		...paths.flatMap((path) => pathProblem(path) ?? [])
	];
}

/** Amounts are of a span: before their time or after it, but not of a moment. */
function amountProblems({ time, values }: Mapping): string[] {
	const { precipitation, snowfall } = values;
	const problems: string[] = [];
	for (const [name, value] of Object.entries({ precipitation, snowfall })) {
		for (const each of value ? [value, value.orElse] : []) {
			if (each && (each.stamp ?? time.stamp) === 'instant') {
				problems.push(`${name} must say with its stamp whether its time is the start or the end`);
			}
		}
	}
	if (precipitation?.unit.endsWith('rain') && !snowfall) {
		problems.push('rain alone needs the snowfall beside it; without it, snow is unknown');
	}
	return problems;
}

type AnyCall = Pick<Call, 'format' | 'first' | 'address'> & { mapping: Mapping | null };

export function callProblems({ format, mapping, first = [], address }: AnyCall): string[] {
	const problems: string[] = [];
	if (mapping && (format === 'csv') !== (mapping.layout === 'csv')) {
		problems.push('the layout "csv" goes with the format "csv", and only with it');
	}
	const asked = [...first.map((step) => step.address), address];
	if (mentions([asked[0] ?? ''], 'next'))
		problems.push('{next} needs a call before it that names it');
	return [...problems, ...first.flatMap(({ next }) => pathProblem(next) ?? [])];
}

/** All paths from the root of an answer; those of rows behind the way to the rows. */
function pathsOf({ layout, rows, time, values, issued, station }: Mapping): string[] {
	const ofValues = Object.values(values).flatMap((value) =>
		value ? [value.path, value.time, value.orElse?.path] : []
	);
	const zone = typeof time.zone === 'object' && 'path' in time.zone ? time.zone.path : undefined;
	const inRows = [time.path, time.clock, ...ofValues].filter((path) => path !== undefined);
	const ofAnswer = [rows, zone, issued, ...Object.values(station ?? {})];
	const behindRows =
		layout === 'rows' && rows !== undefined ? inRows.map((path) => rows + path.slice(1)) : [];
	return [...ofAnswer.filter((path) => path !== undefined), ...inRows, ...behindRows];
}
