import parse from 'jsonpath-rfc9535/parser';

type Query = ReturnType<typeof parse>;
type Segment = Query['segments'][number];

/**
 * Why a path is refused, or `null`. Sources come from other people: a path must be read in a time
 * that grows with the answer and no faster, so nothing may walk the answer over and over again.
 */
export function pathProblem(path: string): string | null {
	let query: Query;
	try {
		query = parse(path);
	} catch {
		return `"${path}" is not a JSONPath of RFC 9535; an example is $.hourly.time[*]`;
	}
	const cost = new Cost();
	cost.segments(query.segments);
	if (cost.functions.size > 0) {
		const names = [...cost.functions].join(', ');
		return `"${path}" calls ${names}; take the values by their names, without functions`;
	}
	if (cost.fans > 1) {
		return `"${path}" searches more than once (.. or several names in one bracket); name the way down`;
	}
	return cost.isAbsolute
		? `"${path}" compares each element with the whole answer ($ inside of a filter); use @`
		: null;
}

class Cost {
	readonly functions = new Set<string>();
	/** Steps that visit a part of the answer more than once. */
	fans = 0;
	isAbsolute = false;

	segments(segments: readonly Segment[]): void {
		for (const { type, node } of segments) {
			if (type === 'DescendantSegment') this.fans += 1;
			if (node.type !== 'BracketedSelection') continue;
			if (node.selectors.length > 1) this.fans += 1;
			for (const selector of node.selectors) {
				if (selector.type === 'FilterSelector') this.expression(selector.value);
			}
		}
	}

	/** Anything that can stand in a filter. */
	expression(node: object): void {
		if ('type' in node && node.type === 'FunctionExpr' && 'name' in node) {
			this.functions.add(`${String(node.name)}()`);
		}
		if ('type' in node && (node.type === 'JsonPathQuery' || node.type === 'AbsSingularQuery')) {
			this.isAbsolute = true;
		}
		if ('segments' in node) this.segments(segmentsOf(node.segments));
		else for (const part of Object.values(node)) this.#part(part);
	}

	#part(part: unknown): void {
		if (Array.isArray(part)) for (const each of part) this.#part(each);
		else if (typeof part === 'object' && part !== null) this.expression(part);
	}
}

/** Segments of singular queries are wrapped otherwise and cost nothing. */
function segmentsOf(segments: unknown): Segment[] {
	return Array.isArray(segments)
		? segments.filter((segment: Segment) => segment.type !== undefined && 'node' in segment)
		: [];
}
