import fc from 'fast-check';
import { mutated } from './mutate-text.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const odd: fc.Arbitrary<Json> = fc.oneof(
	fc.constantFrom<Json>(
		null,
		true,
		0,
		-1,
		1e308,
		-1e-300,
		2 ** 53,
		0.1,
		'',
		' ',
		'null',
		'2026-02-30',
		'2027-01-20',
		'main',
		'__proto__',
		'\u0000',
		'\u202e',
		'x'.repeat(5000),
		[],
		{},
		[[[]]],
		[null],
		{ a: { b: { c: [] } } }
	),
	fc.jsonValue({ maxDepth: 3 }) as fc.Arbitrary<Json>
);

type Edit = (node: Json) => Json;

/** Changes one node of a tree, found by a walk along `way`. */
const edit = fc.tuple(fc.array(fc.nat(50), { maxLength: 6 }), fc.nat(5), odd).map(
	([way, kind, piece]): Edit =>
		(tree) =>
			changeAt(tree, way, (node) => change(node, kind, piece))
);

/** The text of a JSON value like one of `values`: changed in its nodes, now and then in its letters. */
export function mutatedJson(values: readonly unknown[]): fc.Arbitrary<string> {
	const tree = fc
		.tuple(fc.constantFrom(...(values as Json[])), fc.array(edit, { maxLength: 5 }))
		.map(([from, edits]) => JSON.stringify(edits.reduce((now, each) => each(now), from)));
	return fc.oneof({ weight: 5, arbitrary: tree }, { weight: 1, arbitrary: mutated(tree) });
}

function changeAt(node: Json, [step, ...rest]: readonly number[], make: Edit): Json {
	const inner = entriesOf(node);
	if (step === undefined || inner.length === 0) return make(node);
	const [key, value] = inner[step % inner.length] ?? ['', null];
	const changed = changeAt(value, rest, make);
	if (Array.isArray(node)) return node.with(Number(key), changed);
	return { ...(node as { [key: string]: Json }), [key]: changed };
}

function change(node: Json, kind: number, piece: Json): Json {
	const inner = entriesOf(node);
	if (kind === 0 && inner.length > 0) return withoutFirst(node);
	if (kind === 1 && Array.isArray(node) && node.length > 0)
		return Array.from({ length: 40 }, (_, at) => node[at % node.length] ?? null);
	if (kind === 2 && typeof node === 'object' && node !== null && !Array.isArray(node))
		return { ...node, [typeof piece === 'string' ? piece : 'unknown']: piece };
	if (kind === 3) return [node];
	if (kind === 4) return { value: node };
	return piece;
}

function withoutFirst(node: Json): Json {
	if (Array.isArray(node)) return node.slice(1);
	return Object.fromEntries(entriesOf(node).slice(1));
}

function entriesOf(node: Json): [string, Json][] {
	return typeof node === 'object' && node !== null ? Object.entries(node) : [];
}
