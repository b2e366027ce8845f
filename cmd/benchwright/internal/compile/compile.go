// Package compile is the pipeline: File → Doc → Procedure → Card → Deck →
// Sheets → PDF, stage by stage, for a whole workspace. It turns what the leaf
// rooms schema and render find wrong into messages at places.
package compile

import (
	"context"
	"fmt"
	"runtime"
	"sync"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/procedure"
	"benchwright/cmd/benchwright/internal/workspace"
)

// Options say what is made of a workspace.
type Options struct {
	Paper string // face size by name; "" takes the shop's
	Sheet string // larger sheet to impose on; "" prints each face on its own
	Turn  string // the edge over which a sheet is turned: "long" or "short"
	On    string // the day of the work, "2026-11-25"; "" asks nothing of calibration dates
	// Workers is how many cards are made at a time; 0 is one a core.
	Workers int
	// Emit is called once a deck, in no order and from several goroutines,
	// as soon as it is laid out. nil checks only.
	Emit func(*Made) error
	// Progress is called as cards are done; nil for none.
	Progress func(done, total int)
}

// A Result is what became of one procedure.
type Result struct {
	Procedure *procedure.Procedure
	Decks     []*Made // without their sheets; nil for one with errors
	Steps     int
	Errors    int
	Warnings  int
	Fault     error    // a bug of ours: a panic, or a file that could not be written
	takes     []string // ids of the tools, wrenches and gauges that its cards take
}

// Faces returns how many laminated faces the procedure's decks have.
func (r *Result) Faces() int {
	n := 0
	for _, m := range r.Decks {
		if !m.Strip {
			n += m.Faces
		}
	}
	return n
}

// Laminates returns how many pouches they take: a front and a back in each.
func (r *Result) Laminates() int {
	n := 0
	for _, m := range r.Decks {
		if !m.Strip {
			n += (m.Faces + 1) / 2
		}
	}
	return n
}

// Run reads the workspace and makes every named card of it, up to and
// including layout. It returns one result a named procedure, in their order.
func Run(ctx context.Context, w *workspace.Workspace, o Options, msgs *diag.List) []*Result {
	lib := read(w, msgs)
	results := lib.makeCards(ctx, o, msgs)
	lib.overdue(o.On, results, msgs)
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

// result makes the cards of one procedure. A panic stops this procedure alone.
func (lib *library) result(f *procedureFile, o Options, msgs *diag.List) (res *Result) {
	p := f.procedure
	res = &Result{Procedure: p}
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
