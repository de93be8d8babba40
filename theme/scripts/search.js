// Searches the journal from its search page. The page holds an index from A to Z,
// which is all of it where no scripts run; with this, words that are typed show the
// pages that hold them. The parts of the index of words are scripts of their own, made
// by build/search. Nothing here is made of HTML: all words are set as text.
"use strict";

const hussifSearch = (() => {
	const fields = ["title", "names", "text"];
	const parts = [];

	// take is what each part of the index calls.
	const take = json => { parts.push(JSON.parse(json)); };

	// What counts as one word is decided here and in build/search/words.go alike.
	const letters = { "ß": "ss", "æ": "ae", "œ": "oe", "ø": "o", "đ": "d", "ð": "d", "ł": "l", "þ": "th", "ı": "i", "ς": "σ" };
	const folded = decomposed => decomposed.toLowerCase().replace(/\p{M}/gu, "").replace(/[ßæœøđðłþıς]/g, letter => letters[letter]);
	const runs = text => text.match(/[\p{L}\p{N}\p{M}]+/gu) || [];
	const spellings = word => {
		const decomposed = word.normalize("NFD");
		const bare = folded(decomposed), written = folded(decomposed.replace(/([aouAOU])\u0308/g, "$1e"));
		return [...new Set([bare, written])].filter(spelling => spelling);
	};

	const options = {
		fields,
		tokenize: runs,
		processTerm: spellings,
		searchOptions: {
			tokenize: text => [text],
			processTerm: term => term,
			boost: { title: 4, names: 2 },
			prefix: true,
		},
	};

	// join makes one index of its parts. A page's number is its place in all of them.
	const join = () => {
		const pages = [], words = new Map(), fieldLength = [], sums = [0, 0, 0];
		for (const part of parts) {
			const first = pages.length;
			for (const page of part.pages) pages.push(page);
			for (const lengths of part.lengths) {
				fieldLength.push(lengths);
				lengths.forEach((length, field) => { sums[field] += length; });
			}
			for (const [word, ...postings] of part.words) {
				let data = words.get(word);
				if (!data) words.set(word, data = {});
				for (let field = 0; field < fields.length; field++) {
					const list = postings[field];
					if (list.length === 0) continue;
					const counts = data[field] || (data[field] = {});
					for (let i = 0; i < list.length; i += 2) counts[first + list[i]] = list[i + 1];
				}
			}
		}
		parts.length = 0;
		const index = MiniSearch.loadJS({
			documentCount: pages.length,
			nextId: pages.length,
			documentIds: pages.map((_, i) => i),
			fieldIds: { title: 0, names: 1, text: 2 },
			fieldLength,
			averageFieldLength: sums.map(sum => sum / Math.max(1, pages.length)),
			storedFields: {},
			dirtCount: 0,
			index: words,
			serializationVersion: 2,
		}, options);
		return { pages, index };
	};

	// find returns the pages that hold all words, or where none does those that come
	// near it: that hold one of them, or a word like it.
	const find = (index, text) => {
		const asked = runs(text).map(spellings).filter(ways => ways.length > 0);
		if (asked.length === 0) return { found: [], near: false };
		const query = combineWith => ({ combineWith, queries: asked.map(queries => ({ combineWith: "OR", queries })) });
		const found = index.search(query("AND"));
		if (found.length > 0) return { found, near: false };
		return { found: index.search(query("OR"), { fuzzy: 0.25 }), near: true };
	};

	// show puts the words of a text into an element, and marks those that were found.
	const show = (element, text, terms) => {
		let at = 0;
		for (const match of text.matchAll(/[\p{L}\p{N}\p{M}]+/gu)) {
			if (!spellings(match[0]).some(spelling => terms.has(spelling))) continue;
			const mark = document.createElement("mark");
			mark.textContent = match[0];
			element.append(text.slice(at, match.index), mark);
			at = match.index + match[0].length;
		}
		element.append(text.slice(at));
		return element;
	};

	const hits = (text, terms) => new Set(runs(text).flatMap(spellings).filter(spelling => terms.has(spelling))).size;

	// best returns the line of a page that has most of the words; how the page begins
	// where no line has any.
	const best = (lines, terms) => {
		let line = lines.find(([label]) => label === ""), most = 0;
		for (const other of lines) {
			const n = hits(other[2], terms);
			if (n > most) [line, most] = [other, n];
		}
		return line;
	};

	const make = (name, className) => {
		const element = document.createElement(name);
		if (className) element.className = className;
		return element;
	};

	const entry = ([path, title, kind, day, of, lines], terms) => {
		const item = make("li", "hit"), head = make("p", "hit-title"), link = make("a");
		const line = best(lines, terms);
		link.href = path + (line && line[1] ? "#" + line[1] : "");
		head.append(show(link, title, terms));
		item.append(head);
		const about = make("p", "whence");
		for (const words of [kind, day, of]) {
			if (words) about.append(show(make("span"), words, words === of ? terms : new Set()));
		}
		item.append(about);
		if (line) {
			const say = make("p");
			if (line[0]) {
				const label = make("span", "label");
				label.textContent = line[0];
				say.append(label, " ");
			}
			item.append(show(say, line[2], terms));
		}
		return item;
	};

	const begin = () => {
		const page = document.querySelector(".seek-page");
		if (!page) return;
		const form = page.querySelector("form"), field = form.elements.q;
		const tally = page.querySelector(".tally"), list = page.querySelector(".hits"), more = page.querySelector(".more");
		const rest = document.querySelectorAll(".a-to-z");
		const missing = Number(form.dataset.parts) - parts.length;
		const { pages, index } = join();
		const few = 20, many = 100;
		let found = [], shown = 0;

		const grow = count => {
			for (const hit of found.slice(shown, shown + count)) list.append(entry(pages[hit.id], new Set(hit.terms)));
			shown = Math.min(found.length, shown + count);
			more.hidden = shown === found.length;
		};

		const count = (n, near) => {
			const words = n === 1 ? "1 page" : n.toLocaleString("en") + " pages";
			if (n === 0) return "Nothing here has these words, or words like them.";
			return near ? "No page has all of these words. These come near: " + words + "." : words + ", the likeliest first.";
		};

		const look = () => {
			const text = field.value.trim();
			const answer = find(index, text);
			found = answer.found;
			shown = 0;
			list.replaceChildren();
			grow(few);
			list.hidden = found.length === 0;
			for (const section of rest) section.hidden = text !== "";
			tally.textContent = text === "" ? pages.length.toLocaleString("en") + " pages to search." : count(found.length, answer.near);
			if (missing > 0) tally.textContent += " Part of the index could not be loaded, so some pages are left out.";
			remember(text);
		};

		// So that going back from a page leads to the words that led there. Some browsers
		// refuse that to pages from a disk, which costs no more than that.
		const remember = text => {
			const address = new URL(location.href);
			if ((address.searchParams.get("q") || "") === text) return;
			address.search = text === "" ? "" : "?" + new URLSearchParams({ q: text });
			try {
				history.replaceState(null, "", address);
			} catch {}
		};

		let waiting;
		const links = () => [...list.querySelectorAll(".hit-title a")];
		field.addEventListener("input", () => {
			clearTimeout(waiting);
			waiting = setTimeout(look, 60);
		});
		form.addEventListener("submit", event => {
			event.preventDefault();
			clearTimeout(waiting);
			look();
			links()[0]?.focus();
		});
		more.addEventListener("click", () => {
			const at = shown;
			grow(many);
			links()[at]?.focus();
		});
		// A busy browser may hand the key that led to the field on to it all the same.
		let called = false;
		document.addEventListener("keydown", event => {
			if (event.ctrlKey || event.altKey || event.metaKey || event.isComposing) return;
			const all = links(), at = all.indexOf(document.activeElement);
			const inField = document.activeElement === field;
			let to;
			if (event.key === "/" && !inField) to = field;
			else if (event.key === "ArrowDown" && inField) to = all[0];
			else if (event.key === "ArrowDown" && at >= 0) to = all[at + 1];
			else if (event.key === "ArrowUp" && at >= 0) to = all[at - 1] || field;
			else if (event.key === "Escape" && at >= 0) to = field;
			else if (event.key === "Escape" && inField) field.value = "";
			else return;
			event.preventDefault();
			if (event.key === "Escape" && inField) look();
			if (!to) return;
			to.focus();
			if (event.key === "/") {
				field.select();
				called = true;
			}
		});
		field.addEventListener("beforeinput", event => {
			if (called && event.data === "/") event.preventDefault();
			called = false;
		});
		document.addEventListener("keyup", () => { called = false; });

		field.value = new URLSearchParams(location.search).get("q") || field.value;
		look();
		form.dataset.ready = Math.round(performance.now()); // milliseconds, for who measures
		if (document.activeElement === document.body && !location.hash) field.focus();
	};

	document.addEventListener("DOMContentLoaded", begin);
	// The parts call take. The rest is for who holds it to what it should be.
	return { take, join, options, runs, spellings };
})();
