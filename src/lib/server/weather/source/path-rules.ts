import parse from 'jsonpath-rfc9535/parser';

type Query = ReturnType<typeof parse>;
type Segment = Query['segments'][number];

/** Pure and quick. `match` and `search` run patterns of other people, which can take for ever. */
const FUNCTIONS = new Set(['length', 'count', 'value']);

/**
 * Why a path is refused, or `null`. Sources come from other people: a path must be read in a time
 * that grows with the answer and no faster, so nothing may walk the answer over and over again.
 */
export function pathProblem(path: string): string | null {
	const query = parsed(path);
	if (!query) {
		return `"${path}" is not a JSONPath of RFC 9535; an example is $.hourly.time[*]`;
	}
	const cost = new Cost();
	cost.segments(query.segments);
	if (cost.functions.size > 0) {
		const names = [...cost.functions].join(' and ');
		return `"${path}" calls ${names}, which can hold up the server; compare with == instead`;
	}
	if (cost.fans > 1) {
		return `"${path}" searches more than once (.. or several names in one bracket); name the way down`;
	}
	return cost.isAbsolute
		? `"${path}" compares each element with the whole answer ($ inside of a filter); use @`
		: null;
}

/** True for a path that leads to the same depth everywhere. */
export function hasFixedDepth(path: string): boolean {
	return !parsed(path)?.segments.some(({ type }) => type === 'DescendantSegment');
}

function parsed(path: string): Query | null {
	try {
		return parse(path);
	} catch {
		return null;
	}
}

/** What a path costs beyond one walk through the answer. */
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
				if (selector.type === 'FilterSelector') this.#expression(selector.value);
			}
		}
	}

	/** Anything that can stand in a filter. */
	#expression(node: object): void {
		const type = 'type' in node ? node.type : null;
		if (type === 'FunctionExpr' && 'name' in node && !FUNCTIONS.has(String(node.name))) {
			this.functions.add(`${String(node.name)}()`);
		}
		if (type === 'JsonPathQuery' || type === 'AbsSingularQuery') this.isAbsolute = true;
		if (type === 'JsonPathQuery' || type === 'RelQuery') this.segments(segmentsOf(node));
		else for (const part of Object.values(node)) this.#part(part);
	}

	#part(part: unknown): void {
		if (Array.isArray(part)) for (const each of part) this.#part(each);
		else if (typeof part === 'object' && part !== null) this.#expression(part);
	}
}

function segmentsOf(query: object): readonly Segment[] {
	return 'segments' in query && Array.isArray(query.segments) ? query.segments : [];
}
