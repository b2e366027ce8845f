package compile

import (
	"bytes"
	"context"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/syntax"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/dump"
	"benchwright/schema"
)

// No key is read in vain: in the examples of the blocks, the pages, the scripts,
// the demo and testdata/keys.txtar, which has what those leave out, there is a
// place for each key of the schemas where the cards or the messages become others
// when the key is taken out, or another value stands there that may stand there.

// unshown are the words by which a schema says of a key that its value changes no
// card, because what will show it is not built, or because it is for review.
var unshown = regexp.MustCompile(`no card shows (it|them)\b`)

// An outcome is all that the writer and the apprentice see of a workspace.
type outcome struct {
	said  []diag.Diagnostic
	faces string
}

func outcomeOf(t testing.TB, w *workspace.Workspace) outcome {
	msgs := &diag.List{}
	var mu sync.Mutex
	decks := map[string]string{}
	emit := func(m *Made) error {
		var text bytes.Buffer
		fmt.Fprintln(&text, m.Info)
		err := dump.Write(&text, m.Sheets)
		mu.Lock()
		defer mu.Unlock()
		decks[m.Name] = text.String()
		return err
	}
	for _, r := range Run(context.Background(), w, Options{WorkDate: "2100-01-01", Emit: emit}, msgs) {
		if r.Fault != nil {
			t.Fatal(r.Fault)
		}
	}
	out := outcome{said: msgs.Sorted()}
	for _, name := range slices.Sorted(maps.Keys(decks)) {
		out.faces += name + "\n" + decks[name]
	}
	return out
}

// differs reports whether a change of a key shows on the faces or in the
// messages. That the schema refuses what was written there shows nothing, and
// that a name is looked up only where the key must be there.
func (o outcome) differs(before outcome, required bool) bool {
	silent := []string{schema.KeyMissing, schema.KeyUnknown, schema.ValueKind, schema.ValueUnknown, "yaml-malformed", "yaml-indent",
		"quantity-malformed", "measure-kind", "id-malformed"}
	fresh := false
	for _, d := range o.said {
		if slices.Contains(silent, d.Slug) || !required && strings.HasSuffix(d.Slug, "-unknown") {
			return false
		}
		fresh = fresh || !slices.ContainsFunc(before.said, func(b diag.Diagnostic) bool { return b.Slug == d.Slug && b.Message == d.Message && b.Fix == d.Fix })
	}
	return fresh || len(o.said) < len(before.said) || o.faces != before.faces
}

// with returns the workspace with another text in the place of a file's.
func (b *book) with(f *source.File, text string) *workspace.Workspace {
	w, other := *b.Workspace, source.NewFile(f.Name, []byte(text))
	of := func(g *source.File) *source.File {
		if g == f {
			return other
		}
		return g
	}
	w.Shop = of(w.Shop)
	w.Units, w.Procedures = nil, nil
	for _, u := range b.Units {
		w.Units = append(w.Units, of(u))
	}
	for _, p := range b.Procedures {
		w.Procedures = append(w.Procedures, &workspace.Entry{File: of(p.File), Unit: of(p.Unit), Named: p.Named})
	}
	return &w
}

// changed returns the texts of the file with the key taken out, where it may be,
// and with other values: those that it has elsewhere in the workspace, too.
func (u use) changed(k *key, elsewhere []use) []string {
	text := string(u.file.Text)
	from, to := u.field.KeySpan.Start, u.field.Value.Span.End
	var out []string
	if !k.required {
		if text[u.within.Span.Start] == '{' {
			if rest := strings.TrimLeft(text[to:], " \n"); strings.HasPrefix(rest, ",") {
				to = len(text) - len(rest) + 1
			} else if head := strings.TrimRight(text[:from], " \n"); strings.HasSuffix(head, ",") {
				from = len(head) - 1
			}
			out = append(out, text[:from]+text[to:])
		} else {
			from = strings.LastIndexByte(text[:from], '\n') + 1
			if n := strings.IndexByte(text[to:], '\n'); n >= 0 {
				to += n + 1
			}
			out = append(out, text[:from]+text[to:])
		}
	}
	at := u.field.Value.Span
	put := func(by string) { out = append(out, text[:at.Start]+by+text[at.End:]) }
	seen := map[string]bool{}
	for _, o := range elsewhere {
		if by := o.field.Value.Place().Text(); o.of == u.of && o.field.Value.Kind != syntax.Mapping && !strings.Contains(by, "\n") && !seen[by] {
			seen[by] = true
			put(by)
		}
	}
	v := u.field.Value
	if v.Kind == syntax.Sequence && len(v.Items) > 0 {
		v = v.Items[len(v.Items)-1]
		at = v.Span
	}
	if v.Kind == syntax.Scalar {
		for _, by := range others(k.schema, v.Text) {
			put(by)
		}
	}
	return out
}

// others returns values like one, which may stand in its place as well as not.
func others(s map[string]any, text string) []string {
	if words, ok := s["enum"].([]any); ok {
		var out []string
		for _, w := range words {
			if w := fmt.Sprint(w); w != text {
				out = append(out, w)
			}
		}
		return out
	}
	i := strings.IndexAny(text, "123456789")
	if i < 0 {
		return []string{`"` + strings.ReplaceAll(text, `"`, "") + `x"`, "the other one"}
	}
	var out []string
	for _, digit := range []byte{text[i] + 1, text[i] - 1} {
		if digit >= '1' && digit <= '9' {
			out = append(out, `"`+text[:i]+string(digit)+text[i+1:]+`"`)
		}
	}
	return out
}

// sound reports whether the workspace has no error, which would hide what a
// change does.
func (b *book) sound() bool {
	return !slices.ContainsFunc(b.before().said, func(d diag.Diagnostic) bool { return d.Severity() == diag.Error })
}

func TestNoKeyInVain(t *testing.T) {
	t.Parallel()
	keys, uses := corpus(t)
	shown := map[*key]bool{}
	shows := func(k *key, tried []use) bool {
		return slices.ContainsFunc(tried, func(u use) bool {
			return slices.ContainsFunc(u.changed(k, uses[k]), func(text string) bool {
				return u.of.sound() && outcomeOf(t, u.of.with(u.file, text)).differs(u.of.before(), k.required)
			})
		})
	}
	// What holds a key that shows is not in vain.
	holds := func(k *key) bool {
		return slices.ContainsFunc(uses[k], func(u use) bool {
			for other, list := range uses {
				if shown[other] && slices.ContainsFunc(list, func(v use) bool {
					return v.of == u.of && v.file == u.file && u.field.Value.Span.Start <= v.field.KeySpan.Start && v.field.KeySpan.End <= u.field.Value.Span.End
				}) {
					return true
				}
			}
			return false
		})
	}
	names := slices.Sorted(maps.Keys(keys))
	plain := func(name string) bool {
		return !slices.ContainsFunc(uses[keys[name]], func(u use) bool {
			v := u.field.Value
			return v.Kind == syntax.Mapping || len(v.Items) > 0 && v.Items[0].Kind == syntax.Mapping
		})
	}
	inner := slices.DeleteFunc(slices.Clone(names), func(name string) bool { return !plain(name) })
	outer := slices.DeleteFunc(names, plain)
	for _, name := range append(inner, outer...) {
		k := keys[name]
		text, _ := k.schema["description"].(string)
		switch {
		case len(uses[k]) == 0:
			t.Errorf("%s: no example has it", name)
		case unshown.MatchString(text):
			if shown[k] = shows(k, uses[k][:min(3, len(uses[k]))]); shown[k] {
				t.Errorf("%s: a card shows it, and its description says that none does", name)
			}
		case plain(name) || !holds(k):
			if shown[k] = shows(k, uses[k]); !shown[k] {
				t.Errorf("%s: whatever is written, the cards stay as they are (%d places)", name, len(uses[k]))
			}
		}
	}
}

// The kind that a schema states of a quantity is the one that its reader asks
// for: it takes a value of it, and refuses one of another.
func TestQuantityKinds(t *testing.T) {
	t.Parallel()
	right := map[string]string{"length": "5 mm", "mass": "3 kg", "torque": "10 N·m", "angle": "20°", "pressure": "100 kPa", "percent": "5 %", "number": "3"}
	keys, uses := corpus(t)
	refused := func(u use, by string) bool {
		v := u.field.Value
		if v.Kind == syntax.Sequence && len(v.Items) > 0 {
			v = v.Items[len(v.Items)-1]
		}
		text := string(u.file.Text)
		said := outcomeOf(t, u.of.with(u.file, text[:v.Span.Start]+by+text[v.Span.End:])).said
		return slices.ContainsFunc(said, func(d diag.Diagnostic) bool {
			return d.At.File.Name == u.file.Name && d.At.Span.Start >= v.Span.Start && d.At.Span.End <= v.Span.Start+len(by) &&
				(d.Slug == "measure-kind" || d.Slug == "quantity-malformed" && by == "3 kg")
		})
	}
	for _, name := range slices.Sorted(maps.Keys(keys)) {
		k := keys[name]
		kind := k.kind()
		if kind == "" || kind == "any" {
			continue
		}
		i := slices.IndexFunc(uses[k], func(u use) bool { return u.field.Value.Kind != syntax.Mapping && u.of.sound() })
		if i < 0 {
			t.Errorf("%s: no example has it", name)
			continue
		}
		wrong := "3 kg"
		if kind == "mass" {
			wrong = "5 mm"
		}
		if right[kind] == "" || refused(uses[k][i], right[kind]) || !refused(uses[k][i], wrong) {
			t.Errorf("%s: it is not read as %s", name, kind)
		}
	}
}
