import { FACTS } from '#lib/ui/offline/names.ts';

/** The answer as it is kept: packed, with its facts beside it. */
export async function packed(response: Response, facts: Record<string, string>): Promise<Response> {
	const type = response.headers.get('content-type') ?? '';
	const isPacked = 'CompressionStream' in self && response.body !== null;
	const body = isPacked ? response.body.pipeThrough(new CompressionStream('gzip')) : response.body;
	const blob = await new Response(body).blob();
	return new Response(blob, {
		headers: {
			'content-type': type,
			...policyOf(response.headers),
			[FACTS.bytes]: String(blob.size),
			...(isPacked ? {} : { [FACTS.plain]: '1' }),
			...facts
		}
	});
}

/** The answer as it came. */
export function unpacked(kept: Response): Response {
	const type = kept.headers.get('content-type') ?? '';
	const isPlain = kept.headers.has(FACTS.plain) || kept.body === null;
	const body = isPlain ? kept.body : kept.body.pipeThrough(new DecompressionStream('gzip'));
	return new Response(body, { headers: { 'content-type': type, ...policyOf(kept.headers) } });
}

/** What a page may load it may load from here too, and no more. */
export function policyOf(headers: Headers): Record<string, string> {
	const policy = headers.get('content-security-policy');
	return policy === null ? {} : { 'content-security-policy': policy };
}
