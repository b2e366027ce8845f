package procedure

import (
	"fmt"
	"strings"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
)

const front = "---\ncard: MD48-20\ntitle: Strip the drive\nunit: md-48\nrevision: A\ndate: 2026-10-02\n---\n\n"

// read reads a procedure and returns it with its messages as "slug [text]".
func read(t *testing.T, text string) (*Procedure, string) {
	t.Helper()
	msgs := &diag.List{}
	doc := syntax.ReadDoc(source.NewFile("strip.md", []byte(text)), msgs)
	r := Reader{Mark: quantity.Point, Msgs: msgs}
	p := r.Read(doc)
	var out []string
	for _, d := range msgs.Sorted() {
		out = append(out, d.Slug+" ["+d.At.Text()+"]")
	}
	return p, strings.Join(out, "; ")
}

// kinds writes what items there are: "Prose Torque Invalid:tool".
func kinds(items []Item) string {
	var out []string
	for _, i := range items {
		s := strings.TrimPrefix(fmt.Sprintf("%T", i), "*procedure.")
		if bad, ok := i.(*Invalid); ok {
			s += ":" + bad.Type
		}
		out = append(out, s)
	}
	return strings.Join(out, " ")
}

// What could not be read becomes Invalid, and is one message.
func TestBlocks(t *testing.T) {
	for _, c := range []struct{ content, kinds, messages string }{
		{"Wipe it.\n", "Prose", ""},
		{"```tool\nuse: a\n```\n", "Tool", ""},
		{"```torque\nfastener: a\nlimits: 1 to 2 N·m\n```\n", "Torque", ""},
		{"```measurement\nof: a\nlimits: b\n```\n", "Measurement", ""},
		{"```caution\nlevel: notice\n```\n", "Caution", ""},
		{"```hold-point\nwho: a\n```\n", "HoldPoint", ""},
		{"```figure\nimage: a.png\ncall-outs: [{at: [5 %, 99.9 %], says: a}]\n```\n", "Figure", ""},
		{"```figure\nimage: a.png\ncall-outs: [{at: [5 %, 100.1 %], says: a}]\n```\n", "Invalid:figure", "call-out-place [100.1 %]"},
		{"```figure\nimage: a.SVG\nlegend: [a, b]\ncall-outs: [{at: [5 %, 9 %], says: c}]\n```\n", "Figure", ""},
		{"```figure\nimage: a.gif\nlegend: [a, b]\n```\n", "Invalid:figure", "picture-kind [a.gif]"},
		{"```pattern\nside: drive\n```\n", "Pattern", ""},
		{"```timed\nwithin: 10 min\n```\n", "Timed", ""},
		{"```timed\nwithin: at least 10 min\n```\n", "Invalid:timed", "quantity-malformed [at least 10 min]"},
		{"```tol\nuse: a\n```\n", "Invalid:tol", "block-unknown [tol]"},
		{"```tool\nuse: [a\n```\n", "Invalid:tool", "yaml-unclosed [[]"},
		{"```torque\nfastener: a\npasses: [3]\nlimits: b\n```\n", "Invalid:torque", "measure-missing [3]"},
		{"```torque\nfastener: a\nlimits: b\nadapter: {tool: c, length: -60 mm}\n```\n", "Torque", "quantity-malformed [-60 mm]"},
		{"```torque\nfastener: a\nlimits: b\nback-off: until loose\nagain: 3 to 4 mm\n```\n", "Torque", "measure-kind [mm]"},
	} {
		p, messages := read(t, front+"## Work\n\n### Step\n\n"+c.content)
		if got := kinds(p.Stages[0].Steps[0].Items); got != c.kinds || messages != c.messages {
			t.Errorf("%q: %s, messages %q", c.content, got, messages)
		}
	}
}

// A type that is planned is refused by its name.
func TestPlanned(t *testing.T) {
	for _, kind := range Planned {
		p, messages := read(t, front+"## Work\n\n### Step\n\n```"+kind+"\nof: a\n```\n")
		if got := kinds(p.Stages[0].Steps[0].Items); got != "Invalid:"+kind || messages != "block-not-yet ["+kind+"]" {
			t.Errorf("%s: %s, messages %q", kind, got, messages)
		}
	}
}

// A typed block belongs to a step: no rule would see it elsewhere, and no face
// would number it. A run of them is one slip.
func TestBlocksOutsideSteps(t *testing.T) {
	const tool = "```tool\nuse: a\n```\n\n"
	const reading = "```measurement\nof: a\n```\n\n"
	for _, c := range []struct{ text, messages string }{
		{"## Work\n\nRead this first.\n\n### Step\n\n" + tool, ""},
		{tool + "## Work\n\n### Step\n\nWipe it.\n", "block-place [tool]"},
		{"## Work\n\n" + tool + reading + "### Step\n\nWipe it.\n", "block-place [tool]"},
		{"## Work\n\n" + tool + "### Step\n\nWipe it.\n\n## More\n\n" + reading + "### Step\n\nWipe it.\n", "block-place [tool]; block-place [measurement]"},
		{"## Work\n\n```shim\npack: a\n```\n\n### Step\n\nWipe it.\n", "block-place [shim]"},
	} {
		p, messages := read(t, front+c.text)
		if messages != c.messages {
			t.Errorf("%q: %q, want %q", c.text, messages, c.messages)
		}
		for _, items := range [][]Item{p.Lead, p.Stages[0].Items} {
			for _, i := range items {
				switch i.(type) {
				case *Prose, *Invalid:
				default:
					t.Errorf("%q: a %T outside a step", c.text, i)
				}
			}
		}
	}
}

func TestLimits(t *testing.T) {
	for _, c := range []struct {
		yaml            string
		name            string
		band, none, bad bool
		messages        string
	}{
		{"limits: lash", "lash", false, false, false, ""},
		{"limits: 0.1 to 0.2 mm", "", true, false, false, ""},
		{"limits: none\nbecause: a note", "", false, true, false, ""},
		{"of: a", "", false, false, false, ""},
		{"limits: 0.1-0.2 mm", "", false, false, true, "range-hyphen [0.1-0.2]"},
		{"limits: 0.2 to 0.1 mm", "", false, false, true, "limits-reversed [0.2 to 0.1]"},
		{"limits: 0.1 to 0.2", "", false, false, true, "measure-missing [0.2]"},
		{"limits: [a, b]", "", false, false, true, "value-kind [[a, b]]"}, // the schema says it first, where it is asked
	} {
		p, messages := read(t, front+"## Work\n\n### Step\n\n```measurement\n"+c.yaml+"\n```\n")
		l := p.Stages[0].Steps[0].Items[0].(*Measurement).Limits
		slug, _, _ := strings.Cut(messages, " ")
		want, _, _ := strings.Cut(c.messages, " ")
		if l.Named.Name != c.name || (l.Band != nil) != c.band || l.None != c.none || l.Bad.IsSet() != c.bad || slug != want || strings.Contains(messages, "; ") {
			t.Errorf("%q: %+v, messages %q", c.yaml, l, messages)
		}
	}
}

// What the trade also calls a block is fixed to our word for it.
func TestSynonyms(t *testing.T) {
	for kind, want := range map[string]string{
		"witness": "write `hold-point`", "warning": "write `caution`, with `level: warning` in it", "Danger": "write `caution`, with `level: danger` in it",
		"hazard": "write `caution`", "measure": "write `measurement`", "reading": "write `measurement`", "tighten": "write `torque`", "tools": "write `tool`",
		"torqe": "write `torque`", "zebra": "use one of: " + strings.Join(Built, ", "),
	} {
		msgs := &diag.List{}
		doc := syntax.ReadDoc(source.NewFile("strip.md", []byte(front+"## Work\n\n### Step\n\n```"+kind+"\nof: a\n```\n")), msgs)
		(&Reader{Mark: quantity.Point, Msgs: msgs}).Read(doc)
		if got := msgs.Sorted(); len(got) != 1 || got[0].Slug != "block-unknown" || got[0].Fix != want {
			t.Errorf("%s: %v", kind, got)
		}
	}
}

// A list that lacks its brackets, which the schema reports, names nothing; a
// text keeps its comma.
func TestListWithoutBrackets(t *testing.T) {
	msgs := &diag.List{}
	doc := syntax.ReadDoc(source.NewFile("strip.md", []byte("---\ncard: MD48-20\nvariants: early, late\nafter: MD48-10, MD48-15\nparts: nut, race\nconditions: Drained, cold\n---\n\n## W\n\n### S\n")), msgs)
	doc.Front.Refused = (&diag.List{}).Report("value-kind", source.Place{}, "", "by the schema").Proof()
	p := (&Reader{Mark: quantity.Point, Msgs: msgs}).Read(doc)
	if msgs.Len() > 0 || len(p.Variants)+len(p.After)+len(p.Parts) != 0 || len(p.Conditions) != 1 || p.Conditions[0].Name != "Drained, cold" {
		t.Errorf("%v %+v", msgs.Sorted(), p)
	}
}

// Front matter is read as typed: a number stays the text that it was.
func TestFront(t *testing.T) {
	p, messages := read(t, "---\ncard: MD48-20\ntitle:  Strip   the drive\nunit: md-48\nrevision: 1.10\ndate: 2026-10-02\nvariants: late\nafter: [MD48-10, MD48-15]\n"+
		"conditions: One\nstop-points: [a, {after: b, say: Cover it}]\naccept: [{message: why-missing, at: c, because: known}]\nstatus: draft\n---\n\n## W\n\n### S\n")
	if messages != "" {
		t.Error(messages)
	}
	if p.Revision != "1.10" || p.Title.Name != "Strip the drive" || !p.Draft || len(p.Variants) != 1 || len(p.After) != 2 || len(p.Conditions) != 1 {
		t.Errorf("%+v", p)
	}
	if s := p.StopPoints; len(s) != 2 || s[0].After.Name != "a" || s[1].After.Name != "b" || s[1].Say != "Cover it" {
		t.Errorf("%+v", s)
	}
	if a := p.Accept; len(a) != 1 || a[0].Slug.Name != "why-missing" || a[0].Step.Name != "c" || a[0].Because != "known" {
		t.Errorf("%+v", a)
	}
}

// The least time is no time limit, and no mend makes the one of the other.
func TestLeastTime(t *testing.T) {
	for _, within := range []string{"at least 10 min", "At least 2 h", "min 10 min", "min. 10 min", "minimum 24 h", "not less than 10 min",
		"more than 1 h", "longer than 1 h", "over 1 h", "above 1 h", "> 10 min", "≥ 10 min", ">= 10 min"} {
		msgs := &diag.List{}
		doc := syntax.ReadDoc(source.NewFile("strip.md", []byte(front+"## Work\n\n### A\n\n```timed\nwithin: \""+within+"\"\nfrom: it is on\n```\n")), msgs)
		r := Reader{Mark: quantity.Point, Msgs: msgs}
		r.Read(doc)
		if all := msgs.Sorted(); len(all) != 1 || !strings.Contains(all[0].Message, "cannot say `"+within+"`") ||
			all[0].Fix != "say in the words of the step how long to wait, and take this block out" {
			t.Errorf("%s: %v", within, all)
		}
	}
}
