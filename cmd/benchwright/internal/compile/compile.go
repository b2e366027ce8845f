// Package compile runs the pipeline for a whole workspace: File → Doc →
// Procedure → Card → Deck → Sheets → PDF. It converts what packages schema and
// render report to messages with places.
package compile

import (
	"context"
	"fmt"
	"runtime"
	"sync"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/release"
	"benchwright/cmd/benchwright/internal/workspace"
)

// Options select what is made of a workspace.
type Options struct {
	Paper    string // name of the face size; "" for the shop's
	Sheet    string // larger sheet to impose on; "" prints each face on its own
	Flip     string // the edge over which a sheet is flipped: "long" or "short"
	WorkDate string // date of the work, "2026-11-25"; "" skips calibration dates
	// Workers is the number of cards made at a time; 0 for one per core.
	Workers int
	// Emit is called with each deck when it is laid out, in any order and from
	// several goroutines. Nil only checks.
	Emit func(*Made) error
	// Progress is called as cards are finished; nil for none.
	Progress func(done, total int)
}

// A Result is the outcome for one procedure.
type Result struct {
	Procedure *procedure.Procedure
	Decks     []*Made         // without their sheets; nil with errors
	Record    *release.Record // what was released of the card; nil for nothing
	Steps     int
	Errors    int
	Warnings  int
	Fault     error    // a panic, or a file that could not be written
	toolIDs   []string // ids of the tools, wrenches and gauges on its cards
}

// Faces returns the number of laminated faces of the procedure's decks.
func (r *Result) Faces() int {
	n := 0
	for _, m := range r.Decks {
		if !m.Strip {
			n += m.Faces
		}
	}
	return n
}

// Laminates returns the number of pouches, which hold a front and a back each.
func (r *Result) Laminates() int {
	n := 0
	for _, m := range r.Decks {
		if !m.Strip {
			n += (m.Faces + 1) / 2
		}
	}
	return n
}

// Run reads the workspace and makes every named card, including its layout. It
// returns a result for each named procedure, in their order.
func Run(ctx context.Context, w *workspace.Workspace, o Options, msgs *diag.List) []*Result {
	lib := read(w, msgs)
	results := lib.makeCards(ctx, o, msgs)
	lib.overdue(o.WorkDate, results, msgs)
	return results
}

// makeCards makes the cards of every named procedure, several at a time.
func (lib *library) makeCards(ctx context.Context, o Options, msgs *diag.List) []*Result {
	var todo []*procedureFile
	for _, f := range lib.procedures {
		if f.Named {
			todo = append(todo, f)
		}
	}
	results := make([]*Result, len(todo))
	lists := make([]diag.List, len(todo))
	workers := o.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	var wg sync.WaitGroup
	var mu sync.Mutex
	done := 0
	next := make(chan int)
	for range min(workers, len(todo)) {
		wg.Go(func() {
			for i := range next {
				results[i] = lib.result(todo[i], o, &lists[i])
				mu.Lock()
				done++
				if o.Progress != nil {
					o.Progress(done, len(todo))
				}
				mu.Unlock()
			}
		})
	}
	for i := range todo {
		if ctx.Err() != nil {
			break
		}
		next <- i
	}
	close(next)
	wg.Wait()
	for i, f := range todo {
		if results[i] == nil {
			results[i] = &Result{Procedure: f.procedure, Fault: context.Cause(ctx)}
		}
		msgs.Join(&lists[i])
	}
	return results
}

// result makes the cards of a procedure. A panic stops only this procedure.
func (lib *library) result(f *procedureFile, o Options, msgs *diag.List) (res *Result) {
	p := f.procedure
	res = &Result{Procedure: p, Record: lib.releases[p.Number.Name]}
	defer func() {
		if r := recover(); r != nil {
			msgs.Report("internal-fault", p.Number.At, "please report it, with this procedure",
				"benchwright itself failed on this card: %s", fmt.Sprint(r))
			res.Decks, res.Fault = nil, fmt.Errorf("%s: internal fault: %v", p.Number.Name, r)
			res.Errors++
		}
	}()
	lib.procedure(f, res, o, msgs)
	return res
}
