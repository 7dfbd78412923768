package test

import (
	"net/http"
	"net/http/httptest"
	"testing"

	"github.com/stretchr/testify/assert"
)

// bench serves the page's modules as they are, beside an empty page.
func bench(t *testing.T) string {
	t.Helper()
	modules := http.StripPrefix("/js/", http.FileServer(http.Dir(root+"/web/js")))
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/" {
			w.Header().Set("Content-Type", "text/html")
			_, _ = w.Write([]byte("<!doctype html><title>bench</title><link rel=icon href=data:>"))
			return
		}
		modules.ServeHTTP(w, r)
	}))
	t.Cleanup(server.Close)
	return server.URL
}

// inStore runs a script with a fresh store; states has what the store said of itself.
func inStore(p *page, script string) string {
	p.t.Helper()
	return eval[string](p, `(async () => {
		const { openStore, LIMIT } = await import('/js/store.js');
		const states = [];
		const fresh = () => openStore({ state: (s) => states.push(s.kept ? 'kept' : s.why) });
		const store = fresh();
		const doc = (name, n) => { const steps = Array.from({length: n}, (_, i) => ({label: 'step ' + i, plan: {name, i}})); return {plan: steps[n - 1].plan, steps, at: n - 1}; };
		const result = await (async () => { `+script+` })();
		return JSON.stringify(result);
	})()`)
}

func TestStoreKeepsPlansAsTyped(t *testing.T) {
	p := open(t, bench(t), desk)
	said := inStore(p, `
		const typed = {plan: {name: 'Garage', weight: '1 1/4 in', deep: [{a: 1}]}, steps: [{label: 'first', plan: {name: 'Garage'}}, {label: 'type a weight', plan: {name: 'Garage', weight: '58 lb'}}], at: 1};
		const kept = await store.save('a', typed);
		await store.save('b', doc('Ceiling', 1));
		const other = fresh(); // as after a reload
		const back = await other.open('a');
		return {kept, back, list: (await other.list()).map((e) => e.id + ' ' + e.name), none: await other.open('zzz') ?? null, states};`)
	assert.JSONEq(t, `{"kept": true,
		"back": {"id": "a", "plan": {"name": "Garage", "weight": "1 1/4 in", "deep": [{"a": 1}]}, "at": 1,
			"steps": [{"label": "first", "plan": {"name": "Garage"}}, {"label": "type a weight", "plan": {"name": "Garage", "weight": "58 lb"}}]},
		"list": ["a Garage", "b Ceiling"], "none": null, "states": []}`, said)

	said = inStore(p, `await store.remove('a'); return [(await store.list()).map((e) => e.id), (await fresh().open('a')) ?? null];`)
	assert.JSONEq(t, `[["b"], null]`, said)
	p.noErrors()
}

func TestStoreKeepsTheLastHundredSteps(t *testing.T) {
	p := open(t, bench(t), desk)
	said := inStore(p, `
		const long = doc('Long', 130);
		await store.save('a', long);
		const {steps, at} = await fresh().open('a');
		return [LIMIT, steps.length, at, steps[0].label, steps.at(-1).label];`)
	assert.JSONEq(t, `[100, 100, 99, "step 30", "step 129"]`, said)

	// Undo three, then another edit: what was undone goes, the rest is not written again.
	said = inStore(p, `
		const back = await store.open('a');
		const steps = [...back.steps.slice(0, 97), {label: 'another way', plan: {name: 'Long'}}];
		await store.save('a', {plan: steps.at(-1).plan, steps, at: 97});
		const again = await fresh().open('a');
		return [again.steps.length, again.at, again.steps.slice(-2).map((s) => s.label)];`)
	assert.JSONEq(t, `[98, 97, ["step 126", "another way"]]`, said)
	p.noErrors()
}

// While one save is being written only the newest of a plan waits.
func TestStoreWritesTheNewest(t *testing.T) {
	p := open(t, bench(t), desk)
	said := inStore(p, `
		const saves = []; for (let i = 1; i <= 200; i++) saves.push(store.save('a', doc('n' + i, 2)));
		const kept = await Promise.all(saves);
		return [kept.every(Boolean), (await fresh().open('a')).plan.name, (await store.list()).length];`)
	assert.JSONEq(t, `[true, "n200", 1]`, said)
}

// Two windows with the same plan: the later save wins, and what the other had
// written stays as a plan of its own.
func TestStoreLosesNothingToAnotherWindow(t *testing.T) {
	p := open(t, bench(t), desk)
	said := inStore(p, `
		const other = fresh();
		await store.save('a', doc('here', 2));
		await other.open('a');
		await other.save('a', doc('there', 3));
		await store.save('a', doc('here again', 2));
		const {plan, steps} = await fresh().open('a');
		return [plan.name, steps.length, (await store.list()).map((e) => e.name).sort()];`)
	assert.JSONEq(t, `["here again", 2, ["here again", "there (other window)"]]`, said)
}

// Where the browser keeps nothing, all calls go on from memory and the state says so.
func TestStoreSaysWhenNothingIsKept(t *testing.T) {
	address := bench(t)
	for _, c := range []struct{ name, breakage, why string }{
		{"no database", `IDBFactory.prototype.open = function () { throw new DOMException('no', 'SecurityError'); };`, "unavailable"},
		{"refused", `IDBFactory.prototype.open = function () { const r = {error: new DOMException('no', 'UnknownError')}; setTimeout(() => r.onerror()); return r; };`, "unavailable"},
		{"full", `IDBObjectStore.prototype.put = function () { throw new DOMException('full', 'QuotaExceededError'); };`, "full"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := open(t, address, desk)
			said := inStore(p, c.breakage+`
				const kept = await store.save('a', doc('Held', 2));
				const back = await store.open('a');
				return {kept, name: back.plan.name, steps: back.steps.length, list: (await store.list()).map((e) => e.name), state: store.state(), first: states[0]};`)
			assert.JSONEq(t, `{"kept": false, "name": "Held", "steps": 2, "list": ["Held"], "state": {"kept": false, "why": "`+c.why+`"}, "first": "`+c.why+`"}`, said)
		})
	}
	t.Run("full for the steps only", func(t *testing.T) {
		p := open(t, address, desk)
		said := inStore(p, `const put = IDBObjectStore.prototype.put;
			IDBObjectStore.prototype.put = function (v) { if (this.name === 'steps') throw new DOMException('full', 'QuotaExceededError'); return put.call(this, v); };
			const kept = await store.save('a', doc('Held', 2));
			const back = await fresh().open('a');
			return [kept, back.plan.name, back.steps.length, states];`)
		assert.JSONEq(t, `[true, "Held", 0, []]`, said)
	})
	t.Run("room again", func(t *testing.T) {
		p := open(t, address, desk)
		said := inStore(p, `const put = IDBObjectStore.prototype.put;
			IDBObjectStore.prototype.put = function () { throw new DOMException('full', 'QuotaExceededError'); };
			const first = await store.save('a', doc('Held', 2));
			IDBObjectStore.prototype.put = put;
			const second = await store.save('a', doc('Kept', 2));
			return [first, second, states, (await fresh().open('a')).plan.name];`)
		assert.JSONEq(t, `[false, true, ["full", "kept"], "Kept"]`, said)
	})
}
