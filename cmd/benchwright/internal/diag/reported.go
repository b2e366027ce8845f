package diag

// Reported is the proof that an error has been reported. Whatever could not be
// read carries one, so that nothing is given up in silence. The zero Reported
// proves nothing, and no room but this one can make another.
type Reported struct{ slug string }

// Is says whether it proves anything.
func (r Reported) Is() bool { return r.slug != "" }

// Or returns the first of two proofs that proves anything.
func (r Reported) Or(other Reported) Reported {
	if r.Is() {
		return r
	}
	return other
}

// Must returns the proof, and panics where it is none: what asks for it would
// leave a block out of a card without a word.
func (r Reported) Must() Reported {
	if !r.Is() {
		panic("something is given up that nothing was reported of")
	}
	return r
}

// Proof returns the proof that an error was reported. It panics for a warning,
// which stops no card, and for a message that is on no list.
func (d *Diagnostic) Proof() Reported {
	if !d.listed || d.Severity() != Error {
		panic("no proof: " + d.Slug + " is a warning, or was never reported")
	}
	return Reported{d.Slug}
}
