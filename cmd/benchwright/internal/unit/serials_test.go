package unit

import (
	"slices"
	"testing"
)

func TestParseSerials(t *testing.T) {
	for text, want := range map[string][]SerialRange{
		"1 to 3999":        {{"", 1, 3999}},
		"4000 up":          {{"", 4000, endless}},
		"4000 and up":      {{"", 4000, endless}},
		"from 4000":        {{"", 4000, endless}},
		"from 1 to 9":      {{"", 1, 9}},
		"up to 3999":       {{"", 0, 3999}},
		"to 3999":          {{"", 0, 3999}},
		"17":               {{"", 17, 17}},
		"A100 to A399":     {{"A", 100, 399}},
		"1 to 9, 20 to 29": {{"", 1, 9}, {"", 20, 29}},
		"9 to 1":           {{"", 9, 1}}, // read as it stands; Read refuses it
	} {
		if got, ok := ParseSerials(text); !ok || !slices.Equal(got, want) {
			t.Errorf("%q is read as %v, %t, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "soon", "A1 to B9", "1 to", "1 to 2 to 3", "1,", "9999999999999999", "1 to 3.5"} {
		if got, ok := ParseSerials(text); ok {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}
