package compile

import (
	"cmp"
	"context"
	"fmt"
	"hash/fnv"
	"io"
	"math/big"
	"reflect"
	"slices"
	"testing"

	"benchwright/cmd/benchwright/internal/diag"
	"benchwright/cmd/benchwright/internal/source"
	"benchwright/cmd/benchwright/internal/workspace"
)

// What was read is shared by all variants and all cards, which are made at the
// same time: making them must leave it as it was.
func TestCardsChangeNothingShared(t *testing.T) {
	msgs := &diag.List{}
	spaces, err := workspace.Load("../../../../procedures", []string{"."}, nil, msgs)
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range spaces {
		for _, r := range runShared(t, w, Options{WorkDate: "2026-11-25"}, msgs) {
			if r.Steps == 0 {
				t.Errorf("%s has no steps", r.Procedure.Number.Name)
			}
		}
	}
}

// runShared does what Run does, and looks whether what was read stays as it was.
// All pages and slips are run by it.
func runShared(t *testing.T, w *workspace.Workspace, o Options, msgs *diag.List) []*Result {
	t.Helper()
	lib := read(w, msgs)
	before := lib.prints()
	results := lib.makeCards(context.Background(), o, msgs)
	lib.overdue(o.WorkDate, results, msgs)
	for name, print := range lib.prints() {
		if before[name] != print {
			t.Errorf("making the cards changed what was read of %s", name)
		}
	}
	return results
}

// prints returns a fingerprint of what was read of each file.
func (lib *library) prints() map[string]uint64 {
	out := map[string]uint64{"shop.yaml": fingerprint(lib.shop)}
	for _, f := range lib.units {
		out[f.file.Name] = fingerprint(f.unit)
	}
	for _, f := range lib.procedures {
		out[f.File.Name] = fingerprint([]any{f.procedure, f.inline})
	}
	return out
}

func fingerprint(x any) uint64 {
	h := fnv.New64a()
	walk(h, reflect.ValueOf(x), map[uintptr]int{})
	return h.Sum64()
}

var (
	files   = reflect.TypeFor[*source.File]()
	numbers = reflect.TypeFor[*big.Rat]()
)

// walk writes all that can be reached from v; a pointer that was met before by
// its number.
func walk(w io.Writer, v reflect.Value, met map[uintptr]int) {
	switch v.Kind() {
	case reflect.Invalid:
		fmt.Fprint(w, "nil;")
	case reflect.Pointer:
		switch n, again := met[v.Pointer()]; {
		case v.IsNil():
			fmt.Fprint(w, "nil;")
		case v.Type() == files:
			fmt.Fprintf(w, "%s;", v.Elem().FieldByName("Name"))
		case v.Type() == numbers:
			fmt.Fprintf(w, "%v;", v)
		case again:
			fmt.Fprintf(w, "&%d;", n)
		default:
			met[v.Pointer()] = len(met)
			walk(w, v.Elem(), met)
		}
	case reflect.Interface:
		if !v.IsNil() {
			fmt.Fprintf(w, "%s ", v.Elem().Type())
		}
		walk(w, v.Elem(), met)
	case reflect.Struct:
		fmt.Fprintf(w, "%s{", v.Type())
		for i := range v.NumField() {
			walk(w, v.Field(i), met)
		}
		fmt.Fprint(w, "}")
	case reflect.Slice, reflect.Array:
		fmt.Fprintf(w, "%d[", v.Len())
		for i := range v.Len() {
			walk(w, v.Index(i), met)
		}
		fmt.Fprint(w, "]")
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return cmp.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			fmt.Fprintf(w, "%v:", k)
			walk(w, v.MapIndex(k), met)
		}
	case reflect.Func:
		fmt.Fprintf(w, "func %t;", v.IsNil())
	default:
		fmt.Fprintf(w, "%v;", v)
	}
}
