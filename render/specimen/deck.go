// Package specimen is what the tests of these rooms show: a deck with every
// content, sheets with every operation, files of pictures. Nothing but tests
// imports it.
package specimen

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strconv"

	"benchwright/render"
)

// Deck is a strip card of an invented unit that uses every content.
func Deck() render.Deck {
	return render.Deck{
		Language: "en",
		Subject:  "MD-48 right-angle drive",
		Running: render.Running{
			Number: "MD48-20", Title: "Strip the drive to a bare housing",
			Unit: "MD-48 right-angle drive", Variant: "early, mid",
			Revision: "B", Date: "2026-10-02", Watch: "DRAFT",
			Note: "Invented unit, not for real work",
		},
		Sections: []render.Section{setOut(), Steps(), lookUp(), Record()},
	}
}

// Runs is plain text.
func Runs(s string) []render.Run { return []render.Run{{Text: s}} }

func cells(rows ...[]string) [][][]render.Run {
	var all [][][]render.Run
	for _, row := range rows {
		var cs [][]render.Run
		for _, s := range row {
			cs = append(cs, Runs(s))
		}
		all = append(all, cs)
	}
	return all
}

// Elements are elements that show these contents, with references from 1000 on.
func Elements(contents ...render.Content) []render.Element {
	var all []render.Element
	for i, c := range contents {
		all = append(all, render.Element{Ref: render.Ref(1000 + i), Content: c})
	}
	return all
}

func setOut() render.Section {
	return render.Section{Name: "Lay-out", Groups: []render.Group{
		{Ref: 1, Breaks: true, Elements: Elements(
			render.Text{Role: render.Lead, Runs: Runs("Read the whole card before you start. Ask the shop lead about anything that is not clear.")},
			render.Facts{Rows: []render.Fact{
				{Label: "Time", Runs: Runs("2\u00a0h 30\u00a0min")}, {Label: "People", Runs: Runs("1")},
				{Label: "Skill", Runs: Runs("second-year apprentice; press work supervised")},
				{Label: "Ask", Runs: Runs("shop lead, bench 1")},
			}},
			render.Hazards{Title: "Hazards on this card", None: "none", Rows: []render.HazardRow{
				{Signal: render.Warning, Word: "WARNING", Symbols: []string{"W019", "W024"}, Text: Runs("Press and puller: parts burst or fly, hands are crushed"), Steps: "steps 9–11"},
				{Signal: render.Warning, Word: "WARNING", Symbols: []string{"W024", "M004"}, Text: Runs("Breaker bar swings or slips"), Steps: "steps 3, 7"},
				{Signal: render.Caution, Word: "CAUTION", Symbols: []string{"W022"}, Text: Runs("Shim stock cuts"), Steps: "step 8"},
				{Signal: render.Notice, Word: "NOTICE", Symbols: nil, Text: Runs("Races are soft metal under the hammer"), Steps: "step 10"},
			}},
			render.Listing{Title: "Conditions", None: "none", Rows: cells(
				[]string{"Oil drained and drive in the bench fixture (MD48-10)"},
				[]string{"Bench swept; four trays marked 1 to 4"})},
			render.Listing{Title: "Tools", None: "none", Columns: []string{"Tool", "Number", "Place"}, Rows: cells(
				[]string{"Click wrench 120", "TW-120", "board B, hook 4"},
				[]string{"Dial indicator 0.01 mm", "DI-07", "cabinet 2, drawer 3"},
				[]string{"Four-lug ring socket", "FL-101", "board B, hook 9"},
				[]string{"Breaker bar 600 mm", "BB-600", "board A, hook 1"},
				[]string{"Pinion holder, 16 teeth", "FL-114", "rack 3"},
				[]string{"Bearing splitter and bridge puller", "PL-2", "press corner"},
				[]string{"Micrometer 0–25 mm", "MI-02", "cabinet 2, drawer 1"})},
			render.Listing{Title: "Hand tools", None: "none", Rows: cells([]string{"Wrenches 13, 17, 36 mm; socket keys 6, 8 mm; soft drift; paint pen"})},
			render.Listing{Title: "Parts to have, renewed always", None: "none", Columns: []string{"Part", "Count", "Part number"}, Rows: cells(
				[]string{"Pinion nut", "1", "48-1107"},
				[]string{"Output seal", "2", "48-2203"},
				[]string{"O-ring 88 × 3", "1", "48-2210"})},
			render.Listing{Title: "Consumables", None: "none"},
			render.Text{Role: render.Small, Runs: Runs("Cautions use the usual words of the trade. The maker's manual, local rules and trained supervision come first. Torque settings are for dry, clean threads unless a step says otherwise.")},
		)},
	}}
}

// Step is a step with its head and what stands below it.
func Step(n int, anchor, title string, contents ...render.Content) render.Group {
	return render.Group{Ref: render.Ref(100 + n), Bookmark: strconv.Itoa(n) + " " + title, Anchor: anchor,
		Elements: Elements(append([]render.Content{render.Step{Number: n, Title: Runs(title)}}, contents...)...)}
}

// Stage is the heading of a stage.
func Stage(title string, contents ...render.Content) render.Group {
	return render.Group{Bookmark: title, Join: true, Elements: Elements(append([]render.Content{render.Stage{Title: Runs(title)}}, contents...)...)}
}

// Steps is the section of the steps: every content that a step may hold.
func Steps() render.Section {
	return render.Section{Name: "Steps", Groups: []render.Group{
		Stage("As found"),
		Step(1, "clean", "Wipe the housing and look for leaks",
			render.Text{Runs: Runs("Wipe the outside with a dry rag. Mark each wet place with the paint pen.")},
			render.List{Items: []render.Item{
				{Runs: Runs("Both output seals")},
				{Runs: Runs("The parting line, all around"), Sub: &render.List{Items: []render.Item{{Runs: Runs("below the breather")}, {Runs: Runs("at the two dowels")}}}},
				{Runs: Runs("The drain plug")}}},
			render.Text{Role: render.Why, Runs: Runs("A leak that nobody saw comes back after the rebuild.")}),
		Step(2, "lash", "Measure the backlash as found",
			render.Tools{Rows: []render.ToolRow{{Verb: "Take", Name: "Dial indicator 0.01 mm", Number: "DI-07", Place: "cabinet 2", Note: ""}, {Verb: "Hold still", Name: "Pinion", Number: "FL-114", Place: "rack 3", Note: "with the holder, 16 teeth"}}},
			render.Text{Runs: []render.Run{{Text: "Paint four marks on the output gear, a quarter turn apart. Lock the pinion with the holder. Set the ball on a tooth at "}, {Text: "72\u00a0mm", Weight: render.Bold}, {Text: " from the center."}}},
			render.Reading{Title: Runs("Backlash tangent to rotation, at 72\u00a0mm"), Tools: []render.ToolRow{{Verb: "Read on", Name: "Dial indicator 0.01 mm", Number: "DI-07"}},
				Low: "0.15", High: "0.25", Label: "Accept", Value: "0.15 to 0.25", Unit: "mm",
				Source: Runs("manual: 0.15–0.25 mm (workshop manual issue 3, table 4-2)"),
				Boxes:  []string{"Mark 1", "Mark 2", "Mark 3", "Mark 4"}, Use: Runs("Use the lowest."),
				LowLabel: "Below 0.15", IfLow: Runs("Note it. The set-up card corrects it."),
				HighLabel: "Above 0.25", IfHigh: []render.Run{{Text: "Look for a spun race before you go on, as in "}, {Text: "step\u00a07", Weight: render.Semibold, Link: "race"}, {Text: "."}}},
			render.Text{Role: render.Why, Runs: Runs("After the ring is loose, nobody can say what the lash was.")}),
		Stage("Output cartridge"),
		Step(3, "ring", "Unscrew the ring retainer",
			render.Callout{Signal: render.Warning, Word: "WARNING", Symbols: []string{"W024", "M004"},
				Hazard: Runs("The breaker bar swings or slips off the ring."), Result: Runs("Crushed knuckles, a struck face."),
				Avoid: Runs("Put the holder against a solid stop. Pull, do not push. No pipe on a torque wrench.")},
			render.Tools{Rows: []render.ToolRow{{Verb: "Assemble", Name: "Four-lug ring socket", Number: "FL-101", Place: "board B, hook 9", Note: ""}, {Verb: "with", Name: "Breaker bar 600 mm", Number: "BB-600", Place: "board A, hook 1", Note: ""}}},
			render.Text{Runs: Runs("Hold the socket square in all four slots. Turn the ring counterclockwise, seen from the output end.")},
			render.Text{Role: render.Tip, Runs: []render.Run{{Text: "Tip ", Weight: render.Bold}, {Text: "A ring that will not start: tap round its rim with the soft drift, then try again. Heat is never needed here."}}}),
		Step(4, "cartridge", "Draw the output cartridge",
			render.Callout{Signal: render.Warning, Word: "WARNING", Symbols: []string{"W024"}, Short: true, Avoid: Runs("Pull, do not push.")},
			render.Callout{Signal: render.Notice, Word: "NOTICE", Symbols: nil, Hazard: Runs("The shim pack hangs on the gear race."), Avoid: Runs("Catch it and tie it together. Bag it with tray label 3.")},
			render.Picture{Name: "cartridge.png", Data: Picture(), Alt: "Cartridge half out of the housing", Caption: Runs("The cartridge half out: two M8 jacking screws at 3 and 9 o'clock"),
				Spots: []render.Spot{{X: 600, Y: 80, Leads: true, ToX: 672, ToY: 500, Says: Runs("Jacking screw")}, {X: 500, Y: 500, Says: Runs("Shim pack")}, {X: 4, Y: 990, Says: Runs("Mark for the tray")}}},
			render.Text{Runs: Runs("Screw two M8 bolts into the jacking holes, a half turn each by turns, until the cartridge is free.")}),
		Step(5, "nut", "Tighten the new pinion nut",
			render.Tools{Rows: []render.ToolRow{{Verb: "Take", Name: "Click wrench 120", Number: "TW-120", Place: "board B, hook 4", Note: ""}, {Verb: "Hold still", Name: "Input flange", Number: "FL-118", Place: "rack 3", Note: "with the flange bar"}}},
			render.Setting{Title: Runs("Pinion nut, M24×1.5, across flats 36\u00a0mm"), Label: "Set on Click wrench 120", Value: "100", Unit: "N·m",
				Source: Runs("manual: 100 ±5 N·m (workshop manual issue 3, 4.6)"), Lines: [][]render.Run{Runs("Thread oiled."), Runs("Pull at the center of the grip.")},
				Turn: render.Clockwise, SeenFrom: "seen from input end", Boxes: []string{"Set", "Wrench number"}, BoxUnit: ""},
			render.Text{Role: render.Why, Runs: Runs("Too loose lets the race creep; too tight brinells the rollers.")}),
		Step(6, "hold", "Have the nut seen before it is staked",
			render.Hold{Title: "STOP. HOLD POINT", Who: Runs("Shop lead"), Sees: Runs("Pinion nut torqued, mark across nut and shaft"), Before: Runs("Before staking the collar"), Boxes: []string{"Signature", "Date"}}),
		Step(7, "race", "Measure the old shim pack",
			render.Callout{Signal: render.Caution, Word: "CAUTION", Symbols: []string{"W022", "M009"}, Hazard: Runs("Shim stock has sharp edges."), Result: Runs("Cut fingers."), Avoid: Runs("Wear gloves. Never run a finger along an edge.")},
			render.Callout{Signal: render.Caution, Word: "CAUTION", Symbols: []string{"W022", "M009"}, Short: true, Avoid: Runs("Wear gloves. Never run a finger along an edge, not even to feel for a burr on thick stock.")},
			render.Reading{Title: Runs("Thickness of the pinion pack"), Tools: []render.ToolRow{{Verb: "Read on", Name: "Micrometer 0–25 mm", Number: "MI-02"}},
				Label: "Expect", Value: "0.60 to 1.20", Unit: "mm", Boxes: []string{"Pack"}, Lines: [][]render.Run{Runs("Outside this, read again.")}, Plain: true}),
		Step(8, "wear", "Gauge the ring's thread",
			render.Reading{Title: Runs("Wear of the ring's thread, flank to flank"), Tools: []render.ToolRow{{Verb: "Read on", Name: "Feeler gauge", Number: "FG-1"}},
				High: "0.05", Label: "Accept", Value: "max 0.05", Unit: "mm", Boxes: []string{"Ring"}, HighLabel: "Above 0.05", IfHigh: Runs("Renew the ring retainer.")}),
		Step(12, "stand", "Set the indicator",
			render.Indicator{Radius: "72\u00a0mm", Locked: "locked", Reach: 1000, Lines: [][]render.Run{Runs("Set the stem tangent to rotation, 72\u00a0mm from the shaft centerline."), Runs("Lock the pinion. Turn the gear to and fro.")}}),
		Step(11, "pull", "Read the preload",
			render.Cord{Drum: "drum radius 40\u00a0mm", Cord: "cord 3\u00a0mm", Pull: "2.5 to 3.5\u00a0kg", Lines: [][]render.Run{Runs("Zero the scale as it is held."), Runs("One layer of cord, square to the shaft.")}}),
		Step(13, "layers", "Make the pack",
			render.Pack{Above: "gear race", Below: "case", Layers: []render.Layer{{Label: "0.50", Size: 50}, {Label: "0.15", Size: 15}, {Label: "0.40", Size: 40}}, Total: "1.05\u00a0mm", Lines: [][]render.Run{Runs("The pack of the example.")}}),
		Step(9, "rig", "Turn the drive on the rig",
			render.Callout{Signal: render.Danger, Word: "DANGER", Symbols: []string{"W089", "P028", "M021"}, Hazard: Runs("The output shaft turns in the open."), Result: Runs("It winds in a sleeve, a glove, an arm."), Avoid: Runs("Guard on. No gloves. Lock the rig off before you touch the shaft.")},
			render.Setting{Title: Runs("Ring retainer"), Label: "Set on Click wrench 300", Value: "195 to 205", Unit: "lbf·ft", Turn: render.Counterclockwise, SeenFrom: "seen from output end", Source: Runs("manual: 270 ±10 N·m")}),
		Step(10, "jack", "Set the jack screw",
			render.Callout{Signal: render.Danger, Word: "DANGER", Symbols: []string{"W089"}, Short: true, Avoid: Runs("Guard on. No gloves.")},
			render.Setting{Title: Runs("Jack screw, by the mark on the housing"), Label: "Write in what the plate says", Unit: "N·m", Boxes: []string{"First", "Second"}, BoxUnit: "N·m"}),
		Step(11, "cover", "Tighten the cover bolts",
			render.Setting{Title: Runs("Cover bolts, M8, 8 off"), Label: "Set, one pass after the other", Unit: "N·m", Source: Runs("manual: 20 to 24 N·m (table 4-1)"), Turn: render.Clockwise,
				Passes: []render.Pass{{Label: "Pass 1", Value: "6.5"}, {Label: "Pass 2", Value: "15.5"}, {Label: "Pass 3", Value: "22.0"}, {Label: "Once around", Value: "22.0"}}, Lines: [][]render.Run{Runs("Thread oiled")},
				Actions: [][]render.Run{Runs("Tighten all of them, one pass after the other, each pass in the order of the figure."), Runs("Then go around once, from each to its neighbor.")}},
			render.Order{Shape: render.Circle, Numbers: []int{1, 5, 3, 7, 2, 6, 4, 8}, Lines: [][]render.Run{Runs("The numbers are the order."), Runs("Drawn as seen from the cover side.")}}),
		Step(12, "plate", "Tighten the plate and the cap",
			render.Order{Shape: render.Rectangle, Numbers: []int{3, 1, 5, 6, 2, 4}, Lines: [][]render.Run{Runs("The numbers are the order.")}},
			render.Order{Shape: render.Row, Numbers: []int{4, 2, 1, 3, 5}, Lines: [][]render.Run{Runs("The numbers are the order.")}},
			render.Setting{Actions: [][]render.Run{Runs("Turn it back to the next slot.")}, First: 3}),
	}}
}

// Contact is a contact pattern of five pictures.
func Contact() render.Contact {
	c := render.Contact{Title: Runs("The drive side of the gear tooth: the convex one"), Toe: "toe", Heel: "heel", Top: "top", Root: "root",
		Under: [][]render.Run{Runs("Depth first (B, C), backlash last (D, E)."), Runs("Check both again, at most 3 times. Still wrong: Stop and call the shop lead.")}, Source: Runs("manual: workshop manual issue 3, figure 4-9")}
	for i, row := range []render.ContactRow{{Do: [][]render.Run{Runs("Right: a little toward the toe."), Runs("Go on.")}, Along: 420, Up: 500, Half: 290, Height: 260},
		{Do: [][]render.Run{Runs("High: pinion pack thicker."), {{Text: "Go to "}, {Text: "step\u00a07", Link: "race"}, {Text: "."}}}, Along: 500, Up: 830, Half: 300, Height: 125},
		{Do: [][]render.Run{Runs("Low: pinion pack thinner.")}, Along: 500, Up: 170, Half: 300, Height: 125},
		{Do: [][]render.Run{Runs("Toe: gear pack thicker.")}, Along: 205, Up: 500, Half: 160, Height: 290},
		{Do: [][]render.Run{Runs("Heel: gear pack thinner.")}, Along: 795, Up: 500, Half: 160, Height: 290}} {
		row.Letter = string(rune('A' + i))
		c.Rows = append(c.Rows, row)
	}
	return c
}

func lookUp() render.Section {
	return render.Section{Name: "Look-up", Groups: []render.Group{
		{Ref: 300, Bookmark: "Pinion pack", Anchor: "pack", Elements: Elements(
			render.Text{Role: render.Lead, Runs: Runs("Read down to your reading, then across to the stack.")},
			render.Table{Head: [][]render.Run{Runs("Reading, mm"), Runs("Pack, mm"), Runs("Shims to take"), Runs("Over the pack")}, Align: []render.Align{render.Right, render.Right, render.Left, render.Left},
				Rows: cells([]string{"0.10", "0.76", "0.40 + 0.18 + 0.18", "0.75 to 0.77"}, []string{"0.12", "0.79", "0.50 + 0.15 + 0.15", "0.78 to 0.80"},
					[]string{"0.14", "0.82", "0.40 + 0.30 + 0.12", "0.81 to 0.83"}, []string{"0.16", "0.85", "0.40 + 0.30 + 0.15", "0.84 to 0.86"},
					[]string{"0.18", "0.88", "0.40 + 0.30 + 0.18", "0.87 to 0.89"}, []string{"0.20", "0.92", "0.50 + 0.30 + 0.12", "0.91 to 0.93"})})},
		{Ref: 310, Bookmark: "Contact pattern", Elements: Elements(render.Text{Role: render.Lead, Runs: Runs("For step 3. Contact pattern")}, Contact())},
	}}
}

// Record is the section of the record.
func Record() render.Section {
	var rows []render.RecordRow
	for i := range 14 {
		rows = append(rows, render.RecordRow{Ref: render.Ref(500 + i), Step: strconv.Itoa(2 + i), What: Runs([]string{"Backlash as found, lowest", "Pinion nut", "Pinion pack", "Ring thread wear"}[i%4]),
			Limits: Runs([]string{"0.15 to 0.25\u00a0mm", "100\u00a0N·m", "0.60 to 1.20\u00a0mm", "max 0.05\u00a0mm"}[i%4]), Boxes: [][]string{{""}, nil, {"mark 1", "mark 2", "mark 3", "mark 4"}, {"as found", "as left"}}[i%4], Tail: []bool{i%4 != 1, true}})
	}
	rows[4].Hold = true
	rows[4].What = Runs("HOLD: nut seen by shop lead")
	rows[4].Limits = nil
	return render.Section{Name: "Record", Groups: []render.Group{
		{Ref: 400, Bookmark: "Record", Elements: Elements(
			render.Records{Title: "Readings and settings", Step: "Step", What: "What", Readings: "Readings", Tail: []string{"Instrument", "Initials"}, Rows: rows},
			render.Ticks{Title: "Tick each step when it is done", Numbers: []int{1, 2, 3, 10, 11, 12, 100}})},
		{Elements: Elements(render.End{Text: "END OF CARD"})},
	}}
}

// Drawing is an SVG file: a bearing in section, hatched, with a center line and
// a number that a line leads from.
func Drawing() []byte {
	return []byte(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 60">
  <g fill="none" stroke="currentColor" stroke-width=".7">
    <path fill="#E3D6E3" fill-rule="evenodd" d="M20 10h60v40h-60z M28 18v24h44v-24z"/>
    <path stroke-width=".25" d="M20 18 28 10 M20 26 36 10 M60 10 44 18 M80 10 72 18"/>
    <circle cx="50" cy="30" r="9" fill="white"/>
    <path stroke-width=".25" stroke-dasharray="6 1.5 1.5 1.5" d="M10 30H90"/>
    <line x1="80" y1="20" x2="98" y2="12" stroke-linecap="round"/>
    <circle cx="104" cy="10" r="6"/>
  </g>
  <text x="104" y="13" font-size="8" font-weight="600" text-anchor="middle" fill="currentColor">1</text>
</svg>`)
}

// Picture is a drawing: a flange with eight holes round a bore.
func Picture() []byte {
	const w, h = 720, 360
	m := image.NewGray(image.Rect(0, 0, w, h))
	ring := func(cx, cy, from, to int, g uint8) {
		for y := range h {
			for x := range w {
				if d := (x-cx)*(x-cx) + (y-cy)*(y-cy); d >= from*from && d < to*to {
					m.SetGray(x, y, color.Gray{Y: g})
				}
			}
		}
	}
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	cx, cy := w/2, h/2
	ring(cx, cy, 0, 165, 225)
	ring(cx, cy, 161, 166, 20)
	ring(cx, cy, 0, 86, 255)
	ring(cx, cy, 82, 87, 20)
	ring(cx, cy, 96, 98, 120)
	for _, p := range [][2]int{{124, 0}, {88, 88}, {0, 124}, {-88, 88}, {-124, 0}, {-88, -88}, {0, -124}, {88, -88}} {
		ring(cx+p[0], cy+p[1], 0, 15, 255)
		ring(cx+p[0], cy+p[1], 12, 16, 20)
	}
	var b bytes.Buffer
	if err := png.Encode(&b, m); err != nil {
		panic(err)
	}
	return b.Bytes()
}
