interface Described {
	/** Plain letters only. */
	name: string;
	type: string;
	size_B?: number;
}

/** An answer that a browser stores as a file. */
export function attachment(body: BodyInit, { name, type, size_B }: Described): Response {
	return new Response(body, {
		headers: {
			'content-type': type,
			'content-disposition': `attachment; filename="${name}"`,
			'cache-control': 'no-store',
			...(size_B === undefined ? {} : { 'content-length': String(size_B) })
		}
	});
}
