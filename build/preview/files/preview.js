"use strict";
// Keeps a page of the preview as the journal is now: loads it again when it has
// become another, where its reader was, and says in the bar what was found.
(() => {
	const sum = document.currentScript.dataset.sum;
	const bar = document.getElementById("hussif-preview");
	const [status, list] = bar.children;
	const memory = "hussif preview";

	// A name for something one can click, that it very likely has on the next page too.
	const clickable = "a[href], summary, [tabindex]";
	const names = () => {
		const count = new Map(), named = new Map();
		for (const e of document.querySelectorAll(clickable)) {
			const kind = e.tagName + e.textContent.slice(0, 80);
			const n = count.get(kind) || 0;
			count.set(kind, n + 1);
			named.set(kind + n, e);
		}
		return named;
	};
	const edge = e => e.getBoundingClientRect().top;

	const remember = () => {
		const named = [...names()];
		// The part of the page that is being read, for what is above may grow.
		const part = [...document.querySelectorAll("[id]")].filter(e => edge(e) <= 1 && !bar.contains(e) && e.id !== "section-page").pop();
		sessionStorage.setItem(memory, JSON.stringify({
			path: location.pathname, left: scrollX, top: scrollY,
			part: part && { id: part.id, edge: edge(part) },
			open: named.filter(([, e]) => e.matches("summary")).map(([name, e]) => [name, e.parentElement.open]),
			focus: (named.find(([, e]) => e === document.activeElement) || [])[0],
		}));
	};

	const restore = () => {
		const kept = JSON.parse(sessionStorage.getItem(memory) || "null");
		sessionStorage.removeItem(memory);
		if (!kept || kept.path !== location.pathname) return;
		const named = names();
		for (const [name, open] of kept.open) {
			if (named.has(name)) named.get(name).parentElement.open = open;
		}
		const e = named.get(kept.focus);
		if (e) e.focus({ preventScroll: true });
		const back = () => {
			const part = kept.part && document.getElementById(kept.part.id);
			const top = part ? scrollY + edge(part) - kept.part.edge : kept.top;
			scrollTo({ left: kept.left, top, behavior: "instant" });
		};
		back();
		// The browser may yet jump to the part that the address names, and letters may
		// take more room when their font has come. But the reader goes first: whatever
		// else scrolls the page is the reader, while the browser itself is kept from it.
		const root = document.documentElement.style;
		root.overflowAnchor = "none";
		const set = scrollY, moved = new AbortController();
		for (const kind of ["wheel", "touchmove", "keydown", "pointerdown"]) {
			addEventListener(kind, () => moved.abort(), { once: true, passive: true, signal: moved.signal });
		}
		const settle = () => {
			if (!moved.signal.aborted && (location.hash || Math.abs(scrollY - set) < 1)) back();
			root.overflowAnchor = "";
			history.scrollRestoration = "auto";
		};
		addEventListener("load", () => document.fonts.ready.then(() => requestAnimationFrame(settle)), { once: true });
	};

	const show = news => {
		if (bar.className !== news.class) bar.className = news.class;
		// Said again only when it is something else, or a screen reader would repeat it.
		if (status.textContent !== news.words) status.textContent = news.words;
		const fresh = document.createElement("div"), old = list.cloneNode(true);
		fresh.innerHTML = news.list;
		const open = old.querySelector("details[open]");
		if (open) open.open = false;
		if (fresh.innerHTML === old.innerHTML) return;
		list.replaceChildren(...fresh.childNodes);
		if (open && list.querySelector("details")) list.querySelector("details").open = true;
	};

	let source, again, lost, leaving;
	const found = () => {
		clearTimeout(lost);
		lost = undefined;
	};
	const take = news => {
		found();
		if (news.sum === sum) {
			show(news);
			return;
		}
		stop();
		leaving = true;
		history.scrollRestoration = "manual";
		location.reload();
	};
	const stop = () => {
		clearTimeout(again);
		found();
		if (source) source.close();
		source = undefined;
	};
	const miss = () => {
		bar.className = "lost";
		status.textContent = "The preview has stopped, and this page may be out of date. It goes on when hussif preview is started again.";
	};
	const listen = () => {
		// A page that nobody sees asks for nothing: browsers open few streams at once.
		if (source || leaving || document.hidden) return;
		source = new EventSource("/.preview/events?page=" + encodeURIComponent(location.pathname));
		source.onmessage = e => take(JSON.parse(e.data));
		source.onerror = () => {
			lost ??= setTimeout(miss, 2500);
			if (source.readyState !== EventSource.CLOSED) return;
			source = undefined;
			clearTimeout(again);
			again = setTimeout(listen, 1000);
		};
	};

	restore();
	listen();
	document.addEventListener("visibilitychange", () => document.hidden ? stop() : listen());
	addEventListener("pagehide", () => {
		stop();
		// Only now: the reader may have scrolled while the page was fetched.
		if (leaving) remember();
	});
	addEventListener("pageshow", listen);
})();
