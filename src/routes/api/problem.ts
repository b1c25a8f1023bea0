import type { z } from 'zod';

export interface Issue {
	/** The field, line or parameter; empty for the whole. */
	field: string;
	message: string;
}

/** An expected failure, told as RFC 9457 problem details. */
export class Problem extends Error {
	override name = 'Problem';
	readonly status: number;
	readonly title: string;
	readonly issues: Issue[];
	readonly headers: Record<string, string>;
	/** Members of its own, as the RFC allows. */
	readonly more: Record<string, unknown>;

	constructor(
		status: number,
		title: string,
		detail: string,
		{
			issues = [],
			headers = {},
			more = {}
		}: {
			issues?: Issue[];
			headers?: Record<string, string>;
			more?: Record<string, unknown>;
		} = {}
	) {
		super(detail);
		this.status = status;
		this.title = title;
		this.issues = issues;
		this.headers = headers;
		this.more = more;
	}
}

/** The answer that a client gets. */
export function problemResponse(problem: Problem, instance: string): Response {
	const { status, title, message, issues, more } = problem;
	const body = {
		type: 'about:blank',
		title,
		status,
		detail: message,
		instance,
		...(issues.length > 0 ? { issues } : {}),
		...more
	};
	const headers = { ...problem.headers, 'content-type': 'application/problem+json' };
	return new Response(JSON.stringify(body), { status, headers });
}

/** What a schema found, field by field. */
export function invalid(where: string, error: z.ZodError): Problem {
	const issues = error.issues.map(({ path, message }) => ({ field: path.join('.'), message }));
	const first = issues
		.slice(0, 3)
		.map(({ field, message }) => (field ? `${field} ${message}` : message))
		.join('; ');
	return new Problem(400, 'Bad Request', `The ${where} cannot be used: ${first}`, { issues });
}
