package render

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strconv"
)

// sampleDeck is a strip card of an invented unit that uses every content.
func sampleDeck() Deck {
	return Deck{
		Language: "en",
		Subject:  "MD-48 right-angle drive",
		Running: Running{
			Number: "MD48-20", Title: "Strip the drive to a bare housing",
			Unit: "MD-48 right-angle drive", Variant: "early, mid",
			Revision: "B", Date: "2026-10-02", Watch: "DRAFT",
			Note: "Invented unit, not for real work",
		},
		Sections: []Section{sampleSetOut(), sampleSteps(), sampleLookUp(), sampleRecord()},
	}
}

func r(s string) []Run { return []Run{{Text: s}} }

func cells(rows ...[]string) [][][]Run {
	var all [][][]Run
	for _, row := range rows {
		var cs [][]Run
		for _, s := range row {
			cs = append(cs, r(s))
		}
		all = append(all, cs)
	}
	return all
}

func elements(contents ...Content) []Element {
	var all []Element
	for i, c := range contents {
		all = append(all, Element{Ref: Ref(1000 + i), Content: c})
	}
	return all
}

func sampleSetOut() Section {
	return Section{Name: "Set-out", Groups: []Group{
		{Ref: 1, Breaks: true, Elements: elements(
			Text{Role: Lead, Runs: r("Read the whole card before you start. Ask the shop lead about anything that is not clear.")},
			Facts{Rows: []Fact{
				{"Time", r("2\u00a0h 30\u00a0min")}, {"People", r("1")},
				{"Skill", r("second-year apprentice; press work supervised")},
				{"Ask", r("shop lead, bench 1")},
			}},
			Hazards{Title: "Hazards on this card", None: "none", Rows: []HazardRow{
				{Warning, "WARNING", []string{"W019", "W024"}, r("Press and puller: parts burst or fly, hands are crushed"), "steps 9–11"},
				{Warning, "WARNING", []string{"W024", "M004"}, r("Breaker bar swings or slips"), "steps 3, 7"},
				{Caution, "CAUTION", []string{"W022"}, r("Shim stock cuts"), "step 8"},
				{Notice, "NOTICE", nil, r("Races are soft metal under the hammer"), "step 10"},
			}},
			Listing{Title: "Conditions", None: "none", Rows: cells(
				[]string{"Oil drained and drive in the bench fixture (MD48-10)"},
				[]string{"Bench swept; four trays marked 1 to 4"})},
			Listing{Title: "Tools", None: "none", Columns: []string{"Tool", "Number", "Place"}, Rows: cells(
				[]string{"Click wrench 120", "TW-120", "board B, hook 4"},
				[]string{"Dial indicator 0.01 mm", "DI-07", "cabinet 2, drawer 3"},
				[]string{"Four-lug ring socket", "FL-101", "board B, hook 9"},
				[]string{"Breaker bar 600 mm", "BB-600", "board A, hook 1"},
				[]string{"Pinion holder, 16 teeth", "FL-114", "rack 3"},
				[]string{"Bearing splitter and bridge puller", "PL-2", "press corner"},
				[]string{"Micrometer 0–25 mm", "MI-02", "cabinet 2, drawer 1"})},
			Listing{Title: "Hand tools", None: "none", Rows: cells([]string{"Spanners 13, 17, 36 mm; socket keys 6, 8 mm; soft drift; paint pen"})},
			Listing{Title: "Parts to have, renewed always", None: "none", Columns: []string{"Part", "Count", "Part number"}, Rows: cells(
				[]string{"Pinion nut", "1", "48-1107"},
				[]string{"Output seal", "2", "48-2203"},
				[]string{"O-ring 88 × 3", "1", "48-2210"})},
			Listing{Title: "Consumables", None: "none"},
			Text{Role: Small, Runs: r("Cautions use the usual words of the trade. The maker's manual, local rules and trained supervision come first. Torque settings are for dry, clean threads unless a step says otherwise.")},
		)},
	}}
}

func step(n int, anchor, title string, contents ...Content) Group {
	return Group{Ref: Ref(100 + n), Bookmark: strconv.Itoa(n) + " " + title, Anchor: anchor,
		Elements: elements(append([]Content{Step{n, r(title)}}, contents...)...)}
}

func stage(title string, contents ...Content) Group {
	return Group{Bookmark: title, Join: true, Elements: elements(append([]Content{Stage{r(title)}}, contents...)...)}
}

func sampleSteps() Section {
	return Section{Name: "Steps", Groups: []Group{
		stage("As found"),
		step(1, "clean", "Wipe the housing and look for leaks",
			Text{Runs: r("Wipe the outside with a dry rag. Mark each wet place with the paint pen.")},
			List{Items: []Item{
				{Runs: r("Both output seals")},
				{Runs: r("The parting line, all round"), Sub: &List{Items: []Item{{Runs: r("below the breather")}, {Runs: r("at the two dowels")}}}},
				{Runs: r("The drain plug")}}},
			Text{Role: Why, Runs: r("A leak that nobody saw comes back after the rebuild.")}),
		step(2, "lash", "Measure the backlash as found",
			Tools{Rows: []ToolRow{{"Take", "Dial indicator 0.01 mm", "DI-07", "cabinet 2", ""}, {"Hold still", "Pinion", "FL-114", "rack 3", "with the holder, 16 teeth"}}},
			Text{Runs: []Run{{Text: "Paint four marks on the output gear, a quarter turn apart. Lock the pinion with the holder. Set the ball on a tooth at "}, {Text: "72\u00a0mm", Weight: Bold}, {Text: " from the centre."}}},
			Reading{Title: r("Backlash along the turn, at 72\u00a0mm"), Gauge: ToolRow{Verb: "Read on", Name: "Dial indicator 0.01 mm", Number: "DI-07"},
				Low: "0.15", High: "0.25", Label: "Accept", Value: "0.15 to 0.25", Unit: "mm",
				Source: r("manual: 0.15–0.25 mm (workshop manual issue 3, table 4-2)"),
				Boxes:  []string{"Mark 1", "Mark 2", "Mark 3", "Mark 4"}, Use: r("Use the lowest."),
				LowLabel: "Below 0.15", IfLow: r("Note it. The set-up card corrects it."),
				HighLabel: "Above 0.25", IfHigh: []Run{{Text: "Look for a spun race before you go on, as in "}, {Text: "step\u00a07", Weight: Semibold, Link: "race"}, {Text: "."}}},
			Text{Role: Why, Runs: r("After the ring is loose, nobody can say what the lash was.")}),
		stage("Output cartridge"),
		step(3, "ring", "Unscrew the ring retainer",
			Callout{Signal: Warning, Word: "WARNING", Symbols: []string{"W024", "M004"},
				Hazard: r("The breaker bar swings or slips off the ring."), Result: r("Crushed knuckles, a struck face."),
				Avoid: r("Put the holder against a solid stop. Pull, do not push. No pipe on a torque wrench.")},
			Tools{Rows: []ToolRow{{"Assemble", "Four-lug ring socket", "FL-101", "board B, hook 9", ""}, {"with", "Breaker bar 600 mm", "BB-600", "board A, hook 1", ""}}},
			Text{Runs: r("Hold the socket square in all four slots. Turn the ring anticlockwise, seen from the output end.")},
			Text{Role: Tip, Runs: []Run{{Text: "Tip ", Weight: Bold}, {Text: "A ring that will not start: tap round its rim with the soft drift, then try again. Heat is never needed here."}}}),
		step(4, "cartridge", "Draw the output cartridge",
			Callout{Signal: Warning, Word: "WARNING", Symbols: []string{"W024"}, Short: true, Avoid: r("Pull, do not push.")},
			Callout{Signal: Notice, Word: "NOTICE", Symbols: nil, Hazard: r("The shim pack hangs on the gear race."), Avoid: r("Catch it and tie it together. Bag it with tray label 3.")},
			Picture{Name: "cartridge.png", Data: samplePicture(), Alt: "Cartridge half out of the housing", Caption: r("The cartridge half out: two M8 jacking screws at 3 and 9 o'clock"),
				Spots: []Spot{{X: 600, Y: 80, Leads: true, ToX: 672, ToY: 500, Says: r("Jacking screw")}, {X: 500, Y: 500, Says: r("Shim pack")}, {X: 4, Y: 990, Says: r("Mark for the tray")}}},
			Text{Runs: r("Screw two M8 bolts into the jacking holes, a half turn each by turns, until the cartridge is free.")}),
		step(5, "nut", "Tighten the new pinion nut",
			Tools{Rows: []ToolRow{{"Take", "Click wrench 120", "TW-120", "board B, hook 4", ""}, {"Hold still", "Input flange", "FL-118", "rack 3", "with the flange bar"}}},
			Setting{Title: r("Pinion nut, M24×1.5, across flats 36\u00a0mm"), Label: "Set on Click wrench 120", Value: "100", Unit: "N·m",
				Source: r("manual: 100 ±5 N·m (workshop manual issue 3, 4.6)"), Lines: [][]Run{r("Thread oiled."), r("Pull at the centre of the grip.")},
				Turn: Clockwise, SeenFrom: "seen from input end", Boxes: []string{"Set", "Wrench number"}, BoxUnit: ""},
			Text{Role: Why, Runs: r("Too loose lets the race creep; too tight brinells the rollers.")}),
		step(6, "hold", "Have the nut seen before it is staked",
			Hold{Title: "STOP. HOLD POINT", Who: r("Shop lead"), Sees: r("Pinion nut torqued, mark across nut and shaft"), Before: r("Before staking the collar"), Boxes: []string{"Signature", "Date"}}),
		step(7, "race", "Measure the old shim pack",
			Callout{Signal: Caution, Word: "CAUTION", Symbols: []string{"W022", "M009"}, Hazard: r("Shim stock has sharp edges."), Result: r("Cut fingers."), Avoid: r("Wear gloves. Never run a finger along an edge.")},
			Callout{Signal: Caution, Word: "CAUTION", Symbols: []string{"W022", "M009"}, Short: true, Avoid: r("Wear gloves. Never run a finger along an edge, not even to feel for a burr on thick stock.")},
			Reading{Title: r("Thickness of the pinion pack"), Gauge: ToolRow{Verb: "Read on", Name: "Micrometer 0–25 mm", Number: "MI-02"},
				Label: "Expect", Value: "0.60 to 1.20", Unit: "mm", Boxes: []string{"Pack"}, Lines: [][]Run{r("Outside this, read again.")}, Plain: true}),
		step(8, "wear", "Gauge the ring's thread",
			Reading{Title: r("Wear of the ring's thread, flank to flank"), Gauge: ToolRow{Verb: "Read on", Name: "Feeler gauge", Number: "FG-1"},
				High: "0.05", Label: "Accept", Value: "max 0.05", Unit: "mm", Boxes: []string{"Ring"}, HighLabel: "Above 0.05", IfHigh: r("Renew the ring retainer.")}),
		step(12, "stand", "Set the indicator",
			Indicator{Radius: "72\u00a0mm", Locked: "locked", Reach: 1000, Lines: [][]Run{r("Set the stem along the turn, 72\u00a0mm from the shaft's middle."), r("Lock the pinion. Turn the gear to and fro.")}}),
		step(11, "pull", "Read the preload",
			Cord{Drum: "drum radius 40\u00a0mm", Cord: "cord 3\u00a0mm", Pull: "2.5 to 3.5\u00a0kg", Lines: [][]Run{r("Zero the scale as it is held."), r("One layer of cord, square to the shaft.")}}),
		step(13, "layers", "Make the pack",
			Pack{Above: "gear race", Below: "case", Layers: []Layer{{"0.50", 50}, {"0.15", 15}, {"0.40", 40}}, Total: "1.05\u00a0mm", Lines: [][]Run{r("The pack of the example.")}}),
		step(9, "rig", "Turn the drive on the rig",
			Callout{Signal: Danger, Word: "DANGER", Symbols: []string{"W089", "P028", "M021"}, Hazard: r("The output shaft turns in the open."), Result: r("It winds in a sleeve, a glove, an arm."), Avoid: r("Guard on. No gloves. Lock the rig off before you touch the shaft.")},
			Setting{Title: r("Ring retainer"), Label: "Set on Click wrench 300", Value: "195 to 205", Unit: "lbf·ft", Turn: Anticlockwise, SeenFrom: "seen from output end", Source: r("manual: 270 ±10 N·m")}),
		step(10, "jack", "Set the jack screw",
			Callout{Signal: Danger, Word: "DANGER", Symbols: []string{"W089"}, Short: true, Avoid: r("Guard on. No gloves.")},
			Setting{Title: r("Jack screw, by the mark on the housing"), Label: "Write in what the plate says", Unit: "N·m", Boxes: []string{"First", "Second"}, BoxUnit: "N·m"}),
		step(11, "cover", "Tighten the cover bolts",
			Setting{Title: r("Cover bolts, M8, 8 off"), Label: "Set, one pass after the other", Unit: "N·m", Source: r("manual: 20 to 24 N·m (table 4-1)"), Turn: Clockwise,
				Passes: []Pass{{"Pass 1", "6.5"}, {"Pass 2", "15.5"}, {"Pass 3", "22.0"}, {"Once round", "22.0"}}, Lines: [][]Run{r("Thread oiled")},
				Actions: [][]Run{r("Tighten all of them, one pass after the other, each pass in the order of the figure."), r("Then go once round, from each to its neighbour.")}},
			Order{Shape: Circle, Numbers: []int{1, 5, 3, 7, 2, 6, 4, 8}, Lines: [][]Run{r("The numbers are the order."), r("Drawn as seen from the cover side.")}}),
		step(12, "plate", "Tighten the plate and the cap",
			Order{Shape: Rectangle, Numbers: []int{3, 1, 5, 6, 2, 4}, Lines: [][]Run{r("The numbers are the order.")}},
			Order{Shape: Row, Numbers: []int{4, 2, 1, 3, 5}, Lines: [][]Run{r("The numbers are the order.")}},
			Setting{Actions: [][]Run{r("Turn it back to the next slot.")}, First: 3}),
	}}
}

func sampleContact() Contact {
	c := Contact{Title: r("The drive side of the gear tooth: the convex one"), Toe: "toe", Heel: "heel", Top: "top", Root: "root",
		Under: [][]Run{r("Depth first (B, C), backlash last (D, E)."), r("Check both again, at most 3 times. Still wrong: Stop and call the shop lead.")}, Source: r("manual: workshop manual issue 3, figure 4-9")}
	for i, row := range []ContactRow{{Do: [][]Run{r("Right: a little toward the toe."), r("Go on.")}, Along: 420, Up: 500, Half: 290, Height: 260},
		{Do: [][]Run{r("High: pinion pack thicker."), {{Text: "Go to "}, {Text: "step\u00a07", Link: "race"}, {Text: "."}}}, Along: 500, Up: 830, Half: 300, Height: 125},
		{Do: [][]Run{r("Low: pinion pack thinner.")}, Along: 500, Up: 170, Half: 300, Height: 125},
		{Do: [][]Run{r("Toe: gear pack thicker.")}, Along: 205, Up: 500, Half: 160, Height: 290},
		{Do: [][]Run{r("Heel: gear pack thinner.")}, Along: 795, Up: 500, Half: 160, Height: 290}} {
		row.Letter = string(rune('A' + i))
		c.Rows = append(c.Rows, row)
	}
	return c
}

func sampleLookUp() Section {
	return Section{Name: "Look-up", Groups: []Group{
		{Ref: 300, Bookmark: "Pinion pack", Anchor: "pack", Elements: elements(
			Text{Role: Lead, Runs: r("Read down to your reading, then across to the stack.")},
			Table{Head: [][]Run{r("Reading, mm"), r("Pack, mm"), r("Shims to take"), r("Over the pack")}, Align: []Align{Right, Right, Left, Left},
				Rows: cells([]string{"0.10", "0.76", "0.40 + 0.18 + 0.18", "0.75 to 0.77"}, []string{"0.12", "0.79", "0.50 + 0.15 + 0.15", "0.78 to 0.80"},
					[]string{"0.14", "0.82", "0.40 + 0.30 + 0.12", "0.81 to 0.83"}, []string{"0.16", "0.85", "0.40 + 0.30 + 0.15", "0.84 to 0.86"},
					[]string{"0.18", "0.88", "0.40 + 0.30 + 0.18", "0.87 to 0.89"}, []string{"0.20", "0.92", "0.50 + 0.30 + 0.12", "0.91 to 0.93"})})},
		{Ref: 310, Bookmark: "Contact pattern", Elements: elements(Text{Role: Lead, Runs: r("For step 3. Contact pattern")}, sampleContact())},
	}}
}

func sampleRecord() Section {
	var rows []RecordRow
	for i := range 14 {
		rows = append(rows, RecordRow{Ref: Ref(500 + i), Step: strconv.Itoa(2 + i), What: r([]string{"Backlash as found, lowest", "Pinion nut", "Pinion pack", "Ring thread wear"}[i%4]),
			Limits: r([]string{"0.15 to 0.25\u00a0mm", "100\u00a0N·m", "0.60 to 1.20\u00a0mm", "max 0.05\u00a0mm"}[i%4]), Boxes: []bool{true, i%4 != 1, true}})
	}
	rows[4].Hold = true
	rows[4].What = r("HOLD: nut seen by shop lead")
	rows[4].Limits = nil
	return Section{Name: "Record", Groups: []Group{
		{Ref: 400, Bookmark: "Record", Elements: elements(
			Records{Title: "Readings and settings", Columns: []string{"Step", "What", "Limits", "As found", "As left", "Initials"}, Rows: rows})},
		{Elements: elements(End{"END OF CARD"})},
	}}
}

// samplePicture is a drawing: a flange with eight holes round a bore.
func samplePicture() []byte {
	const w, h = 720, 360
	m := image.NewGray(image.Rect(0, 0, w, h))
	ring := func(cx, cy, from, to int, g uint8) {
		for y := range h {
			for x := range w {
				if d := (x-cx)*(x-cx) + (y-cy)*(y-cy); d >= from*from && d < to*to {
					m.SetGray(x, y, color.Gray{g})
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
