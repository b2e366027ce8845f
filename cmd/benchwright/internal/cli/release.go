package cli

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"

	"benchwright/cmd/benchwright/internal/compile"
	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/shop"
	"benchwright/cmd/benchwright/internal/workspace"
)

// releaseCards records a release of every named card, prints what it asks for at
// the benches, and writes the pages to print.
func releaseCards(c *call) int {
	o := &options{format: "text"}
	c.flags.StringVar(&o.Paper, "paper", "", "page size `NAME`: "+strings.Join(compile.Papers(), ", ")+" (default: the shop's, else A4)")
	date := c.flags.String("date", "", "the day of the release, `DATE` as 2026-11-25")
	approver := c.flags.String("approved-by", "", "the `ROLE` of the person who approved it")
	copies := c.flags.String("copies", "", "where each copy hangs, `PLACES` as \"bench 2, bench 4\" (default: as in the release before)")
	folder := c.flags.String("o", "out", "the `FOLDER` to write the pages to print to")
	if code, ok := c.begin(o); !ok {
		return code
	}
	switch {
	case !shop.IsDate(*date):
		return fail(c.Streams, fmt.Errorf("`%s` is not a date: write --date year-month-day, as in --date 2026-11-25", *date))
	case strings.TrimSpace(*approver) == "":
		return fail(c.Streams, fmt.Errorf("name who approved it: --approved-by with a role, as in --approved-by \"shop lead\""))
	}
	out := &output{dir: c.absolute(*folder)}
	msgs := &diag.List{}
	spaces, err := workspace.Load(c.Dir, c.paths, []string{out.dir}, msgs)
	if err != nil {
		return fail(c.Streams, err)
	}
	var mu sync.Mutex
	decks := map[*workspace.Workspace]map[string][]*compile.Made{}
	var here *workspace.Workspace
	o.Emit = func(m *compile.Made) error {
		mu.Lock()
		defer mu.Unlock()
		whole := *m // the sheets are taken from m when it was emitted
		decks[here][m.Card] = append(decks[here][m.Card], &whole)
		return nil
	}
	code := exitOK
	for _, w := range spaces {
		here, decks[w] = w, map[string][]*compile.Made{}
		results, err := c.run(o, []*workspace.Workspace{w}, msgs)
		if err != nil {
			return fail(c.Streams, err)
		}
		code = max(code, exitCode(results, msgs))
		msgs = &diag.List{}
		for _, r := range results {
			x := &release.Release{Revision: r.Procedure.Revision, Date: *date, Approver: strings.TrimSpace(*approver), Copies: places(*copies)}
			if err := c.release(out, w, r, x, decks[w][r.Procedure.Number.Name]); err != nil {
				fmt.Fprintf(c.Err, "%s: %s\n", program, err)
				code = max(code, exitFound)
			}
		}
	}
	return code
}

// places are the places that stand in a list, parted by commas.
func places(list string) []string {
	var out []string
	for place := range strings.SplitSeq(list, ",") {
		if place = strings.Join(strings.Fields(place), " "); place != "" {
			out = append(out, place)
		}
	}
	return out
}

// release records one card's release.
func (c *call) release(out *output, w *workspace.Workspace, r *compile.Result, x *release.Release, decks []*compile.Made) error {
	number := r.Procedure.Number.Name
	last := r.Record.Last()
	if x.Copies == nil && last != nil {
		x.Copies = last.Copies
	}
	switch {
	case r.Errors > 0 || r.Fault != nil:
		return fmt.Errorf("%s has errors: mend them, then release it", number)
	case w.Standalone:
		return fmt.Errorf("%s stands alone, outside any workspace: a record is kept beside a shop.yaml", number)
	case r.Procedure.Draft:
		return fmt.Errorf("%s is a draft: write `status: released` once it is approved", number)
	case r.Record.Of(x.Revision) != nil:
		return fmt.Errorf("%s revision %s is released already, on %s: raise the revision to release it again", number, x.Revision, r.Record.Of(x.Revision).Date)
	case last != nil && last.Date > x.Date:
		return fmt.Errorf("%s was released last on %s, after %s: give the day of this release", number, last.Date, x.Date)
	case x.Copies == nil:
		return fmt.Errorf("%s has no copy yet: say where each hangs, as in --copies \"bench 2, bench 4\"", number)
	}
	slices.SortFunc(decks, func(a, b *compile.Made) int { return strings.Compare(a.Name, b.Name) })
	x.Decks = compile.Release(decks).Decks
	recall := release.Between(last, x)
	var files []string
	for _, m := range decks {
		if of := pagesOf(recall.Print, m.Variants); !m.Strip && of != nil {
			some := m.Only(of)
			some.Name = strings.TrimSuffix(m.Name, ".pdf") + ".changed.pdf"
			pdf, err := some.PDF()
			if err != nil {
				return err
			}
			if err := out.replace(some.Name, pdf); err != nil {
				return err
			}
			files = append(files, pageNumbers(of)+" → "+some.Name)
		}
	}
	name := number + ".yaml"
	text, err := os.ReadFile(filepath.Join(w.Root, workspace.Releases, name))
	if err != nil && r.Record != nil {
		return fmt.Errorf("the record of %s is not in %s/%s: move it there", number, workspace.Releases, name)
	}
	records := &output{dir: filepath.Join(w.Root, workspace.Releases)}
	if err := records.replace(name, release.Append(text, number, x)); err != nil {
		return err
	}
	cardLine(c.Out, r, "revision "+x.Revision+" released, recorded in "+workspace.Releases+"/"+name)
	recallList(c.Out, recall, last, x, files)
	return nil
}

func pagesOf(all []release.Of, variants []string) []int {
	for _, of := range all {
		if slices.Equal(of.Variants, variants) {
			return of.Pages
		}
	}
	return nil
}

// pageNumbers are pages as text: "page 3", "pages 3, 5–9".
func pageNumbers(pages []int) string {
	var texts []string
	for i := 0; i < len(pages); {
		j := i
		for j+1 < len(pages) && pages[j+1] == pages[j]+1 {
			j++
		}
		text := strconv.Itoa(pages[i])
		if j > i {
			text += "–" + strconv.Itoa(pages[j])
		}
		texts, i = append(texts, text), j+1
	}
	if len(pages) == 1 {
		return "page " + texts[0]
	}
	return "pages " + strings.Join(texts, ", ")
}
