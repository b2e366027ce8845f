package release

import (
	"reflect"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

func deck(code string, pages ...string) Deck {
	d := Deck{Variants: []string{"early"}, Code: code}
	for i, c := range pages {
		d.Pages = append(d.Pages, Page{i + 1, "Steps", c})
	}
	return d
}

// A page inserted before the others moves them, and none of them is printed
// again; one with other words may stay, one with another number comes back.
func TestBetween(t *testing.T) {
	old := &Release{Decks: []Deck{deck("AAAAA-AAAAA", "AAAAA-11110", "BBBBB-11110", "CCCCC-11110")}}
	now := &Release{Decks: []Deck{deck("BBBBB-AAAAA", "NNNNN-11110", "AAAAA-11110", "BBBBB-22220", "CCCC0-11110")}}
	want := Recall{
		Back:  []Of{{[]string{"early"}, []int{3}}},
		Mend:  []Of{{[]string{"early"}, []int{2}}},
		Moved: []Pair{{[]string{"early"}, 1, 2}},
		Print: []Of{{[]string{"early"}, []int{1, 3, 4}}},
	}
	if got := Between(old, now); !reflect.DeepEqual(got, want) {
		t.Errorf("%+v\nwant %+v", got, want)
	}
	if got := Between(nil, old); len(got.Back) != 0 || !reflect.DeepEqual(got.Print, []Of{{[]string{"early"}, []int{1, 2, 3}}}) {
		t.Errorf("a first release: %+v", got)
	}
	if got := Between(old, old); !reflect.DeepEqual(got, Recall{}) {
		t.Errorf("the same again: %+v", got)
	}
}

// What is appended is read again, whatever stands in it, below what a person
// wrote; codes of digits alone stay texts.
// The code of a record strip is that of its deck.
func TestFindOfADeck(t *testing.T) {
	x := &Release{Decks: []Deck{deck("AAAAA-AAAAA", "BBBBB-11110"), deck("CCCCC-AAAAA", "DDDDD-11110")}}
	if s, p, d := x.Find("CCCCC-AAAAA"); s != Current || p.Number != 0 || d != &x.Decks[1] {
		t.Errorf("%v, %+v, %+v", s, p, d)
	}
	if s, p, _ := x.Find("DDDDD-11110"); s != Current || p.Number != 1 {
		t.Errorf("%v, %+v", s, p)
	}
	if s, _, _ := x.Find("EEEEE-AAAAA"); s != Unknown {
		t.Errorf("%v", s)
	}
}

func TestAppendIsRead(t *testing.T) {
	a := &Release{Revision: "1.10", Date: "2026-10-02", Approver: `lead "A" \ b: c #1`, Copies: []string{"bench 2", "no"}, Decks: []Deck{deck("00000-00000", "12345-67890")}}
	b := &Release{Revision: "NO", Date: "2026-10-03", Approver: "shop lead", Decks: []Deck{{Code: "AAAAA-AAAAA", Pages: []Page{{1, "Step 1 of 1", "AAAAA-11110"}}}}}
	text := Append(Append(nil, "017", a), "017", b)
	msgs := &diag.List{}
	r := Read(syntax.ReadTree(source.NewFile("releases/017.yaml", text), msgs), msgs)
	if msgs.Len() > 0 || r.Card != "017" || len(r.Releases) != 2 {
		t.Fatalf("%+v %v\n%s", r, msgs.Sorted(), text)
	}
	for i, want := range []*Release{a, b} {
		got := *r.Releases[i]
		got.At = source.Place{}
		if !reflect.DeepEqual(&got, want) {
			t.Errorf("%+v\nwant %+v", got, *want)
		}
	}
	if r.Of("NO") != r.Releases[1] || r.Last() != r.Releases[1] || r.Of("A") != nil {
		t.Error("a revision is not found")
	}
}
