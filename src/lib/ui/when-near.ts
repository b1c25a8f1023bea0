import type { Attachment } from 'svelte/attachments';

/** How far off the screen something is fetched already. */
const NEAR = '400px';

/** Acts once, when the element comes near to what is seen. */
export function whenNear(act: () => void): Attachment {
	return (node) => {
		const watch = new IntersectionObserver(
			(seen) => {
				if (!seen.some(({ isIntersecting }) => isIntersecting)) return;
				watch.disconnect();
				act();
			},
			{ rootMargin: NEAR }
		);
		watch.observe(node);
		return () => watch.disconnect();
	};
}
