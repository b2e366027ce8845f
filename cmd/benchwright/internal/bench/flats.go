package bench

import (
	"math/big"
	"regexp"
	"strings"

	"benchwright/cmd/benchwright/internal/quantity"
)

// A Drive is what the tool grips.
type Drive uint8

// The drives.
const (
	Hex    Drive = iota // the head of a hexagon bolt; nuts of 7/16 and 9/16 in are larger
	Socket              // the hexagon socket of a cap screw: the tool is a key
)

// A FlatSize is a distance across flats of a thread.
type FlatSize struct {
	Size     quantity.Value // "13 mm", "9/16 in"
	Standard string         // of its series: which rows were read is said at the table
	Older    bool           // superseded, but in use
}

// AcrossFlats returns the distances across flats that a thread may have, that of
// the present standard first: for "M10", "M10×1.25" or "3/8-16 UNC" of a hexagon
// 16 mm and, older, 17 mm; 9/16 in. It is nil for a thread that the tables here
// do not hold. They hold plain bolts alone: flanged, heavy, small and fine heads
// differ, so what the procedure says is printed and this only checks it.
func AcrossFlats(thread string, drive Drive) []FlatSize {
	size := nominalSize(thread)
	var out []FlatSize
	for _, f := range flats {
		if f.thread != size {
			continue
		}
		inch := !strings.HasPrefix(size, "M")
		add := func(text string, older bool) {
			if text != "" {
				out = append(out, FlatSize{flatValue(text, inch), flatStandard(drive, inch, older), older})
			}
		}
		if drive == Socket {
			add(f.key, false)
		} else {
			add(f.hex, false)
			add(f.older, true)
		}
	}
	return out
}

// A FlatVerdict is what a written distance across flats is worth.
type FlatVerdict uint8

// The verdicts.
const (
	FlatUnknown    FlatVerdict = iota // the thread is not in the tables: no check
	FlatListed                        // one of the thread's
	FlatSubstitute                    // in the other system of the thread's and within 0.5 mm of it: the tool rounds the corners
	FlatUnlisted                      // none of them
)

// NearlyFits reports whether a tool of one system is nearly the size of the other's:
// 14 mm on 9/16 in, which is 14.29 mm. It rounds the corners, and is no
// substitute (common practice).
func NearlyFits(size, tool quantity.Value) bool {
	if size.Unit.Dimension != tool.Unit.Dimension || metric(size.Unit) == metric(tool.Unit) {
		return false
	}
	off := quantity.Convert(tool.Value, tool.Unit, size.Unit)
	off = quantity.Convert(off.Sub(off, size.Value), size.Unit, millimeter)
	return off.Sign() != 0 && off.Abs(off).Cmp(substituteReach) <= 0
}

// substituteReach is how far a tool of the other system may be off and still be
// taken for a substitute.
var substituteReach = big.NewRat(1, 2)

// JudgeFlats compares a written tool with what a thread may have, which it
// returns too. The match is exact: 9/16 in is 14.2875 mm, and neither 14 nor 14.29 mm
// is that tool.
func JudgeFlats(thread string, drive Drive, written quantity.Value) (FlatVerdict, []FlatSize) {
	known := AcrossFlats(thread, drive)
	if len(known) == 0 || written.Value == nil || written.Unit.Dimension != quantity.Length {
		return FlatUnknown, known
	}
	verdict := FlatUnlisted
	for _, k := range known {
		switch {
		case quantity.Convert(written.Value, written.Unit, k.Size.Unit).Cmp(k.Size.Value) == 0:
			return FlatListed, known
		case NearlyFits(k.Size, written):
			verdict = FlatSubstitute
		}
	}
	return verdict, known
}

func metric(u quantity.Unit) bool { return u.Symbol == "mm" || u.Symbol == "cm" || u.Symbol == "m" }

// threadName is a metric or a unified thread with its pitch and class, if any,
// and its size. Whitworth and pipe threads have other heads and do not match.
var threadName = regexp.MustCompile(
	`^(?:(M\d+)(?: ?[×xX] ?\d+(?:[.,]\d+)?)?|(\d+(?:/\d+)?)(?: ?(?:in|["″]))?(?: ?- ?\d+)?(?: ?UN(?:C|F|EF|RC|RF|S|R)?)?)(?: ?- ?\d+[A-Za-z]+)?$`)

// nominalSize returns the size in a thread's name: "M10" of "M10×1.25", "3/8" of
// "3/8-16 UNC", "1" of "1-8"; "" of what is no thread here, such as 1-1/8-7.
func nominalSize(thread string) string {
	m := threadName.FindStringSubmatch(strings.NewReplacer("\u00a0", " ", "\u202f", " ").Replace(strings.TrimSpace(thread)))
	if m == nil {
		return ""
	}
	return m[1] + m[2]
}

func flatValue(text string, inch bool) quantity.Value {
	if inch {
		text += " in"
	} else {
		text += " mm"
	}
	v, _ := quantity.ParseValue(text, quantity.Point)
	return v
}

func flatStandard(drive Drive, inch, older bool) string {
	switch {
	case inch && drive == Socket:
		return "ASME B18.3"
	case inch:
		return "ASME B18.2.1"
	case drive == Socket:
		return "ISO 4762"
	case older:
		return "DIN 933"
	}
	return "ISO 4014"
}

// flats holds the distances across flats by thread. Those of M6 to M24, their
// keys to M12, the older M10 and M12, and the inch hexagons 3/8 and 1/2 with the
// key 3/8 were read; all others are from memory.
var flats = []struct{ thread, hex, older, key string }{
	{"M3", "5.5", "", "2.5"},
	{"M4", "7", "", "3"},
	{"M5", "8", "", "4"},
	{"M6", "10", "", "5"},
	{"M8", "13", "", "6"},
	{"M10", "16", "17", "8"},
	{"M12", "18", "19", "10"},
	{"M14", "21", "22", "12"},
	{"M16", "24", "", "14"},
	{"M18", "27", "", ""},
	{"M20", "30", "", "17"},
	{"M22", "34", "32", ""},
	{"M24", "36", "", "19"},
	{"M27", "41", "", ""},
	{"M30", "46", "", "22"},
	{"1/4", "7/16", "", "3/16"},
	{"5/16", "1/2", "", "1/4"},
	{"3/8", "9/16", "", "5/16"},
	{"7/16", "5/8", "", "3/8"},
	{"1/2", "3/4", "", "3/8"},
	{"9/16", "13/16", "", ""},
	{"5/8", "15/16", "", "1/2"},
	{"3/4", "1-1/8", "", "5/8"},
	{"7/8", "1-5/16", "", "3/4"},
	{"1", "1-1/2", "", "3/4"},
}
