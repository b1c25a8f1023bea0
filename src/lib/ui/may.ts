import { getContext, setContext } from 'svelte';

export type Role = 'owner' | 'helper' | 'guest' | 'stranger';

const ROLE = Symbol('role');

/** Tells the components of a page who looks. */
export function tellRole(role: () => Role): void {
	setContext(ROLE, role);
}

/**
 * Whether who looks may do what at least a guest, a helper or the owner may, so that nobody is offered
 * what would be refused; the server decides for itself. Asked while a component is made.
 */
export function may(least: 'guest' | 'helper' | 'owner'): boolean {
	const role = getContext<(() => Role) | undefined>(ROLE)?.() ?? 'owner';
	return least === 'guest' || role === 'owner' || role === least;
}
