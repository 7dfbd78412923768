package test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Everything the page needs comes from its own folder, and the policy in the
// page refuses the rest.
func TestPolicy(t *testing.T) {
	server := deploy(t, "/")
	p := open(t, server.address(), phone)
	p.assessed()
	p.kept()
	for _, address := range p.sent() {
		assert.True(t, strings.HasPrefix(address, server.address()) || strings.HasPrefix(address, "data:"), "the page asks for %s", address)
	}
	p.noErrors()

	for _, c := range []struct{ what, attempt string }{
		{"a script from elsewhere", `new Promise((done) => { const s = document.createElement('script'); s.src = 'http://localhost:9/x.js'; s.onerror = () => done('refused'); s.onload = () => done('loaded'); document.head.append(s); })`},
		{"an inline script", `(() => { const s = document.createElement('script'); s.textContent = 'window.broken = 1'; document.head.append(s); return window.broken ? 'ran' : 'refused'; })()`},
		{"an inline handler", `(() => { const d = document.createElement('div'); d.innerHTML = '<button onclick="window.broken = 2">'; document.body.append(d); d.firstChild.click(); d.remove(); return window.broken ? 'ran' : 'refused'; })()`},
		{"code from text", `new Promise((done) => { setTimeout('window.broken = 3'); setTimeout(() => done(window.broken ? 'ran' : 'refused'), 30); })`},
		{"a request elsewhere", `fetch('http://localhost:9/').then(() => 'sent', () => 'refused')`},
		{"a picture from elsewhere", `new Promise((done) => { const i = new Image(); i.onload = () => done('loaded'); i.onerror = () => done('refused'); i.src = 'http://localhost:9/x.png'; })`},
	} {
		// Refused by the policy, and not only because there is nobody at that address.
		told := eval[[]string](p, strings.Replace(attempt, "$ATTEMPT", c.attempt, 1))
		assert.Equal(t, "refused", told[0], "%s", c.what)
		assert.Len(t, told, 2, "%s was not refused by the policy", c.what)
	}
}

// attempt does something that the policy forbids and says what came of it and which rules spoke.
const attempt = `(async () => {
	const told = [];
	const listen = (e) => told.push(e.effectiveDirective);
	document.addEventListener('securitypolicyviolation', listen);
	const outcome = await ($ATTEMPT);
	await new Promise((done) => setTimeout(done, 50));
	document.removeEventListener('securitypolicyviolation', listen);
	return [outcome, ...told];
})()`
