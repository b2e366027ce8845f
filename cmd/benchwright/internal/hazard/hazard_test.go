package hazard

import (
	"math/big"
	"regexp"
	"slices"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The rows of the table as the trade's regulations and practice give them:
// id, word and symbols.
func TestRows(t *testing.T) {
	want := []struct {
		id      string
		signal  Signal
		symbols string
	}{
		{"flame", Warning, "W017 W021 W016 M009 M013"},
		{"hot", Warning, "W017 M009"},
		{"cold", Warning, "W010 M009 M004"},
		{"dry-ice", Warning, "W010 M009 M004"},
		{"press", Warning, "W019 W024 M004"},
		{"slide-hammer", Warning, "W024 M004"},
		{"strike", Warning, "M004"},
		{"ring", Warning, "M004"},
		{"lift", Warning, "W015"},
		{"air-clean", Warning, "M004"},
		{"air-bearing", Warning, "M004"},
		{"solvent", Warning, "W021 M009 M004"},
		{"oil", Caution, "W011 M009"},
		{"turning", Danger, "W089 P028 M021"},
		{"air-test", Warning, "W029 M004"},
		{"hanging", Warning, "W015 M008 M014"},
		{"sharp", Caution, "W022 M009"},
		{"mesh", Warning, "W024"},
		{"bar", Warning, "W024 M004"},
		{"chemical", Caution, "M009"},
	}
	if len(want) != len(table) {
		t.Errorf("%d rows, want %d", len(table), len(want))
	}
	for i, w := range want {
		h, ok := Find(w.id)
		if !ok {
			t.Errorf("no row %s", w.id)
			continue
		}
		if IDs()[i] != w.id {
			t.Errorf("row %d is %s, want %s", i, IDs()[i], w.id)
		}
		if h.Signal != w.signal || strings.Join(h.Symbols, " ") != w.symbols {
			t.Errorf("%s: %v %v, want %v %s", w.id, h.Signal, h.Symbols, w.signal, w.symbols)
		}
	}
	if h, ok := Find("presss"); ok {
		t.Errorf("Find found %v", h)
	}
}

// The rows obey the rules for the words of a step, since cards print them.
func TestWordsOfTheRows(t *testing.T) {
	id := regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	command := regexp.MustCompile(`^(Above|Before|If|When)\b[^,]*, [a-z]|^(Degrease|Take|Vent|Never|Keep|Watch|Wear|Mark|Wipe|Oil|Open|Support|Fit|Stand|Let|Put|Use|Hold|Read|Release|Tie|Lock|Deburr|Turn|Pull)\b`)
	vague := regexp.MustCompile(`(?i)\b(slowly|sufficient|as required|approximately|if necessary)\b`)
	for _, h := range table {
		if !id.MatchString(h.ID) || h.Name == "" || !h.Signal.People() {
			t.Errorf("%s: id, name or word is wrong", h.ID)
		}
		if len(h.Avoid) == 0 {
			t.Errorf("%s: says no way to avoid it", h.ID)
		}
		for _, s := range h.Avoid {
			if !command.MatchString(s) {
				t.Errorf("%s: %q does not begin with a command", h.ID, s)
			}
		}
		for _, s := range []string{h.Hazard, h.Result} {
			if command.MatchString(s) {
				t.Errorf("%s: %q commands outside avoid", h.ID, s)
			}
		}
		for _, s := range append([]string{h.Hazard, h.Result}, h.Avoid...) {
			if !strings.HasSuffix(s, ".") || strings.Count(s, ".") != 1 {
				t.Errorf("%s: %q is not one sentence", h.ID, s)
			}
			if n := len(strings.Fields(s)); n > 20 {
				t.Errorf("%s: %q has %d words", h.ID, s, n)
			}
			if w := vague.FindString(s); w != "" {
				t.Errorf("%s: %q is vague: %s", h.ID, s, w)
			}
		}
		for _, code := range h.Symbols {
			if _, ok := FindSymbol(code); !ok {
				t.Errorf("%s: symbol %s is not in the table", h.ID, code)
			}
		}
		if x, y, bad := Contradict(h.Symbols, h.Symbols); bad {
			t.Errorf("%s: %s and %s contradict each other", h.ID, x, y)
		}
	}
}

func TestSignal(t *testing.T) {
	if !(Danger > Warning && Warning > Caution && Caution > Notice && Notice > 0) {
		t.Error("the words are out of order")
	}
	for _, w := range []string{"danger", "warning", "caution", "notice"} {
		s, ok := ParseSignal(w)
		if !ok || s.String() != w || s.Word() != strings.ToUpper(w) {
			t.Errorf("%s read as %v", w, s)
		}
		if s.People() != (w != "notice") {
			t.Errorf("%s: People is %v", w, s.People())
		}
	}
	for _, w := range []string{"", "DANGER", "Warning", "attention"} {
		if s, ok := ParseSignal(w); ok {
			t.Errorf("%q read as %v", w, s)
		}
	}
	if w := Signal(99).Word(); w != "" {
		t.Errorf("an impossible word is %q", w)
	}
}

func TestSymbols(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range Symbols() {
		if seen[s.Code] || s.Meaning == "" {
			t.Errorf("%s stands twice or means nothing", s.Code)
		}
		seen[s.Code] = true
		if !strings.ContainsAny(s.Code[:1], "WMP") {
			t.Errorf("%s is neither a warning, a mandatory nor a prohibition sign", s.Code)
		}
		if s.Worn != "" && (s.Code[0] != 'M' || s.Meaning != "Wear "+s.Worn) {
			t.Errorf("%s means %q, and tells to put on %q", s.Code, s.Meaning, s.Worn)
		}
		if s.Worn == "" && strings.HasPrefix(s.Meaning, "Wear") {
			t.Errorf("%s means %q, and tells to put on nothing", s.Code, s.Meaning)
		}
	}
	for _, code := range []string{"", "W026", "w024", "M9", "X001"} {
		if s, ok := FindSymbol(code); ok {
			t.Errorf("%q is %v", code, s)
		}
	}
}

func TestContradict(t *testing.T) {
	x, y, ok := Contradict([]string{"W022", "M009"}, []string{"W089", "P028"})
	if !ok || x != "M009" || y != "P028" {
		t.Errorf("got %s %s %v", x, y, ok)
	}
	x, y, ok = Contradict([]string{"P028"}, []string{"M009"})
	if !ok || x != "P028" || y != "M009" {
		t.Errorf("the other way round: %s %s %v", x, y, ok)
	}
	if _, _, ok := Contradict([]string{"M009", "M004"}, []string{"M013", "P003"}); ok {
		t.Error("gloves and a face shield do not contradict")
	}
	if _, _, ok := Contradict(nil, nil); ok {
		t.Error("nothing contradicts")
	}
	// Two rows that no step may hold together.
	a, _ := Find("turning")
	for _, id := range []string{"hot", "oil", "solvent", "chemical", "sharp"} {
		b, _ := Find(id)
		if _, _, ok := Contradict(a.Symbols, b.Symbols); !ok {
			t.Errorf("turning and %s: gloves on and off at once", id)
		}
	}
}

func slugs(ms []Match) string {
	var out []string
	for _, m := range ms {
		out = append(out, m.ID)
	}
	slices.Sort(out)
	return strings.Join(out, " ")
}

// The caps that a row states in two units are the regulation's own in the one
// and rounded inward in the other: below 30 psi (29 CFR 1910.242(b)) is below
// 206 kPa, not 207.
func TestAirCap(t *testing.T) {
	psi, _ := quantity.UnitOf("psi")
	kPa, _ := quantity.UnitOf("kPa")
	inward := quantity.Scale{Unit: kPa, Step: big.NewRat(1, 1)}.Floor(quantity.Convert(big.NewRat(30, 1), psi, kPa))
	for _, h := range table {
		if h.ID != "air-clean" {
			continue
		}
		if want := "Keep the air below " + inward.RatString() + " kPa (30 psi)."; inward.RatString() != "206" || !slices.Contains(h.Avoid, want) {
			t.Errorf("%q, want %q", h.Avoid, want)
		}
		return
	}
	t.Error("no row for compressed air")
}
