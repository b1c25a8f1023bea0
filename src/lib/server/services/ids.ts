import { randomInt } from 'node:crypto';

const ALPHABET = '0123456789abcdefghjkmnpqrstvwxyz';

/** A short id that reads in a URL. @example newId('r') // => 'r-8f3kq0zt2m' */
export function newId(prefix: string, length = 10): string {
	const letters = Array.from({ length }, () => ALPHABET[randomInt(ALPHABET.length)]);
	return `${prefix}-${letters.join('')}`;
}

/** @example slug('Lake Årsjö (north)') // => 'lake-arsjo-north' */
export function slug(name: string, otherwise = 'lake'): string {
	const plain = name
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, '-');
	return plain.slice(0, 40).replace(/^-+|-+$/g, '') || otherwise;
}
