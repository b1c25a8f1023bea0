import { StorageRefusal } from '../refusal.ts';

/** A libSQL server and what it wants to be shown. */
export interface DatabaseAddress {
	url: URL;
	token: string | null;
	/** How it is named in sentences: without what may be secret. */
	host: string;
}

const SCHEMES: Readonly<Record<string, string>> = {
	'http:': 'http:',
	'https:': 'https:',
	'libsql:': 'https:'
};

/**
 * `FROSTLEDGER_DATABASE`, with `FROSTLEDGER_DATABASE_TOKEN`; `null` where everything is in a file.
 * @throws StorageRefusal for what is no address of a server
 */
export function readDatabaseAddress(
	environment: Readonly<Record<string, string | undefined>>
): DatabaseAddress | null {
	const text = environment['FROSTLEDGER_DATABASE']?.trim();
	if (!text) return null;
	const url = URL.canParse(text) ? new URL(text) : null;
	const scheme = SCHEMES[url?.protocol ?? ''];
	if (!url || scheme === undefined || url.hostname === '') {
		throw new StorageRefusal(
			'FROSTLEDGER_DATABASE is not the address of a libSQL server, as libsql://db.example or http://127.0.0.1:8080. For a file, leave it out and name the folder in FROSTLEDGER_DATA'
		);
	}
	if (url.username !== '' || url.password !== '' || url.search !== '') {
		throw new StorageRefusal(
			'FROSTLEDGER_DATABASE holds more than an address. Put the token into FROSTLEDGER_DATABASE_TOKEN'
		);
	}
	const token = environment['FROSTLEDGER_DATABASE_TOKEN']?.trim() || null;
	// By its text: an address cannot be given another scheme.
	return { url: new URL(text.replace(/^[a-z]+:/i, scheme)), token, host: url.host };
}
