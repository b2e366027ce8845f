package cli

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"strings"

	"benchwright/cmd/benchwright/internal/compare"
	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/workspace"
	"benchwright/render/checkcode"
)

// trace says by a check code whether the page that bears it is current. It looks
// at the releases, at the files as they are, and at git's history of them.
func trace(c *call) int {
	history := c.flags.Int("history", 100, "how many commits back to look, `NUMBER`; 0 for none")
	paper := c.flags.String("paper", "", "the page size of the laminates, `NAME` (default: the shop's, else A4)")
	if code, ok := c.parse(); !ok {
		return code
	}
	at := "."
	if n := len(c.paths); n > 1 {
		if _, err := os.Stat(c.absolute(c.paths[n-1])); err == nil {
			at, c.paths = c.paths[n-1], c.paths[:n-1]
		}
	}
	code, err := typedCode(c.paths)
	if err != nil {
		return fail(c.Streams, err)
	}
	o := compile.Options{Paper: *paper}
	if err := o.Check(); err != nil {
		return fail(c.Streams, err)
	}
	spaces, err := workspace.Load(c.Dir, []string{at}, nil, &diag.List{})
	if err != nil {
		return fail(c.Streams, err)
	}
	t := &tracer{c, code, o, spaces[0], nil}
	for _, r := range compile.Run(context.Background(), t.space, o, &diag.List{}) {
		t.cards = append(t.cards, traced{r, compile.Release(r.Decks)})
	}
	for _, find := range []func(release.Standing) bool{t.released, t.asWritten} {
		if find(release.Current) {
			return exitOK
		}
	}
	if t.replaced() || t.inHistory(*history) {
		return exitFound
	}
	for _, find := range []func(release.Standing) bool{t.released, t.asWritten} {
		if find(release.WordingOnly) {
			return exitFound
		}
	}
	t.unknown(*history)
	return exitFound
}

// typedCode reads a code that the shell may have split at its blanks, or all that
// a QR code holds, in which the code stands last.
func typedCode(words []string) (checkcode.Code, error) {
	all := strings.Join(words, " ")
	code, err := checkcode.Parse(all)
	if err == nil {
		return code, nil
	}
	if fields := strings.Fields(all); len(fields) > 2 {
		if code, err := checkcode.Parse(fields[len(fields)-1]); err == nil {
			return code, nil
		}
	}
	if all == "" {
		return "", fmt.Errorf("name the code: it stands in the head of the page, in the outer corner, as in `benchwright trace 7QK4M-2XR9C procedures`")
	}
	return "", fmt.Errorf("`%s` is no check code, %w: read it again, it has the form 7QK4M-2XR9C", all, err)
}

// A traced is a card with its pages as the files are now.
type traced struct {
	*compile.Result
	now *release.Release
}

// A tracer looks for the page that bears a code.
type tracer struct {
	*call
	code    checkcode.Code
	options compile.Options
	space   *workspace.Workspace
	cards   []traced
}

// page names a page of a card.
func (c traced) page(p *release.Page, d *release.Deck, revision string) string {
	text := fmt.Sprintf("%s %s, revision %s, ", c.Procedure.Number.Name, c.Procedure.Title.Name, revision)
	if p.Number == 0 {
		return text + "the deck of a record strip" + forVariants(d.Variants)
	}
	text += fmt.Sprintf("page %d", p.Number)
	if p.Shows != "" {
		text += ", " + p.Shows
	}
	return text + forVariants(d.Variants)
}

// away says what to do with a page that does not hold any more; one without a number
// is known by a record strip.
func away(p *release.Page) string {
	if p.Number == 0 {
		return "Start no job with such a strip"
	}
	return "Take it off the bench"
}

// released looks in the newest release of each card.
func (t *tracer) released(want release.Standing) bool {
	for _, c := range t.cards {
		last := c.Record.Last()
		if last == nil {
			continue
		}
		s, p, d := last.Find(t.code)
		if s != want {
			continue
		}
		fmt.Fprintf(t.Out, "%s: %s\n", t.code, c.page(p, d, last.Revision))
		if s == release.WordingOnly {
			t.otherWords()
			return true
		}
		fmt.Fprintf(t.Out, "CURRENT: released on %s, approved by %s\n", last.Date, last.Approver)
		for _, old := range c.Record.Releases {
			if s, _, _ := old.Find(t.code); s == release.Current && old != last {
				fmt.Fprintf(t.Out, "the page has said this since revision %s: a laminate with that revision holds too\n", old.Revision)
				break
			}
		}
		if s, _, _ := c.now.Find(t.code); s != release.Current && c.Errors == 0 {
			fmt.Fprintf(t.Out, "the files say something else, in revision %s, which is not released yet\n", c.Procedure.Revision)
		}
		return true
	}
	return false
}

// asWritten looks at the cards as their files are now.
func (t *tracer) asWritten(want release.Standing) bool {
	for _, c := range t.cards {
		s, p, d := c.now.Find(t.code)
		if s != want {
			continue
		}
		fmt.Fprintf(t.Out, "%s: %s\n", t.code, c.page(p, d, c.Procedure.Revision))
		switch {
		case s == release.WordingOnly:
			t.otherWords()
		case c.Record != nil:
			fmt.Fprintf(t.Out, "NOT RELEASED: the files say this, the last release, %s, does not. Release it with `benchwright release`, or bring the page back\n", c.Record.Last().Revision)
		case c.Procedure.Draft:
			fmt.Fprintf(t.Out, "a page of a DRAFT, as its file is now: no work is done by it\n")
		default:
			fmt.Fprintf(t.Out, "CURRENT by the files as they are; no release of this card is recorded\n")
		}
		return true
	}
	return false
}

func (t *tracer) otherWords() {
	fmt.Fprintf(t.Out, "NOT CURRENT in its words: what is set, read and done is the same. It may stay until it is printed anew\n")
}

// replaced looks in the older releases, and says what has changed since.
func (t *tracer) replaced() bool {
	for _, c := range t.cards {
		if c.Record == nil {
			continue
		}
		for i := len(c.Record.Releases) - 1; i >= 0; i-- {
			old := c.Record.Releases[i]
			s, p, d := old.Find(t.code)
			if s != release.Current {
				continue
			}
			last := c.Record.Last()
			fmt.Fprintf(t.Out, "%s: %s, released on %s\n", t.code, c.page(p, d, old.Revision), old.Date)
			if s, _, _ := last.Find(t.code); s == release.WordingOnly {
				t.otherWords()
			} else {
				fmt.Fprintf(t.Out, "NOT CURRENT: revision %s of %s replaced it. %s\n", last.Revision, last.Date, away(p))
			}
			if hash, w := t.commit(c.Procedure.Number.Name, 1000); hash != "" {
				t.since(hash, w, c.Procedure.Number.Name)
			} else {
				fmt.Fprintf(t.Out, "what has changed since cannot be told: git has no commit with this page\n")
			}
			return true
		}
	}
	return false
}

// inHistory looks in git's history.
func (t *tracer) inHistory(most int) bool {
	hash, w := t.commit("", most)
	if hash == "" {
		return false
	}
	for _, r := range compile.Run(context.Background(), w, t.options, &diag.List{}) {
		s, p, d := compile.Release(r.Decks).Find(t.code)
		if s != release.Current {
			continue
		}
		fmt.Fprintf(t.Out, "%s: %s, as it was in commit %.12s\n", t.code, traced{Result: r}.page(p, d, r.Procedure.Revision), hash)
		fmt.Fprintf(t.Out, "NOT CURRENT: no page says this any more. %s\n", away(p))
		t.since(hash, w, r.Procedure.Number.Name)
	}
	return true
}

// commit returns the newest commit in which a page has the code, and the
// workspace as it was then; "" for none. With a number it looks at that card
// alone.
func (t *tracer) commit(number string, most int) (string, *workspace.Workspace) {
	if most <= 0 {
		return "", nil
	}
	commits, err := workspace.Commits(t.space.Root, most)
	if err != nil {
		return "", nil
	}
	seen := map[string]bool{}
	for _, hash := range commits {
		w, err := workspace.LoadRevision(t.space.Root, hash, "./", &diag.List{})
		if err != nil {
			continue
		}
		only(w, number)
		unseen(w, seen)
		for _, r := range compile.Run(context.Background(), w, t.options, &diag.List{}) {
			if s, _, _ := compile.Release(r.Decks).Find(t.code); s == release.Current {
				return hash, w
			}
		}
	}
	return "", nil
}

// only leaves the procedure of one card named, "" for all.
func only(w *workspace.Workspace, number string) {
	for _, e := range w.Procedures {
		e.Named = number == "" || bytes.Contains(e.File.Text, []byte(number))
	}
}

// unseen leaves those procedures named whose cards are made from other files than
// in the commits looked at before, and notes them.
func unseen(w *workspace.Workspace, seen map[string]bool) {
	fresh := map[string]bool{}
	for _, p := range compile.Resolve(w, &diag.List{}) {
		rests := fmt.Sprint(p.File, p.Rests) // a map is printed in the order of its keys
		fresh[p.File] = !seen[rests]
		seen[rests] = true
	}
	for _, e := range w.Procedures {
		e.Named = fresh[e.File.Name]
	}
}

// since prints what has changed on a card since a commit.
func (t *tracer) since(hash string, old *workspace.Workspace, number string) {
	only(old, number)
	only(t.space, number)
	report := compare.Sides(compile.Resolve(old, &diag.List{}), compile.Resolve(t.space, &diag.List{}))
	one := *report
	one.Cards = nil
	for _, c := range report.Cards {
		if c.Number == number {
			one.Cards = append(one.Cards, c)
		}
	}
	fmt.Fprintf(t.Out, "\nchanged since commit %.12s:\n\n", hash)
	if err := one.WriteText(t.Out, t.Colored); err != nil {
		fail(t.Streams, err)
	}
}

// unknown says that no page has the code, and what to do next.
func (t *tracer) unknown(most int) {
	where := "in the releases and files of this workspace"
	if commits, err := workspace.Commits(t.space.Root, most); err == nil && most > 0 {
		where += " or in " + count(len(commits), "commit", "commits") + " of its history"
	} else {
		where += ", and there is no git history to look in"
	}
	fmt.Fprintf(t.Out, "%s: UNKNOWN, no page has this code %s\n", t.code, where)
	for _, c := range t.cards {
		if c.Errors > 0 || c.Fault != nil {
			fmt.Fprintf(t.Out, "%s has errors, so its pages are not known: mend them and trace again\n", c.Procedure.Number.Name)
		}
	}
	fmt.Fprintf(t.Out, "take the page off the bench. Then read the code again, name the workspace that the card comes from, or look further back with --history\n")
}
