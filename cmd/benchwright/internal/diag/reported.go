package diag

// Reported is the proof that an error was reported. Whatever could not be read
// carries one, so that nothing is dropped silently. The zero Reported proves
// nothing; only this package can make any other.
type Reported struct{ slug string }

// IsSet reports whether r is the proof of an error.
func (r Reported) IsSet() bool { return r.slug != "" }

// Or returns r if it is set, else other.
func (r Reported) Or(other Reported) Reported {
	if r.IsSet() {
		return r
	}
	return other
}

// Must returns the proof, and panics if it is not set: the caller would
// otherwise silently leave something out of a card.
func (r Reported) Must() Reported {
	if !r.IsSet() {
		panic("something is given up that nothing was reported of")
	}
	return r
}

// Proof returns the proof that d was reported. It panics for a warning, and
// for a diagnostic that was never added to a list.
func (d *Diagnostic) Proof() Reported {
	if !d.listed || d.Severity() != Error {
		panic("no proof: " + d.Slug + " is a warning, or was never reported")
	}
	return Reported{d.Slug}
}
