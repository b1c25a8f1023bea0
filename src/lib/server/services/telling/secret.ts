import { createHash, randomBytes } from 'node:crypto';

/** 256 bits, in letters that an address may hold. */
export function newSecret(): string {
	return randomBytes(32).toString('base64url');
}

/**
 * What is stored of the secret in an address. A plain digest is enough: a secret of 256 random bits
 * cannot be found by trying, unlike a password.
 */
export function hashOf(secret: string): string {
	return createHash('sha256').update(secret).digest('hex');
}
