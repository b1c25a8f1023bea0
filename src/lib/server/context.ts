import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { readPublicAddress, readWebhookHosts, whyReachable } from './public-address.ts';
import { IN_MEMORY, openDatabase } from './storage/database.ts';
import { readDatabaseAddress, type DatabaseAddress } from './storage/remote/address.ts';
import { openRemoteDatabase } from './storage/remote/open-remote.ts';
import type { Database } from './storage/schema.ts';
import { openWeather, type WeatherAccess } from './weather/access.ts';

/** What every service is given. */
export interface Context {
	db: Kysely<Database>;
	now: () => Date;
	/** The way out to weather services. */
	weather: WeatherAccess;
	/** Where everything is stored; `null` while it is in memory only, or on a server. */
	place: Place | null;
	/** What is backed up, and where to; `null` where no data folder is named. */
	kept: Kept | null;
	/** The libSQL server that holds the database, by its host: `FROSTLEDGER_DATABASE`. */
	server: string | null;
	/** Where others reach this app: `FROSTLEDGER_ADDRESS`. Ends without a slash; `null` when not set. */
	address: string | null;
	/** Names in a private network that webhooks may be sent to: `FROSTLEDGER_WEBHOOK_HOSTS`. */
	webhookHosts: readonly string[];
	/** What lets others than this machine in, in words: then nobody is served unknown. */
	reachableBy: string | null;
}

export interface Place {
	/** The data folder, as it was named. */
	folder: string;
	/** The database in it. */
	file: string;
}

/** A database that outlives the process. */
export interface Kept {
	/** The data folder, as it was named; backups lie in it. */
	folder: string;
	/** The path of a file, or a server. */
	database: string | DatabaseAddress;
}

/** The folder of the database is `FROSTLEDGER_DATA`, `data/local` without it, or `:memory:`. */
export type Environment = Readonly<Record<string, string | undefined>>;

let opened: Context | null = null;

/** Opens the database and keeps the context for {@link getContext}. Called once, when the server starts. */
export async function startContext(environment: Environment): Promise<Context> {
	opened ??= await openContext(environment);
	return opened;
}

/** A context of its own, for tests and commands. */
export async function openContext(environment: Environment): Promise<Context> {
	const [place, kept] = [placeOf(environment), keptAt(environment)];
	const weather = openWeather(environment);
	const address = readPublicAddress(environment);
	const webhookHosts = readWebhookHosts(environment);
	const reachableBy = whyReachable(environment);
	const remote = readDatabaseAddress(environment);
	const db = remote
		? await openRemoteDatabase(remote, kept?.folder ?? null)
		: await openDatabase(place?.file ?? IN_MEMORY);
	const [now, server] = [() => new Date(), remote?.host ?? null];
	return { db, now, weather, place, kept, server, address, webhookHosts, reachableBy };
}

/** Where the environment says that everything is stored; `null` for in memory or on a server. */
export function placeOf(environment: Environment): Place | null {
	if (readDatabaseAddress(environment) !== null) return null;
	const folder = folderOf(environment);
	return folder === null ? null : { folder, file: join(folder, 'frostledger.db') };
}

/** The database that the environment names; `null` where its data folder is memory only. */
export function keptAt(environment: Environment): Kept | null {
	const folder = folderOf(environment);
	const database = readDatabaseAddress(environment) ?? placeOf(environment)?.file;
	return folder === null || database === undefined ? null : { folder, database };
}

function folderOf(environment: Environment): string | null {
	const folder = environment['FROSTLEDGER_DATA'] || join('data', 'local');
	return folder === IN_MEMORY ? null : folder;
}

/** @throws Error before the server has started. */
export function getContext(): Context {
	if (!opened) throw new Error('Context asked for before the server opened its database');
	return opened;
}

export async function closeContext(context: Context): Promise<void> {
	if (opened === context) opened = null;
	await context.db.destroy();
}
