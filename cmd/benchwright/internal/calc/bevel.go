package calc

import (
	"math/big"
	"strconv"
	"strings"

	"benchwright/cmd/benchwright/internal/bench"
	"benchwright/cmd/benchwright/internal/quantity"
)

var bevel = computation{
	name:  "bevel",
	about: "how much backlash opens when a bevel gear moves along its axis",
	options: []option{
		{name: "teeth", example: "16 32", about: "teeth of pinion and gear; shafts at 90°", needed: true},
		{name: "pressure-angle", example: "20°", about: "pressure angle", needed: true},
		{name: "spiral", example: "35°", about: "spiral angle; 0° for straight teeth", needed: true},
		{name: "lash", example: "0.05 mm", about: "a change of backlash that is wanted"},
		{name: "ratio", example: "0.7", about: "the manual's own: backlash for each length of movement"},
		{name: "moves", example: "gear", about: "what moves in the manual's ratio: pinion or gear"},
	},
	example: `--teeth "16 32" --pressure-angle 20° --spiral 35° --lash "0.05 mm"`,
	work:    bevelSheet,
}

const bevelSource = "From memory, with its derivation: the movement opens the mesh by x × sin δ, put into the published spur relation j = 2 × opening × tan α. It checks a manual's ratio; it is never the only ground for a figure."

func bevelSheet(a *answers) *sheet {
	teeth := a.teeth("teeth")
	pressure, spiral := a.angle("pressure-angle"), a.angle("spiral")
	if a.ok() && pressure.Sign() == 0 {
		a.wrong("pressure-angle", "a pressure angle is above 0°: write it as in `20°`")
	}
	change := a.value("lash", quantity.Length)
	stated := a.positiveNumber("ratio")
	if a.has("ratio") {
		a.need("moves")
	}
	moves := a.choice("moves", "pinion", "gear")
	if !a.ok() {
		return nil
	}
	s := a.sheet("Backlash and movement of a bevel gear", "Backlash is tangent to rotation at the pitch radius; the shafts stand at 90°.")
	s.formula("sin δ = z / √(z² + z'²)", "rate = 2 × tan α × sin δ / cos β")
	s.input("z", "teeth of pinion and gear", strconv.Itoa(teeth[0])+" and "+strconv.Itoa(teeth[1]))
	s.input("α", "pressure angle", s.num(pressure)+"°")
	s.input("β", "spiral angle", s.num(spiral)+"°")
	mesh, cos := bench.MeshRate(pressure), bench.Cos(spiral)
	s.step("2 × tan ", s.num(pressure), "° ", s.equals(mesh), ", cos ", s.num(spiral), "° ", s.equals(cos))
	var rates []*big.Rat
	for i, name := range []string{"pinion", "gear"} {
		b := bench.Bevel{Teeth: teeth[i], Mate: teeth[1-i], Pressure: pressure, Spiral: spiral}
		sine, rate := b.PitchSine(), b.AxialRate()
		rates = append(rates, rate)
		z, mate := strconv.Itoa(b.Teeth), strconv.Itoa(b.Mate)
		s.step(name, ": sin δ = ", z, " / √(", z, "² + ", mate, "²) ", s.equals(sine))
		s.step(name, ": rate = ", s.num(mesh), " × ", s.num(sine), " / ", s.num(cos), " ", s.equals(rate))
		s.result("The ", name, " moved out by 1 mm opens ", s.rounded(rate, mm), " of backlash.")
	}
	if a.has("lash") {
		s.value("", "change of backlash wanted", change, change.Unit)
		for i, name := range []string{"pinion", "gear"} {
			move, _ := bench.ShimChange(change.Value, new(big.Rat), rates[i])
			s.step(name, ": ", s.num(change.Value), " / ", s.num(rates[i]), " ", s.equalsIn(move, change.Unit))
			way := "out"
			if move.Sign() < 0 {
				way = "in"
			}
			s.result("For the change: ", name, " ", way, " by ", s.rounded(new(big.Rat).Abs(move), change.Unit), ".")
		}
	}
	if a.has("ratio") {
		theory := rates[0]
		if moves == "gear" {
			theory = rates[1]
		}
		s.input("", "the manual's own ratio", s.num(stated.Value)+" for the "+moves)
		if bench.FarFromTheory(stated.Value, theory) {
			s.refuse("The manual's ratio is far from the theory: under half of it or over twice. Ask before you use it.")
		} else {
			s.result("The manual's ratio is near enough to the theory. Use the manual's.")
		}
	}
	s.source(bevelSource)
	return s
}

// teeth reads "16 32".
func (a *answers) teeth(name string) [2]int {
	out := [2]int{1, 1}
	f := strings.FieldsFunc(a.text(name), func(r rune) bool { return strings.ContainsRune(" ,/:", r) })
	bad := len(f) != 2
	for i := range min(len(f), 2) {
		n, err := strconv.Atoi(f[i])
		bad = bad || err != nil || n < 3 || n > 1000
		out[i] = n
	}
	if bad {
		a.wrong(name, "`%s` is not a pair of teeth from 3 to 1000: write pinion and gear as in `16 32`", short(a.text(name)))
		return [2]int{1, 1}
	}
	return out
}
