package calc

import (
	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var flats = computation{
	name:  "flats",
	about: "across flats of a thread: which wrench, socket or key",
	words: "THREAD",
	options: []option{
		{name: "", example: "M10", about: "the thread, M10 or 3/8-16", needed: true},
		{name: "head", example: "hex", about: "hex (a bolt head) or socket (a cap screw, turned with a key)", needed: true},
		{name: "tool", example: "16 mm", about: "a tool to be judged"},
	},
	example: `M10 --head hex --tool "16 mm"`,
	work:    flatsSheet,
}

func flatsSheet(a *answers) *sheet {
	thread := a.text("")
	drive := bench.Hex
	if a.choice("head", "hex", "socket") == "socket" {
		drive = bench.Socket
	}
	tool := a.positive("tool", quantity.Length)
	sizes := bench.AcrossFlats(thread, drive)
	if len(sizes) == 0 {
		a.fail("`%s` is not in the tables: they hold M3 to M30 and 1/4 to 1 in, plain bolts and cap screws; measure the head", short(thread))
	}
	if !a.ok() {
		return nil
	}
	s := a.sheet("Across flats", "Plain bolts and cap screws. Flanged, heavy and fine heads differ: measure them.")
	s.input("", "thread", thread)
	for _, size := range sizes {
		text := s.typed(size.Size) + ", " + size.Standard
		if size.Older {
			text = s.typed(size.Size) + " on older bolts, " + size.Standard
		}
		s.result(text)
	}
	if a.has("tool") {
		s.input("", "tool", s.typed(tool))
		verdict, _ := bench.JudgeFlats(thread, drive, tool)
		switch verdict {
		case bench.FlatListed:
			s.result("The tool fits.")
		case bench.FlatSubstitute:
			s.refuse(s.typed(tool), " is no substitute: it rounds the corners.")
		default:
			s.refuse(s.typed(tool), " is none of these. Measure the head.")
		}
	}
	s.source("ISO 272, ISO 4014, DIN 933, ISO 4762, ASME B18.2.1 and B18.3; less common sizes from memory.")
	return s
}
