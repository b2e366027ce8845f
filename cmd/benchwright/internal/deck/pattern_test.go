package deck

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/card"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/unit"
	"benchwright/render"
)

// contactOf builds the pictures of one pattern block.
func contactOf(t *testing.T, gear, block string) render.Contact {
	t.Helper()
	msgs := &diag.List{}
	yaml := "unit: md-48\ntitle: Drive\npacks: {pinion-pack: {}, gear-pack: {}}\ngears: {bevel: {name: Bevel pair, " + gear + "}}\n"
	u := unit.Read(syntax.ReadTree(source.NewFile("unit.yaml", []byte(yaml)), msgs), quantity.Point, msgs)
	text := testFront + "### Set the depth {#depth}\n\n### Set the lash {#lash}\n\n### Read the pattern\n\n```pattern\n" + block + "\n```\n"
	p := (&procedure.Reader{Mark: quantity.Point, Msgs: msgs}).Read(syntax.ReadDoc(source.NewFile("a.md", []byte(text)), msgs))
	c := card.Make(p, u, nil, nil, &card.Library{Procedures: []*procedure.Procedure{p}}, msgs)
	if msgs.Len() > 0 {
		t.Fatal(msgs.Sorted()[0].Message)
	}
	for _, g := range Build(c, nil).Sections[1].Groups {
		for _, e := range g.Elements {
			if out, ok := e.Content.(render.Contact); ok {
				return out
			}
		}
	}
	t.Fatal("no pictures")
	return render.Contact{}
}

const branches = "high: {go: depth}\nlow: {go: depth, back: yes}\ntoe: {go: lash}\nheel: Call the lead.\nagain: 3\nthen: Stop."

func said(rows [][]render.Run) string {
	var out []string
	for _, r := range rows {
		out = append(out, words(r))
	}
	return strings.Join(out, " ")
}

// Sources give opposite words for the same fault: no direction is ours. Whatever
// the unit states, both ways and with either pack, is what the card says.
func TestPatternWordsFollowTheData(t *testing.T) {
	m := rand.New(rand.NewPCG(6, 48))
	for range 200 {
		word := func(thicker bool) string {
			if thicker {
				return "thicker"
			}
			return "thinner"
		}
		pack := func() string { return []string{"pinion", "gear"}[m.IntN(2)] }
		side := []string{"drive", "coast"}[m.IntN(2)]
		data, want := []string{}, []string{}
		for _, pair := range [][2]string{{"high", "low"}, {"toe", "heel"}} {
			p, first := pack(), m.IntN(2) == 0
			for i, fault := range pair {
				change := word(first == (i == 0))
				data = append(data, fmt.Sprintf("%s: {pack: %s-pack, change: %s}", fault, p, change))
				want = append(want, strings.ToUpper(fault[:1])+fault[1:]+": ", change+" "+p+" pack.")
			}
		}
		got := contactOf(t, "drive-side: convex, contact: {"+side+": {right: central, "+strings.Join(data, ", ")+", source: m}}", "side: "+side+"\n"+branches)
		for i := range 4 {
			if s := said(got.Rows[i+1].Do); !strings.HasPrefix(s, want[2*i]) || !strings.Contains(s, want[2*i+1]) {
				t.Fatalf("%v: %q, want %q", data, s, want[2*i:2*i+2])
			}
		}
	}
}

const contact = "contact: {drive: {right: toward-toe, " + corrections + ", source: \"manual, figure 4\"}, coast: {right: central, " + corrections + ", source: m}}"
const corrections = "high: {pack: pinion-pack, change: thicker}, low: {pack: pinion-pack, change: thinner}, toe: {pack: gear-pack, change: thicker}, heel: {pack: gear-pack, change: thinner}"

func TestPatternWords(t *testing.T) {
	for _, c := range []struct{ drives, block, title, rows, under string }{
		{"convex", "side: drive\n" + branches, "The drive side of the gear tooth: the convex one",
			"A Right: a little toward the toe. Go on.|B High: thicker pinion pack. Go to step 1.|C Low: thinner pinion pack. Step 1, then back here.|D Toe: thicker gear pack. Go to step 2.|E Heel: Call the lead. Manual: thinner gear pack.",
			"Depth first (B, C), backlash last (D, E). Check again, at most 3 times. Still wrong: Stop."},
		{"convex", "side: coast\n" + strings.Replace(branches, "3", "1", 1), "The coast side of the gear tooth: the concave one", "A Right: in the middle. Go on.",
			"Depth first (B, C), backlash last (D, E). Correct it once, then check again. Still wrong: Stop."},
		{"convex", "side: drive\nhigh: Call.\nlow: Call.\ntoe: {go: lash}\nheel: Call.\nagain: 1\nthen: Stop.", "The drive side of the gear tooth: the convex one",
			"A Right: a little toward the toe. Go on.|B High: Call. Manual: thicker pinion pack.", "Correct it once, then check again. Still wrong: Stop."},
		{"concave", "side: drive\n" + branches, "The drive side of the gear tooth: the concave one", "A Right: ", ""},
		{"the side that faces the cover", "side: drive\n" + branches, "The drive side of the gear tooth: the side that faces the cover", "A Right: ", ""},
		{"the side that faces the cover", "side: coast\n" + branches, "The coast side of the gear tooth. The drive side is the side that faces the cover", "A Right: ", ""},
		{"convex", "side: drive\nas-found: yes", "The drive side of the gear tooth: the convex one",
			"A Right: a little toward the toe.|B High: near the top of the tooth.|C Low: near the root of the tooth.|D Toe: near the small end.|E Heel: near the large end.", "Mark what you see."},
	} {
		got := contactOf(t, "drive-side: "+c.drives+", "+contact, c.block)
		var rows []string
		for _, r := range got.Rows {
			rows = append(rows, r.Letter+" "+said(r.Do))
		}
		if words(got.Title) != c.title || !strings.HasPrefix(strings.Join(rows, "|"), c.rows) || c.under != "" && said(got.Under) != c.under {
			t.Errorf("%s, %q:\n%q\n%q\n%q", c.drives, c.block, words(got.Title), rows, said(got.Under))
		}
	}
}

// The pictures differ as their names say: the right one is nearest to the
// middle, opposite faults lie on opposite sides of it, and nothing leaves the
// tooth.
func TestPatches(t *testing.T) {
	got := contactOf(t, "drive-side: convex, "+contact, "side: drive\n"+branches)
	right := got.Rows[0]
	for _, r := range got.Rows {
		if r.Along-r.Half < 20 || r.Along+r.Half > 980 || r.Up-r.Height < 20 || r.Up+r.Height > 980 {
			t.Errorf("%s leaves the tooth: %+v", r.Letter, r)
		}
	}
	high, low, toe, heel := got.Rows[1], got.Rows[2], got.Rows[3], got.Rows[4]
	if low.Up+low.Height >= right.Up || right.Up >= high.Up-high.Height || toe.Along+toe.Half >= right.Along || right.Along >= heel.Along-heel.Half {
		t.Errorf("%+v", got.Rows)
	}
	if right.Along >= 500 {
		t.Errorf("a right pattern toward the toe lies at %d", right.Along)
	}
}
