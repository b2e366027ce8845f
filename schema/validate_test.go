package schema

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
)

// near is a plain edit distance for these tests: at most two edits.
func near(word string, names []string) string {
	best, least := "", 3
	for _, n := range names {
		row := make([]int, len(n)+1)
		for j := range row {
			row[j] = j
		}
		for i := range len(word) {
			diagonal := row[0]
			row[0]++
			for j := range len(n) {
				d := diagonal
				if word[i] != n[j] {
					d++
				}
				diagonal = row[j+1]
				row[j+1] = min(d, row[j]+1, row[j+1]+1)
			}
		}
		if d := row[len(n)]; d < least {
			best, least = n, d
		}
	}
	return best
}

// read reads a value as the compiler has it, numbers as they were typed.
func read(t testing.TB, text string) any {
	t.Helper()
	v, err := decode(text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return v
}

func decode(text string) (any, error) {
	d := json.NewDecoder(strings.NewReader(text))
	d.UseNumber()
	var v any
	err := d.Decode(&v)
	return typed(v), err
}

// typed returns a value with every scalar as the text that a writer types.
func typed(value any) any {
	switch v := value.(type) {
	case nil:
		return nil
	case object:
		m := object{}
		for k, e := range v {
			m[k] = typed(e)
		}
		return m
	case []any:
		l := make([]any, len(v))
		for i, e := range v {
			l[i] = typed(e)
		}
		return l
	}
	return fmt.Sprint(value)
}

const (
	shopOK      = `"benchwright": 1, "shop": "Fallow Lane"`
	unitOK      = `"unit": "md-48", "title": "MD-48 drive"`
	frontOK     = `"card": "MD48-20", "title": "Strip", "unit": "md-48", "revision": 1.10, "date": "2026-10-02"`
	torqueOK    = `"fastener": "pinion-nut"`
	measureOK   = `"of": "End play"`
	cautionOK   = `"level": "caution", "hazard": "It slips.", "result": "Cuts.", "avoid": "Wear gloves."`
	holdPointOK = `"who": "shop lead", "sees": "Nut staked", "before": "closing the case"`
)

func TestGoodValues(t *testing.T) {
	for _, c := range []struct{ kind, value string }{
		{"shop", `{` + shopOK + `}`},
		{"shop", `{"benchwright": "1", "shop": 48, "decimal": "comma", "paper": "half-Letter", "language": "de-CH", "torque-tolerance": "5 %",
			"callout-order": "avoid-first", "lift-limit": "18 kg", "atmosphere": "101,3 kPa", "gauge-rule": {"warn": 5, "error": "2"},
			"hazard-rules": {"press": "Shop rule 12"}, "tools": {"lug-socket-4": {"name": "Four-lug socket", "number": 118, "hazards": "bar"}, "rag": {}},
			"wrenches": {"tw-120": {"range": "20 to 120 N·m", "marks": "1 N·m", "accuracy": "4 %", "due": "2027-03-01"}},
			"gauges": {"dial": {"resolution": "0.01 mm", "range": "0 to 10 mm", "uncertainty": "0.008 mm", "marked": "mm"}},
			"stock": {"steel": {"shims": ["0.10 mm", {"thickness": "0.50 mm", "at-most": 2}]}}}`},
		{"unit", `{` + unitOK + `}`},
		{"unit", `{` + unitOK + `, "note": "Invented", "variants": {"early": {"serials": "1 to 3999"}, "late": {}},
			"parts": {"nut": {"count": 1, "renew": "always", "matched-with": "x", "mass": "0.6 kg", "tray": 3, "only": "late"}},
			"fasteners": {"nut": {"thread": "M24x1.5", "hand": "right", "class": 8.8, "duty": "bearing-nut", "nut-factor": 0.18, "nut-factor-source": "sheet"}},
			"packs": {"p": {"sits": "behind the race", "between": ["race", "case"], "reading": "lash", "more-shim": "opens", "rate": 0.65, "safe-side": "more"}},
			"gears": {"bevel": {"teeth": [16, "32"], "module": "4.5 mm", "pitch-radius": {"pinion": "36 mm", "gear": "72 mm"}}},
			"limits": {"lash": {"band": "0.15 to 0.25 mm", "source": "m", "by-variant": {"late": {"band": "0.1 to 0.2 mm"}}},
				"only-late": {"by-variant": {"late": {"band": "1 mm"}}},
				"etched": {"table-by": "mark", "nominal": "62 mm", "per-mark": "0.01 mm", "tolerance": "±0.02 mm", "plus-mark-means": "longer", "marks": "-5 to 5", "source": "m"}},
			"depends-on": {"lash": ["p"]}, "jobs": {"overhaul": {"title": "All", "cards": ["MD48-10"]}}}`},
		{"front", `{` + frontOK + `}`},
		{"front", `{` + frontOK + `, "kind": "strip", "status": "draft", "variants": ["late"], "after": ["MD48-10"], "time": "2 h", "people": 1,
			"conditions": ["Drained"], "parts": "nut", "call": "lead", "stop-points": ["a", {"after": "b", "say": "c"}], "accept": [{"message": "why-missing", "at": "s", "because": "r"}]}`},
		{"front", `{"card": 20, "title": "Strip", "unit": {` + unitOK + `}, "shop": {` + shopOK + `}, "revision": "B", "date": "2026-10-02"}`},
		{"block-tool", `{"use": "lug-socket-4"}`},
		{"block-tool", `{"assemble": ["a", "b"], "as": "c", "hold-still": "shaft", "with": "yoke", "only": ["late"]}`},
		{"block-torque", `{` + torqueOK + `, "limits": "95 to 105 N·m", "source": "m", "thread": "oiled", "lock": "stake", "also": "70 to 77 lbf·ft",
			"adapter": {"tool": "crowfoot", "length": "60 mm", "angle": "90°"}, "passes": ["30 %", "100 %"], "then-turn": "90°",
			"back-off": "30°", "align": "tighten only", "until": "pre", "while": "turning", "wrench": "tw", "record": ["nut 1", 2]}`},
		{"block-measurement", `{` + measureOK + `, "limits": "none", "because": "It feeds the table.", "expect": "1 to 2 mm"}`},
		{"block-measurement", `{` + measureOK + `, "limits": "end-play", "record": ["a", "b"], "use": "each", "spread": "max 0.05 mm",
			"if-low": "Stop.", "if-high": {"go": "again", "say": "Once more.", "back": "yes"}, "as-found": "yes"}`},
		{"block-caution", `{` + cautionOK + `, "symbol": "W001", "covers": ["bar"]}`},
		{"block-caution", `{"level": "notice", "hazard": "Soft metal.", "avoid": "Use the wooden block."}`},
		{"block-hold-point", `{` + holdPointOK + `}`},
		{"block-shim", `{"pack": "p", "stock": "steel", "aim": "lash", "from": {"reading": "a", "with-pack": "1 mm"}, "within": "0.03 mm", "over-pack": "±0.01 mm",
			"round": "0.05 mm", "at-most": 3, "at-least": "1", "micrometer": "m", "span": "0 to 1 mm", "source": "m", "example": {"reading": "0.4 mm", "pack": "1 mm"}}`},
		{"block-fit", `{"part": "bearing", "onto": "pinion", "heat": {"to": "90 to 110 °C", "also": "194 to 230 °F", "source": "m", "with": ["oven"], "gauge": "probe"}}`},
		{"block-fit", `{"part": "race", "into": "case", "diameter": "62 mm", "interference": "62 N7/h6", "source": "m", "clean": "a", "oil": "b", "sealant": "c",
			"orientation": "d", "lip": "e", "home": "f", "seat": {"depth": "seal-depth", "gauge": "g", "record": ["a", "b"], "use": "each", "if-low": "x", "if-high": {"go": "s"}},
			"chill": {"clearance": "0.02 mm", "room": "20 °C"}, "press": {"with": "press", "gauge": "g", "friction": [0.1, 0.15], "friction-source": "m", "length": "18 mm", "outside": "90 mm", "bore": "52 mm"}}`},
		{"block-timed", `{"within": "10 min", "from": "the bead is closed", "if-missed": "Begin again."}`},
	} {
		for _, v := range Validate(c.kind, read(t, c.value), near) {
			t.Errorf("%s %s: %+v", c.kind, c.value, v)
		}
	}
}

// Each slip gives one violation.
func TestSlips(t *testing.T) {
	for _, c := range []struct{ kind, value, want string }{
		// keys
		{"shop", `{` + shopOK + `, "wrenchs": {}}`, "key /wrenchs key-unknown: a shop has no key `wrenchs` | write `wrenches`"},
		{"shop", `{"benchwright": 1, "shopp": "Fallow Lane"}`, "key /shopp key-unknown: a shop has no key `shopp` | write `shop`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": {"bnad": "1 to 2 mm", "source": "m"}}}`,
			"key /limits/lash/bnad key-unknown: a limit has no key `bnad` | write `band`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": {"source": "m"}}}`,
			"/limits/lash key-missing: a limit needs one of `band`, `by-variant` or `table-by` | add `band:`, for example `band: 0.15 to 0.25 mm`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": {}}}`,
			"/limits/lash key-missing: a limit needs one of `band`, `by-variant` or `table-by` | add `band:`, for example `band: 0.15 to 0.25 mm`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": {"by-variant": {"late": {"source": "m"}}}}}`,
			"/limits/lash/by-variant/late key-missing: a variant's limit needs `band` | add `band:`, for example `band: 0.10 to 0.20 mm`"},
		{"unit", `{` + unitOK + `, "limits": {"a/b~c%41": {"x": 1, "band": "1 mm"}}}`,
			"key /limits/a/b~c%41/x key-unknown: a limit has no key `x` | leave it out, or write `also`, `by-variant`, `holds`, `marks`, `nominal`, `per-mark`, `plus-mark-means`, `source`, `state`, `table-by` or `tolerance`"},
		{"front", `{"card": "A"}`, "/ key-missing: a procedure's front matter needs `title`, `unit`, `revision` and `date` | add `title:`, `unit:`, `revision:` and `date:`, for example `title: Strip the drive to a bare housing`, `unit: md-48`, `revision: B` and `date: 2026-10-02`"},
		{"front", `{"card": "A", "titel": "b", "unit": "c", "revison": "d", "date": "2026-10-02"}`,
			"key /revison key-unknown: a procedure's front matter has no key `revison` | write `revision`\n" +
				"key /titel key-unknown: a procedure's front matter has no key `titel` | write `title`"},
		{"front", `{` + frontOK + `, "accept": [{"message": "why-missing"}]}`, "/accept/0 key-missing: an accepted warning needs `because` | add `because:`, for example `because: The stage says why.`"},
		{"front", `{"card": "A", "title": "b", "unit": {"unit": "u", "titel": "c"}, "shop": {"shop": "s"}, "revision": "d", "date": "2026-10-02"}`,
			"/shop key-missing: a shop needs `benchwright` | add `benchwright:`, for example `benchwright: 1`\n" +
				"key /unit/titel key-unknown: a unit has no key `titel` | write `title`"},
		{"front", `{` + frontOK + `, "titlee": "b"}`, "key /titlee key-unknown: a procedure's front matter has no key `titlee` | leave it out: `title` is there already"},
		{"shop", `{` + shopOK + `, "tools": {"d": {"name": "Driver", "head": null, "number": 1}}}`,
			"key /tools/d/head key-unknown: a tool has no key `head` | if a comma cut it off a text, put quotes around the whole text; else leave it out"},
		{"block-tool", `{}`, "/ key-missing: a tool block needs one of `use`, `assemble`, `take-apart` or `hold-still` | add `use:`, for example `use: [lug-socket-4, breaker-bar]`"},
		{"block-tool", `{"usee": "a"}`, "key /usee key-unknown: a tool block has no key `usee` | write `use`"},
		{"block-tool", `{"assemble": ["a", "b"]}`, "key /assemble key-missing: `assemble` stands without `as` | add `as:` beside it, for example `as: race-puller`"},
		{"block-tool", `{"with": "yoke"}`, "key /with key-missing: `with` stands without `hold-still` | add `hold-still:` beside it, for example `hold-still: input shaft`"},
		{"block-torque", `{` + torqueOK + `, "adapter": {"tool": "crowfoot"}}`, "/adapter key-missing: an adapter needs `length` | add `length:`, for example `length: 60 mm`"},
		{"block-measurement", `{` + measureOK + `, "limits": "none"}`,
			"/ key-missing: a reading without limits needs `because` and `expect` | add `because:` and `expect:`, for example `because: It feeds the shim table.` and `expect: 0.30 to 1.50 mm`"},
		{"block-measurement", `{` + measureOK + `, "limits": "none", "becuase": "x", "expect": "1 to 2 mm"}`,
			"key /becuase key-unknown: a measurement block has no key `becuase` | write `because`"},
		{"block-measurement", `{` + measureOK + `, "record": ["a", "b"]}`, "/ key-missing: a measurement with several readings needs `use` | add `use:`, for example `use: lowest`"},
		{"block-measurement", `{` + measureOK + `, "if-low": {"back": "yes"}}`, "/if-low key-missing: where to go needs `go` | add `go:`, for example `go: lash-found`"},
		{"block-caution", `{"level": "warning", "hazard": "h", "avoid": "a"}`, "/ key-missing: a callout about people needs `result` | add `result:`, for example `result: Crushed knuckles, rounded slots.`"},
		{"block-caution", `{"hazard": "h", "avoid": "a"}`, "/ key-missing: a caution block needs `level` | add `level:`, for example `level: warning`"},
		{"block-fit", `{"part": "race", "press": {}}`, "/ key-missing: a fit block needs one of `into`, `onto`, `out-of` or `off` | add `into:`, for example `into: case`"},
		{"block-fit", `{"part": "race", "into": "case"}`, "/ key-missing: a fit block needs one of `heat`, `chill`, `press` or `pull` | add `heat:`, for example `heat: {gauge: contact-probe, source: \"workshop manual issue 3, section 4.9\", to: 90 to 110 °C, with: bearing-oven}`"},
		{"block-fit", `{"part": "race", "into": "case", "seat": "deep", "press": {}}`, "/seat value-kind: `seat` takes home, flush or a depth, not `deep` | write `seat: home`, `seat: flush`, or `seat: {depth: seal-depth, gauge: depth-micrometer}`"},
		{"block-timed", `{"within": "10 min", "from": "now"}`, "/ key-missing: a timed block needs `if-missed` | add `if-missed:`, for example `if-missed: Wipe the sealant off and begin again.`"},
		{"block-hold-point", `{"who": "lead", "sees": "nut"}`, "/ key-missing: a hold-point block needs `before` | add `before:`, for example `before: closing the case`"},
		{"unit", `{` + unitOK + `, "limits": {"e": {"table-by": "mark", "nominal": "62 mm"}}}`,
			"key /limits/e/table-by key-missing: `table-by` stands without `per-mark`, `tolerance`, `plus-mark-means` and `marks` | add `per-mark:`, `tolerance:`, `plus-mark-means:` and `marks:` beside it, for example `per-mark: 0.01 mm`, `tolerance: ±0.02 mm`, `plus-mark-means: longer` and `marks: -5 to 5`"},
		// words
		{"shop", `{` + shopOK + `, "decimal": "coma"}`, "/decimal value-unknown: `decimal` cannot be `coma` | write `comma`"},
		{"shop", `{` + shopOK + `, "paper": "B5"}`, "/paper value-unknown: `paper` cannot be `B5` | write `A5`"},
		{"shop", `{` + shopOK + `, "paper": "tabloid"}`, "/paper value-unknown: `paper` cannot be `tabloid` | write `A4`, `A4-landscape`, `A5`, `A6`, `Letter`, `Letter-landscape`, `half-Letter` or `A3-landscape`"},
		{"block-caution", `{"level": "dangerous", "hazard": "h", "result": "r", "avoid": "a"}`,
			"/level value-unknown: `level` cannot be `dangerous` | write `danger`, `warning`, `caution` or `notice`"},
		{"shop", `{` + shopOK + `, "decimal": ""}`, "/decimal value-kind: `decimal` is empty | write it as `decimal: point`"},
		{"unit", `{` + unitOK + `, "fasteners": {"nut": {"hand": "rihgt"}}}`, "/fasteners/nut/hand value-unknown: `hand` cannot be `rihgt` | write `right`"},
		{"unit", `{` + unitOK + `, "parts": {"nut": {"renew": true}}}`, "/parts/nut/renew value-unknown: `renew` cannot be `true` | write `always`"},
		{"shop", `{"benchwright": 2, "shop": "s"}`,
			"/benchwright version-newer: this workspace is written in version 2 of the language, and this benchwright knows version 1 | use a newer benchwright, or write `benchwright: 1` if nothing newer is used"},
		{"shop", `{"benchwright": "one", "shop": "s"}`, "/benchwright value-unknown: `benchwright` cannot be `one` | write `benchwright: 1`"},
		// kinds
		{"unit", `{"unit": "md-48", "title": ["a"]}`, "/title value-kind: `title` takes text, not a list | write it as `title: MD-48 right-angle drive`"},
		{"unit", `{"unit": "md-48", "title": null}`, "/title value-kind: nothing is written after `title` | write it as `title: MD-48 right-angle drive`"},
		{"unit", `{"unit": "md-48", "title": ""}`, "/title value-kind: `title` is empty | write it as `title: MD-48 right-angle drive`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": "0.15 to 0.25 mm"}}`,
			"/limits/lash value-kind: `lash` takes keys of its own, not text | write it as `limits: {output-lash: {band: 0.15 to 0.25 mm, source: \"workshop manual issue 3, table 4-2\"}}`"},
		{"unit", `{` + unitOK + `, "limits": {"lash": {"band": [0.15, 0.25]}}}`,
			"/limits/lash/band value-kind: `band` takes a quantity, not a list | write it as `band: 0.15 to 0.25 mm`"},
		{"unit", `{` + unitOK + `, "parts": ["nut"]}`, "/parts value-kind: `parts` takes keys of its own, not a list | write it as `parts: {pinion-nut: {renew: always}}`"},
		{"unit", `{` + unitOK + `, "parts": {"nut": {"count": "two"}}}`, "/parts/nut/count value-kind: `count` takes a whole number, not `two` | write it as `count: 1`"},
		{"unit", `{` + unitOK + `, "parts": {"nut": {"count": 0}}}`, "/parts/nut/count value-kind: `count` takes a whole number, not `0` | write it as `count: 1`"},
		{"unit", `{` + unitOK + `, "gears": {"bevel": {"teeth": [16, 32, 1]}}}`, "/gears/bevel/teeth value-kind: `teeth` takes 2 entries, not 3 | write it as `teeth: [16, 32]`"},
		{"unit", `{` + unitOK + `, "gears": {"bevel": {"teeth": [16, null]}}}`, "/gears/bevel/teeth/1 value-kind: nothing is written after entry 2 of `teeth` | write it as `teeth: [16, 32]`"},
		{"front", `{"card": "A", "title": "b", "unit": "c", "revision": "d", "date": "2 Oct 2026"}`,
			"/date value-kind: `date` takes a date as year-month-day, not `2 Oct 2026` | write year-month-day: `YYYY-MM-DD`"},
		{"shop", `{` + shopOK + `, "wrenches": {"tw": {"range": "20 to 120 N·m", "marks": "1 N·m", "due": "10.02.2026"}}}`,
			"/wrenches/tw/due value-kind: `due` takes a date as year-month-day, not `10.02.2026` | write year-month-day: `YYYY-MM-DD`"},
		{"front", `{` + frontOK + `, "accept": "why-missing"}`,
			"/accept value-kind: `accept` takes a list, not text | write it as `accept: [{at: press-home, because: The stage says why., message: why-missing}]`"},
		{"block-tool", `{"use": "socket-13, breaker-bar"}`,
			"/use value-kind: `use` takes names, and without brackets this is one name with a comma in it | put brackets around the list: `[socket-13, breaker-bar]`"},
		{"block-measurement", `{` + measureOK + `, "record": "door side, back", "use": "each"}`,
			"/record value-kind: `record` takes names, and without brackets this is one name with a comma in it | put brackets around the list: `[door side, back]`"},
		{"front", `{` + frontOK + `, "conditions": "Drained, cold", "after": "MD48-10, MD48-20"}`,
			"/after value-kind: `after` takes names, and without brackets this is one name with a comma in it | put brackets around the list: `[MD48-10, MD48-20]`"},
		{"block-measurement", `{` + measureOK + `, "record": []}`, "/record value-kind: `record` is an empty list | write it as `record: [mark 1, mark 2, mark 3, mark 4]`"},
		{"block-measurement", `{` + measureOK + `, "record": [["a"]]}`, "/record/0 value-kind: entry 1 of `record` takes text, not a list | write it as `record: [mark 1, mark 2, mark 3, mark 4]`"},
		{"block-measurement", `{` + measureOK + `, "if-low": ["a"]}`, "/if-low value-kind: `if-low` takes text or keys of its own, not a list | write it as `if-low: Note it. The set-up card corrects it.`"},
		{"block-measurement", `{` + measureOK + `, "use": ["each"]}`, "/use value-kind: `use` takes text, not a list | write it as `use: lowest`"},
		{"block-fill", `{"fluid": "oil", "quantity": "oil", "into": "case", "gauge": "jug"}`,
			"key /gauge key-unknown: a fill block has no key `gauge` | write `measure`, which must be there, if that is meant; else leave it out, and add `measure:`"},
		{"block-fit", `{"part": "bush", "into": "case", "chill": {"room": "20 °C", "diameter": "52 mm"}}`,
			"key /chill/diameter key-unknown: a chilling has no key `diameter` | write it on a line of its own, beside `chill:`"},
		{"block-torque", `{"fastener": "nut", "adapter": {"tool": "crowfoot"}, "length": "60 mm"}`,
			"key /length key-unknown: a torque block has no key `length` | write it inside the braces of `adapter`"},
		{"block-hold-point", `"shop lead"`, "/ value-kind: a hold-point block takes keys of its own, not text | "},
		{"shop", `{` + shopOK + `, "stock": {"s": {"shims": [{"at-most": 2}]}}}`, "/stock/s/shims/0 key-missing: a shim needs `thickness` | add `thickness:`, for example `thickness: 0.50 mm`"},
		{"shop", `{` + shopOK + `, "evil\u001b[2J` + strings.Repeat("x", 60) + `": 1}`, "key /evil\x1b[2J" + strings.Repeat("x", 60) +
			" key-unknown: a shop has no key `evil·[2J" + strings.Repeat("x", 32) + "…` | leave it out, or write `atmosphere`, `callout-order`, `decimal`, `gauge-rule`, `gauges`, `hazard-rules`, `language`, `lift-limit`, `paper`, `reading-distance`, `stock`, `tools`, `torque-tolerance` or `wrenches`"},
	} {
		var got []string
		for _, v := range Validate(c.kind, read(t, c.value), near) {
			line := fmt.Sprintf("/%s %s: %s | %s", strings.Join(v.Path, "/"), v.Slug, v.Message, v.Fix)
			if v.Key {
				line = "key " + line
			}
			got = append(got, line)
		}
		if g := strings.Join(got, "\n"); g != c.want {
			t.Errorf("%s %s\n got %s\nwant %s", c.kind, c.value, g, c.want)
		}
	}
}

// A path has each key as it was typed, whatever stands in it.
func TestPath(t *testing.T) {
	got := Validate("unit", read(t, `{`+unitOK+`, "limits": {"a/b~c%41": {"x": 1, "band": "1 mm"}}}`), near)
	if want := []string{"limits", "a/b~c%41", "x"}; len(got) != 1 || !slices.Equal(got[0].Path, want) {
		t.Errorf("%v, want %q", got, want)
	}
}

// The same value gives the same violations in the same order.
func FuzzValidate(f *testing.F) {
	for i, text := range []string{`{}`, `null`, `[]`, `"a"`, `1e999999999`, `{"a":{"b":[1,{"c":null}]}}`,
		`{"limits":{"a":{"bnad":1},"b":{"source":[]},"c":null}}`, `{"limits":"none","record":["a","b"]}`,
		`{"level":"danger","adapter":{},"teeth":[]}`, `{"use":[[]],"as":1,"with":{}}`, `{"unit":{"unit":[]},"shop":{"tools":[]}}`,
		`{"%41":1,"~":2,"/":3,"":4}`, `{"stop-points":[{}],"accept":[{},1]}`} {
		f.Add(uint8(i), text)
	}
	names := append(Names(), "no-such")
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		v, err := decode(text)
		if err != nil {
			return
		}
		name := names[int(kind)%len(names)]
		first := Validate(name, v, near)
		for range 3 {
			if again := Validate(name, v, near); !reflect.DeepEqual(first, again) {
				t.Fatalf("%s: %+v, then %+v", name, first, again)
			}
		}
		for _, g := range first {
			if g.Slug == "" || g.Message == "" || strings.HasSuffix(g.Message, ".") {
				t.Errorf("%s: an unfinished message: %+v", name, g)
			}
		}
	})
}
