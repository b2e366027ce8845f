package checkcode

import (
	"strings"
	"testing"

	"benchwright/render"
)

var (
	running = render.Running{Number: "MD48-20", Title: "Strip the drive", Unit: "MD-48", Revision: "C", Date: "2026-10-02"}
	torque  = render.Element{Content: render.Setting{Value: "100", Unit: "N·m"}}
	prose   = render.Element{Class: render.Wording, Content: render.Text{Runs: []render.Run{{Text: "Hold the socket square."}}}}
)

func whole(es ...render.Element) []Piece {
	var out []Piece
	for _, e := range es {
		out = append(out, Piece{Element: e, To: 1, Of: 1})
	}
	return out
}

// A code is read as people type it.
func TestParse(t *testing.T) {
	const code = Code("0V10K-3XJ1S")
	// Worked with a table of logarithms of the field; no published value.
	numbers := []byte{0, 27, 1, 0, 19, 3, 29, 18, 1}
	if got := alphabet[check(numbers)]; got != 'S' {
		t.Fatalf("the last character is %c", got)
	}
	for _, typed := range []string{"0V10K-3XJ1S", "0v10k-3xj1s", "OVIOK3XJLS", " oulo k - 3xjis ", "0V10K\u20113XJ1S", "0V1 0K3 XJ1S"} {
		if got, err := Parse(typed); got != code || err != nil {
			t.Errorf("%q is %q, %v", typed, got, err)
		}
	}
	for typed, says := range map[string]string{
		"":             "has 10 characters, and this has 0",
		"0V10K-3XJ1":   "and this has 9",
		"0V10K-3XJ1S0": "and this has 11",
		"0V10K-3XJ1?":  "`?` is in no check code",
		"0V10K-3XJ2S":  "the last character",
		"V010K-3XJ1S":  "the last character",
	} {
		if got, err := Parse(typed); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q is %q, %v", typed, got, err)
		}
	}
}

// No single wrong character and no two exchanged ones make another code.
func TestOneSlipIsRefused(t *testing.T) {
	for seed := range uint32(200) {
		code := encode(seed*2654435761, seed*40503+7)
		if again, err := Parse(string(code)); again != code || err != nil {
			t.Fatalf("%s is read as %q, %v", code, again, err)
		}
		plain := []byte(strings.ReplaceAll(string(code), "-", ""))
		refused := func(typed []byte) {
			if got, err := Parse(string(typed)); err == nil {
				t.Errorf("%s typed as %s is %s", code, typed, got)
			}
		}
		for i := range plain {
			was := plain[i]
			for _, c := range []byte(alphabet) {
				if plain[i] = c; c != was {
					refused(plain)
				}
			}
			plain[i] = was
			for j := range i {
				if plain[i] == plain[j] {
					continue
				}
				plain[i], plain[j] = plain[j], plain[i]
				refused(plain)
				plain[i], plain[j] = plain[j], plain[i]
			}
		}
	}
}

// Each part depends on its own, and neither on revision or date.
func TestParts(t *testing.T) {
	code := Of(running, whole(torque, prose))
	later := running
	later.Revision, later.Date = "D", "2027-01-08"
	if got := Of(later, whole(torque, prose)); got != code {
		t.Errorf("%s in the next revision is %s", code, got)
	}
	comma := prose
	comma.Content = render.Text{Runs: []render.Run{{Text: "Hold the socket, square."}}}
	if got := Of(running, whole(torque, comma)); got.Technical() != code.Technical() || got == code {
		t.Errorf("%s with another comma is %s", code, got)
	}
	split := prose
	split.Content = render.Text{Runs: []render.Run{{Text: "Hold the "}, {Text: "socket square."}}}
	split.Ref = 9
	if got := Of(running, whole(torque, split)); got != code {
		t.Errorf("%s in other runs is %s", code, got)
	}
	for name, es := range map[string][]Piece{
		"another number": whole(render.Element{Content: render.Setting{Value: "105", Unit: "N·m"}}, prose),
		"one removed":    whole(prose),
		"said twice":     whole(torque, torque, prose),
		"a part of it":   {{Element: torque, To: 1, Of: 2}, {Element: prose, To: 1, Of: 1}},
	} {
		got := Of(running, es)
		if got.Technical() == code.Technical() || got[technicalLen:technicalLen+1+wordingLen] != code[technicalLen:technicalLen+1+wordingLen] {
			t.Errorf("%s with %s is %s", code, name, got)
		}
	}
	for name, change := range map[string]func(*render.Running){
		"number":  func(r *render.Running) { r.Number = "MD48-21" },
		"variant": func(r *render.Running) { r.Variant = "Late" },
		"draft":   func(r *render.Running) { r.Watch = "DRAFT" },
	} {
		r := running
		change(&r)
		if got := Of(r, whole(torque, prose)); got.Technical() == code.Technical() {
			t.Errorf("another %s is no other code", name)
		}
	}
}
