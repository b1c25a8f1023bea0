import { expect, test } from 'vitest';
import { apiAddresses, apiOf } from '../../support/api.ts';
import { freshContext } from '../../support/fresh-context.ts';

interface Document {
	openapi: string;
	info: { title: string; version: string };
	paths: Record<string, Record<string, Operation>>;
	components: { schemas: Record<string, unknown> };
}

interface Operation {
	summary: string;
	parameters?: { in: string; name: string; required?: boolean }[];
	requestBody?: { content: Record<string, { schema: unknown }> };
	responses: Record<string, { description: string; content?: Record<string, unknown> }>;
}

async function document(): Promise<Document> {
	const response = await apiOf(await freshContext())('GET', '/api/v1/openapi.json');
	return (await response.json()) as Document;
}

function operations(paths: Document['paths']) {
	return Object.entries(paths).flatMap(([address, item]) =>
		Object.entries(item).map(([method, operation]) => ({ address, method, operation }))
	);
}

function references(node: unknown): string[] {
	if (typeof node !== 'object' || node === null) return [];
	return Object.entries(node).flatMap(([key, value]) =>
		key === '$ref' ? [String(value)] : references(value)
	);
}

test('the description is of version 3.1 and names itself', async () => {
	const { openapi, info } = await document();
	expect(openapi).toMatch(/^3\.1\.\d+$/);
	expect(info).toMatchObject({ title: 'Frostledger', version: '1' });
});

test('it describes every address and method that answers, and no other', async () => {
	const { paths } = await document();
	const described = operations(paths).map(({ address, method }) => `${method} ${address}`);
	const answered = apiAddresses
		.filter(({ address }) => address !== '/api/v1/openapi.json')
		.flatMap(({ address, methods }) => methods.map((name) => `${name.toLowerCase()} ${address}`));
	expect(described.toSorted()).toEqual(answered.toSorted());
});

test('every schema that is referred to is there', async () => {
	const whole = await document();
	const referred = new Set(references(whole));
	expect(referred.size).toBeGreaterThan(10);
	const missing = [...referred].filter(
		(reference) =>
			!reference.startsWith('#/components/schemas/') ||
			!(reference.slice('#/components/schemas/'.length) in whole.components.schemas)
	);
	expect(missing).toEqual([]);
});

test('every name in an address is a required parameter', async () => {
	const { paths } = await document();
	for (const { address, operation } of operations(paths)) {
		const inAddress = [...address.matchAll(/\{(\w+)\}/g)].map((hit) => hit[1]);
		const parameters = (operation.parameters ?? []).filter((parameter) => parameter.in === 'path');
		expect(parameters.map(({ name }) => name).toSorted()).toEqual(inAddress.toSorted());
		expect(parameters.every(({ required }) => required)).toBe(true);
	}
});

test('every operation has a summary, a success and problem details for the rest', async () => {
	const { paths } = await document();
	for (const { operation } of operations(paths)) {
		expect(operation.summary).not.toBe('');
		expect(Object.keys(operation.responses).some((status) => /^2\d\d$/.test(status))).toBe(true);
		expect(operation.responses['default']?.content).toHaveProperty(['application/problem+json']);
	}
});

test('what must be sent is told apart from what may be', async () => {
	const { components } = await document();
	expect(components.schemas['NewLake']).toMatchObject({
		required: ['name', 'latitude', 'longitude', 'water'],
		additionalProperties: false
	});
	expect(components.schemas['LakeChange']).not.toHaveProperty('required');
});

test('a change of a reading tells its headers and what they refuse', async () => {
	const { paths } = await document();
	const { patch, delete: remove } = paths['/api/v1/lakes/{lake}/readings/{id}'] ?? {};
	const post = paths['/api/v1/lakes/{lake}/readings']?.['post'];
	const headers = (operation: Operation | undefined) =>
		(operation?.parameters ?? []).flatMap((one) => (one.in === 'header' ? [one.name] : []));
	expect(headers(post)).toEqual(['frostledger-logged-by']);
	expect(headers(patch)).toEqual(['frostledger-logged-by', 'if-match']);
	expect(headers(remove)).toEqual(['frostledger-logged-by', 'if-match']);
	for (const operation of [post, patch, remove]) {
		expect(operation?.responses['412']?.content).toHaveProperty(['application/problem+json']);
	}
});
