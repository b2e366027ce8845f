package diag

import "testing"

func TestSeries(t *testing.T) {
	for want, words := range map[string][]string{"": nil, "a": {"a"}, "a or b": {"a", "b"}, "a, b or c": {"a", "b", "c"}} {
		if got := Series(words, "or"); got != want {
			t.Errorf("%q becomes %q, not %q", words, got, want)
		}
	}
}
