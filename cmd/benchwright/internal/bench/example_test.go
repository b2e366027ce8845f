package bench_test

import (
	"fmt"
	"math/big"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
	"benchwright/cmd/benchwright/internal/shop"
)

// Limits of 55 to 65 N·m on a wrench with marks of 1 lbf·ft. All numbers are
// invented.
func ExampleChooseWrench() {
	wrench := &shop.Wrench{Scale: scale("15 to 75 ft-lb", "1 ft-lb"), Accuracy: rat("1/25")}
	choice, refused := bench.ChooseWrench(band("55 to 65 N·m"), nil, []*shop.Wrench{wrench})
	fmt.Println("refused:", len(refused))
	printLine("marks inside the limits:", choice.Marks.Print(quantity.Point))
	printLine("set:", wrench.Scale.Print(choice.Setting, quantity.Point))
	fmt.Println("keeps inside the limits with its accuracy:", choice.Keeps)
	// Output:
	// refused: 0
	// marks inside the limits: 41 to 47 lbf·ft
	// set: 44 lbf·ft
	// keeps inside the limits with its accuracy: true
}

// NAVEDTRA 14315, ch. 3: 100 lbf·in at the fastener through a 6 in adapter in
// line with a 12 in wrench is a setting of 66.7 lbf·in.
func ExampleSetAdapter() {
	setting, _ := bench.SetAdapter(rat("100"), rat("12"), rat("6"), rat("0"))
	fmt.Println(setting, "≈", setting.FloatString(1), "lbf·in")
	// Output: 200/3 ≈ 66.7 lbf·in
}

// The cross pattern of eight bolts: ASME PCC-1 legacy pattern, secondary
// sources.
func ExampleOrder() {
	fmt.Println(bench.Order(8))
	// Output: [1 5 3 7 2 6 4 8]
}

// Three passes of 60 N·m on marks of 1 N·m; the shares are invented.
func ExamplePasses() {
	wrench := scale("20 to 120 N·m", "1 N·m")
	passes, _, _ := bench.Passes(rat("60"), []*big.Rat{rat("3/10"), rat("7/10"), rat("1")}, wrench)
	fmt.Println(len(passes), "passes: the first lies below the wrench's lowest mark")
	passes, _, _ = bench.Passes(rat("60"), []*big.Rat{rat("1/2"), rat("4/5"), rat("1")}, wrench)
	for _, p := range passes {
		printLine(wrench.Print(p.Setting, quantity.Point), "once around:", p.Round)
	}
	// Output:
	// 0 passes: the first lies below the wrench's lowest mark
	// 30 N·m once around: false
	// 48 N·m once around: false
	// 60 N·m once around: false
	// 60 N·m once around: true
}

// Backlash of 0.15 to 0.25 mm along the turn at a pitch radius of 72 mm, read
// by a dial at 60 mm. The numbers are invented.
func ExampleLashFactor() {
	stated := bench.LashPoint{Radius: rat("72")}
	dial := bench.LashPoint{Radius: rat("60")}
	factor := bench.LashFactor(stated, dial, rat("20"), rat("35"))
	exact, marks, _ := bench.OnDial(band("0.15 to 0.25 mm"), factor, marks("0.01 mm"))
	fmt.Println("× " + factor.RatString())
	printLine(exact.Range(quantity.Point))
	printLine(marks.Print(quantity.Point), "on the dial")
	// Output:
	// × 5/6
	// 1/8 to 5/24 mm
	// 0.13 to 0.20 mm on the dial
}

// A stock of seven thicknesses in mm, and the pack of 0.76 mm. The stock is
// invented.
func ExampleNewStacks() {
	var stock []bench.Thickness
	for _, t := range []string{"0.10", "0.12", "0.15", "0.18", "0.30", "0.40", "0.50"} {
		stock = append(stock, bench.Thickness{Value: rat(t)})
	}
	stacks, _ := bench.NewStacks(stock, 1, 4)
	pack, _ := stacks.Make(rat("0.76"), rat("0"), bench.Thicker)
	for _, shim := range pack.Layers() {
		fmt.Println(shim.FloatString(2))
	}
	_, possible := stacks.Make(rat("0.41"), rat("0"), bench.Thicker)
	below, above := stacks.Beside(rat("0.41"))
	fmt.Println("0.41:", possible, "but", below.Total.FloatString(2), "and", above.Total.FloatString(2))
	// Output:
	// 0.40
	// 0.18
	// 0.18
	// 0.41: false but 0.40 and 0.42
}

// A reading of 0.30 mm is to become 0.20 mm, and each mm of shim closes the
// backlash by 0.651 mm. The numbers are invented.
func ExampleShimChange() {
	change, _ := bench.ShimChange(rat("0.20"), rat("0.30"), rat("-0.651"))
	fmt.Println(change.FloatString(3), "mm more shim")
	// Output: 0.154 mm more shim
}

// A rotating torque of 15 to 25 lbf·in at a lever of 2 in: TM 5-2420-230-24-1,
// T = F × R. The lever is invented.
func ExamplePull() {
	_, marks, _ := bench.Pull(band("15 to 25 lbf·in"), value("2 in"), value("0 in"), scale("0 to 50 lbf", "1/2 lbf"))
	printLine(marks.Print(quantity.Point))
	// Output: 7.5 to 12.5 lbf
}

// A textbook's aluminum hub: 0.001 in of interference, 0.002 in to spare, 12.8
// millionths for each °F, 1 in across: 234 °F.
func ExampleTemperatureRise() {
	rise, _ := bench.TemperatureRise(rat("0.0010"), rat("0.0020"), rat("0.0000128"), rat("1.000"))
	fmt.Println("heat it by", rise.FloatString(0), "°F")
	// Output: heat it by 234 °F
}

// Bhandari, Design of Machine Elements, ex. 22.6: an interference of 0.03171 mm
// between tubes of 20, 40 and 60 mm presses with 38.46 MPa.
func ExamplePressFit_Pressure() {
	f := bench.PressFit{
		Outer: rat("60"), Seat: rat("40"), Bore: rat("20"),
		HubModulus: rat("207000"), ShaftModulus: rat("207000"),
		HubPoisson: rat("0.3"), ShaftPoisson: rat("0.3"),
	}
	p, _ := f.Pressure(rat("0.03171"))
	fmt.Println(p.FloatString(2), "MPa")
	// Output: 38.46 MPa
}

// Bhandari, Design of Machine Elements, ex. 3.3: 50 H7/s6 is 0.018 to 0.059 mm
// of interference.
func ExampleInterference() {
	hole, shaft, _ := quantity.ParseFit("50 H7/s6", quantity.Point)
	least, most, _ := bench.Interference(hole, shaft)
	fmt.Println(least.RatString(), "to", most.RatString(), "µm")
	// Output: 18 to 59 µm
}

// A hold at 70 kPa that may lose 2 kPa, the shop at 20 °C and then one degree
// colder, as warm, and one degree warmer. The numbers are invented.
func ExampleHold_EndReadings() {
	hold := bench.Hold{
		Gauge: scale("0 to 100 kPa", "0.5 kPa"), Start: rat("70"), Atmosphere: rat("101.3"), Change: rat("2"),
		Coldest: rat("20"), Warmest: rat("20"),
	}
	rows, _ := hold.EndReadings(1)
	for _, r := range rows {
		printLine(r.Shift.RatString(), "°C: at least", hold.Gauge.Print(r.Mark, quantity.Point))
	}
	// Output:
	// -1 °C: at least 67.5 kPa
	// 0 °C: at least 68.0 kPa
	// 1 °C: at least 69.0 kPa
}

// The shop's rule here is to warn under 5 marks and to refuse under 2 (common
// practice).
func ExampleJudgeMarks() {
	across, _ := bench.MarksAcross(band("0.15 to 0.17 mm"), marks("0.01 mm"))
	fmt.Println(across.RatString(), "marks, coarse:", bench.JudgeMarks(across, rat("5"), rat("2")) == bench.Coarse)
	// Output: 2 marks, coarse: true
}

// Limits that lose an uncertainty of 0.01 mm at each side; the numbers are
// invented.
func ExampleGuard() {
	guarded, _ := bench.Guard(band("0.15 to 0.25 mm"), rat("1"), value("0.01 mm"))
	printLine(guarded.Range(quantity.Point))
	// Output: 0.16 to 0.24 mm
}

// rat reads an exact number.
func rat(text string) *big.Rat {
	x, ok := new(big.Rat).SetString(text)
	if !ok {
		panic(text)
	}
	return x
}

// band reads limits, value one value.
func band(text string) quantity.Band {
	b, problem := quantity.ParseBand(text, quantity.Point)
	if problem != nil {
		panic(problem.Message)
	}
	return b
}

func value(text string) quantity.Value {
	v, problem := quantity.ParseValue(text, quantity.Point)
	if problem != nil {
		panic(problem.Message)
	}
	return v
}

// marks returns a scale without ends that has marks this far apart, scale one
// that reaches over a span.
func marks(step string) quantity.Scale {
	v := value(step)
	return quantity.Scale{Unit: v.Unit, Step: v.Value}
}

func scale(span, step string) quantity.Scale {
	s := marks(step)
	b := band(span).In(s.Unit)
	s.Low, s.High = b.Low, b.High
	return s
}

// printLine prints with a plain blank where a unit has a no-break space.
func printLine(args ...any) { fmt.Print(strings.ReplaceAll(fmt.Sprintln(args...), "\u00a0", " ")) }
