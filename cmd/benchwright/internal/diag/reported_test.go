package diag

import (
	"testing"

	"benchwright/cmd/benchwright/internal/source"
)

// panics reports whether f panics.
func panics(f func()) (did bool) {
	defer func() { did = recover() != nil }()
	f()
	return false
}

// Only an error that stands on a list is a proof.
func TestProof(t *testing.T) {
	var none Reported
	if none.IsSet() || !panics(func() { none.Must() }) {
		t.Error("the zero value proves something")
	}
	var msgs List
	proof := msgs.Report("value-kind", source.Place{}, "", "wrong").Proof()
	if !proof.IsSet() || proof.Must() != proof || none.Or(proof) != proof || proof.Or(none) != proof {
		t.Error("an error that was reported proves nothing")
	}
	for name, forged := range map[string]func(){
		"a warning":                    func() { msgs.Report("prose-long", source.Place{}, "", "long").Proof() },
		"a message that is on no list": func() { (&Diagnostic{Slug: "value-kind"}).Proof() },
	} {
		if !panics(forged) {
			t.Errorf("%s is taken for a proof", name)
		}
	}
}

// An error that is dropped was reported all the same.
func TestReportedCountsWhatIsDropped(t *testing.T) {
	var msgs, other List
	msgs.Report("value-kind", source.Place{}, "", "wrong")
	msgs.Report("prose-long", source.Place{}, "", "long")
	msgs.Keep(func(Diagnostic) bool { return false })
	other.Join(&msgs)
	if msgs.Errors() != 0 || msgs.Reported() != 1 || other.Reported() != 1 {
		t.Errorf("%d left, %d and %d reported; want 0, 1, 1", msgs.Errors(), msgs.Reported(), other.Reported())
	}
}
