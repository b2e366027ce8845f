package value

import (
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
)

func TestNameOf(t *testing.T) {
	for id, want := range map[string]string{"pinion-nut": "Pinion nut", "": "", "o-ring": "O ring", "é-1": "É 1"} {
		if got := NameOf(id); got != want {
			t.Errorf("%q is %q, want %q", id, got, want)
		}
	}
}

func TestIDs(t *testing.T) {
	for _, id := range []string{"a", "md-48", "tw-120", "m8"} {
		msgs := &diag.List{}
		if !(&Reader{Msgs: msgs}).ID(id, source.Place{}) || msgs.Len() > 0 {
			t.Errorf("%q is refused", id)
		}
	}
	for _, id := range []string{"", "A", "a--b", "-a", "a-", "8m", "a_b", "ä", "com1", "NUL", strings.Repeat("a", 41)} {
		msgs := &diag.List{}
		if (&Reader{Msgs: msgs}).ID(id, source.Place{}) || msgs.Len() != 1 {
			t.Errorf("%q is let through", id)
		}
	}
}
