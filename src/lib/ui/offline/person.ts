import { PERSON_COOKIE } from './names.ts';

/** Who uses this device, by the id that the server has for them. */
export interface Person {
	id: string;
	name: string;
}

/** Nobody is signed in, as where nobody has to. */
export const NOBODY: Person = { id: 'machine', name: '' };
/** Typed where there was no telling; nobody is signed in under this id. */
export const UNKNOWN: Person = { id: 'unknown', name: '' };
const GUEST = 'guest';

/** Who is signed in on this device, as far as it knows: for a page, or a worker that is told. */
export async function personHere(): Promise<Person> {
	const { document, cookieStore } = globalThis as Around;
	if (document) return personIn(document.cookie);
	if (!cookieStore) return UNKNOWN;
	const kept = await cookieStore.get(PERSON_COOKIE).catch(() => null);
	return personIn(`${PERSON_COOKIE}=${kept?.value ?? ''}`);
}

interface Around {
	/** Of a page; a worker has none. */
	document?: { cookie: string };
	/** Not in every browser. */
	cookieStore?: { get(name: string): Promise<{ value?: string } | null> };
}

/** @example personIn('') // => NOBODY */
export function personIn(cookies: string): Person {
	const start = `${PERSON_COOKIE}=`;
	const found = cookies.split('; ').find((each) => each.startsWith(start));
	try {
		const { id, name } = JSON.parse(decodeURIComponent(found?.slice(start.length) ?? '')) as Person;
		return typeof id === 'string' && typeof name === 'string' ? { id, name } : NOBODY;
	} catch {
		return NOBODY;
	}
}

/** Whether somebody may put their own name to what another has typed here. */
export function maySend({ id }: Person): boolean {
	return id !== GUEST;
}

/** Whom it waits for, in a sentence; empty where it is one’s own and the server has not said otherwise. */
export function waitsFor(by: Person, here: Person, held: 'away' | 'gone' | null): string {
	// Nobody may be signed in any more where the device last knew somebody.
	if (by.id === here.id && held === null) return '';
	if (by.id === UNKNOWN.id) return 'It is not known here who typed it.';
	if (by.id === NOBODY.id) return 'It was typed while nobody was signed in here.';
	if (held !== 'gone') return `It waits for ${by.name} to sign in here.`;
	return `${by.name} typed it and does not come in any more, so that it cannot be sent under that name.`;
}

/** @example asWords({ id: 'p-1', name: 'Invented Helper' }) // => 'as Invented Helper' */
export function asWords({ id, name }: Person): string {
	return id === NOBODY.id ? 'from this machine' : `as ${name}`;
}
