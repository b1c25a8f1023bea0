import { error } from '@sveltejs/kit';
import { NotFound } from '#lib/server/services/not-found.ts';

/** Turns "there is no such thing" of a service into the page that says so. */
export async function found<T>(work: Promise<T>): Promise<T> {
	try {
		return await work;
	} catch (cause) {
		if (cause instanceof NotFound) error(404, `${cause.message}.`);
		throw cause;
	}
}
