package bench

import (
	"math/big"
	"math/rand/v2"
	"testing"

	"benchwright/cmd/benchwright/internal/quantity"
)

// The stress area is less than that of the shank and more than that of the
// core which the whole depth of thread leaves; it grows with the diameter and
// with the fineness of the thread. A stronger class holds more.
func TestThreadProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 1))
	for range 300 {
		pitch := big.NewRat(50+r.Int64N(300), 100)
		th := Thread{Diameter: new(big.Rat).Add(new(big.Rat).Mul(pitch, big.NewRat(4, 1)), big.NewRat(r.Int64N(200), 10)), Pitch: pitch}
		circle := func(d *big.Rat) *big.Rat { return RamArea(d) }
		area := th.StressArea()
		core := new(big.Rat).Mul(pitch, big.NewRat(122687, 100000)) // 17/24·√3·P, twice the depth of a bolt's thread: ISO 68-1, from memory
		if area.Cmp(circle(th.Diameter)) >= 0 || area.Cmp(circle(core.Sub(th.Diameter, core))) <= 0 {
			t.Fatalf("M%s×%s: %s mm²", th.Diameter, pitch, area.FloatString(3))
		}
		larger, finer := th, th
		larger.Diameter = new(big.Rat).Add(th.Diameter, big.NewRat(1, 10))
		finer.Pitch = new(big.Rat).Mul(pitch, big.NewRat(9, 10))
		if larger.StressArea().Cmp(area) <= 0 || finer.StressArea().Cmp(area) <= 0 {
			t.Fatalf("M%s×%s: no more area when larger or finer", th.Diameter, pitch)
		}
		var last *big.Rat
		for _, class := range []string{"8.8", "10.9", "12.9"} {
			proof, _, ok := th.ProofLoad(class)
			if !ok {
				break
			}
			if last != nil && proof.Cmp(last) <= 0 {
				t.Fatalf("M%s×%s %s holds no more than the class below", th.Diameter, pitch, class)
			}
			last = proof
		}
		un := Thread{Diameter: big.NewRat(4+r.Int64N(12), 16), PerInch: big.NewRat(6+r.Int64N(30), 1)}
		if five, _, ok := un.ProofLoad("5"); ok {
			if eight, _, ok := un.ProofLoad("8"); !ok || new(big.Rat).Mul(five, big.NewRat(120, 85)).Cmp(eight) != 0 {
				t.Fatalf("%v: grade 5 %s, grade 8 %v", un, five, eight)
			}
		}
	}
}

// The proof load of a coarse thread grows with the diameter, also where the
// table of ISO 898-1 ends and the formula goes on.
func TestProofLoadRises(t *testing.T) {
	for _, class := range []string{"8.8", "10.9", "12.9"} {
		var last *big.Rat
		for tenths := int64(16); tenths <= 390; tenths++ {
			pitch, ok := coarse[tenths]
			if !ok {
				continue
			}
			proof, _, ok := Thread{Diameter: big.NewRat(tenths, 10), Pitch: big.NewRat(pitch, 100)}.ProofLoad(class)
			if !ok || last != nil && proof.Cmp(last) <= 0 {
				t.Errorf("M%g %s: %v after %v", float64(tenths)/10, class, proof, last)
			}
			last = proof
		}
	}
}

// More torque is never judged less tight, nor does another duty than clamp ever
// make it too loose; a slip is offered for what is not ordinary alone, and makes
// it ordinary.
func TestJudgeTorqueProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 9))
	units := []quantity.Unit{newtonMeter, quantity.MustUnit("lbf·ft"), quantity.MustUnit("lbf·in")}
	seen, slips := map[TightnessFinding]int{}, 0
	for range 2000 {
		th := Thread{Diameter: big.NewRat(60+r.Int64N(180), 10), Pitch: big.NewRat(100+r.Int64N(100), 100)}
		k := big.NewRat(8+r.Int64N(25), 100)
		proof, _, _ := th.ProofLoad("8.8")
		u := units[r.IntN(3)]
		b := quantity.Band{Form: quantity.Range, Unit: u, Low: big.NewRat(1+r.Int64N(3000), 10)}
		b.High = new(big.Rat).Mul(b.Low, big.NewRat(100+r.Int64N(30), 100))
		j, ok := JudgeTorque(b, Clamp, th, k, proof)
		if !ok || j.Least.Cmp(j.Most) > 0 {
			t.Fatalf("%s to %s: %+v", b.Low, b.High, j)
		}
		seen[j.Finding]++
		// The share is what the clamp force of the torque is of the proof load.
		force := th.ClampForce(k, quantity.Convert(b.High, u, newtonMeter))
		if share := force.Quo(force, proof); share.Cmp(j.Most) != 0 {
			t.Fatalf("%s %s: a share of %s, not %s", b.High, u.Symbol, j.Most, share)
		}
		rank := func(f TightnessFinding) int {
			return map[TightnessFinding]int{TightLow: 0, TightOrdinary: 1, TightHigh: 2, TightAbove: 3}[f]
		}
		more := mistyped(b, big.NewRat(11, 10), u)
		if tighter, _ := JudgeTorque(more, Clamp, th, k, proof); rank(tighter.Finding) < rank(j.Finding) {
			t.Fatalf("%s to %s %s: looser with a tenth more", b.Low, b.High, u.Symbol)
		}
		if other, _ := JudgeTorque(b, Plug, th, k, proof); other.Finding != j.Finding && (j.Finding != TightLow || other.Finding != TightOrdinary) {
			t.Fatalf("a plug: %d, a clamp: %d", other.Finding, j.Finding)
		}
		if j.Finding == TightOrdinary && len(j.Slips) > 0 {
			t.Fatal("a slip in what is ordinary")
		}
		for _, s := range j.Slips {
			slips++
			if again, ok := JudgeTorque(s.Meant, Clamp, th, k, proof); !ok || again.Finding != TightOrdinary {
				t.Fatal("a slip that fixes nothing")
			}
			if s.Places == 0 && (s.Meant.Low.Cmp(b.Low) != 0 || s.Meant.Unit == u) {
				t.Fatal("a slip of the unit has the same digits and another unit")
			}
		}
	}
	if len(seen) != 4 || slips < 100 {
		t.Errorf("findings %v, %d slips: too few to tell", seen, slips)
	}
}
