package calc

import (
	"errors"
	"math"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode"
)

// run works out one question and returns all that is said. What is said of
// wrong use is the error.
func run(args ...string) (text string, err error) {
	var b strings.Builder
	err = Run(args, &b)
	if wrongUse(err) {
		b.WriteString(err.Error() + "\n")
	}
	return b.String(), err
}

func wrongUse(err error) bool { return err != nil && !errors.Is(err, ErrImpossible) }

// words takes a line apart as a shell does, quotes and all.
func words(line string) []string {
	var out []string
	for _, m := range regexp.MustCompile(`"([^"]*)"|(\S+)`).FindAllStringSubmatch(strings.ReplaceAll(line, "\\\n", " "), -1) {
		out = append(out, m[1]+m[2])
	}
	return out
}

// Every example runs as help shows it, gives an answer, fits a terminal, and
// its steps add up. So does each with a decimal comma.
func TestExamples(t *testing.T) {
	for _, w := range computations() {
		help, _ := run(w.name, "--help")
		_, shown, found := strings.Cut(help, "\nExample:\n")
		if !found {
			t.Errorf("%s: help has no example", w.name)
			continue
		}
		narrow(t, help)
		args := words(shown)[2:]
		text, err := run(args...)
		if err != nil {
			t.Errorf("%s: %v:\n%s", w.name, err, text)
		}
		narrow(t, text)
		if n := addsUp(t, text); n == 0 && w.name != "flats" && w.name != "order" {
			t.Errorf("%s: no step is a sum that can be checked", w.name)
		}
		for _, head := range []string{"\nInputs\n", "\nResult\n", "\nSource\n"} {
			if !strings.Contains(text, head) {
				t.Errorf("%s: no section %q", w.name, head)
			}
		}
		if again, _ := run(args...); again != text {
			t.Errorf("%s: another answer to the same question", w.name)
		}
		for i, a := range args {
			if a != "8.8" {
				args[i] = pointForm.ReplaceAllString(a, "$1,$2")
			}
		}
		comma, err := run(append(args, "--decimal", "comma")...)
		if err != nil || len(comma) != len(text) {
			t.Errorf("%s with a comma: %v:\n%s", w.name, err, comma)
		}
	}
}

// An example of an option is one that it accepts.
func TestOptions(t *testing.T) {
	for _, w := range computations() {
		for _, q := range w.options {
			if q.about == "" || q.example == "" {
				t.Errorf("%s --%s says too little", w.name, q.name)
			}
			if q.repeated || !strings.Contains(w.example, "--"+q.name+" ") || q.name == "" {
				continue
			}
			if !strings.Contains(w.example, q.label()) {
				t.Errorf("%s: the example does not hold %s", w.name, q.label())
			}
		}
	}
}

// narrow requires lines that a terminal of 80 columns holds.
func narrow(t *testing.T, text string) {
	t.Helper()
	for _, line := range strings.Split(text, "\n") {
		if n := len([]rune(line)); n > lineWidth {
			t.Errorf("%d columns: %s", n, line)
		}
		if strings.IndexFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }) >= 0 {
			t.Errorf("unprintable: %q", line)
		}
	}
}

// What is typed without quotes, with = and in another order is the same.
func TestWords(t *testing.T) {
	want, _ := run("adapter", "--torque", "100 in-lb", "--length", "12 in", "--adapter", "6 in", "--angle", "0°")
	for _, line := range []string{
		`adapter --torque 100 in-lb --length 12 in --adapter 6 in --angle 0°`,
		`adapter --angle=0° --adapter=6 in --length 12 in --torque=100 in-lb`,
		`adapter -angle 0 deg -adapter 6 inch --length 12" --torque 100 lbf·in`,
	} {
		if got, err := run(strings.Fields(line)...); err != nil || got != want {
			t.Errorf("%s:\n%s", line, got)
		}
	}
}

// Wrong use is one sentence.
func TestRefusals(t *testing.T) {
	for line, want := range map[string]string{
		`adaptor`:                                     "there is no calculation `adaptor`: did you mean `benchwright calc adapter`?",
		`fit`:                                         "there is no calculation `fit`: did you mean `benchwright calc size` or `benchwright calc press` or `benchwright calc heat`?",
		`qqq`:                                         "there is no calculation `qqq`: `benchwright calc` lists them",
		`adapter --torque "100 in-lb"`:                "`adapter` needs more: add `--length \"12 in\"`, `--adapter \"6 in\"` and `--angle 0°`",
		`tilt --angel 20°`:                            "`tilt` has no option `--angel`: did you mean `--angle`?",
		`tilt --angle`:                                "`--angle` needs a value, as in `--angle 20°`",
		`tilt --angle 20° --angle 30°`:                "`--angle` is given twice: give it once",
		`tilt --angle 20°`:                            "`tilt` needs one more: add `--reading \"0.20 mm\"` or `--limits \"0.15 to 0.25 mm\"`",
		`tilt 0.2 mm --angle 20°`:                     "`0.2 mm` stands before the first option of `tilt`: name what it is, as in `--reading \"0.20 mm\"`",
		`tilt --reading 0.2 --angle 20°`:              "`--reading`: the unit of measure is missing: write it after the number, as in `0.2 mm`",
		`tilt --reading 0.2 kg --angle 20°`:           "`--reading`: kg measures mass, not length: write it in mm, in, µm, cm, m, ft or thou",
		`tilt --reading 0,2 mm --angle 20°`:           "`--reading`: the decimal mark of this shop is a point: write `0.2 mm`, or add `--decimal comma`",
		`tilt --reading 0.2 mm --angle 90°`:           "`--angle`: this angle is from 0° to below 90°: write it as in `20°`",
		`order --bolts 0`:                             "`--bolts`: `0` is not a whole number from 1 to 200",
		`order --bolts 1e9`:                           "`--bolts`: `1e9` is not a whole number from 1 to 200",
		`convert 5 pint --to L`:                       "`pint` has varieties that differ: US or imperial? write `US pt` or `imp pt`",
		`convert 5 L --to pint`:                       "`--to`: `pint` has varieties that differ: US or imperial? write `US pt` or `imp pt`",
		`convert 5 L --to ft-lb`:                      "`--to`: lbf·ft measures torque, not volume: write it in L, mL, US qt, US pt, US gal, US fl oz, imp qt, imp pt, imp gal or imp fl oz",
		`lash --decimal coma`:                         "`coma` is not a decimal mark: write `--decimal point` or `--decimal comma`",
		`shim --reading 1 mm --make 1 mm`:             "`--reading` and `--make` exclude each other: give one of them",
		`shim --make 1 mm --stock 1 2 mm --at-most 2`: "`shim` needs more: add `--within \"0.01 mm\"` and `--safe-side more`",
		`wrench --limits 60 N·m --marks 1 N·m`:        "`--limits`: a single value is not limits: write `60 ±20 N·m`",
		`tilt --decimal comma`:                        "`tilt` needs more: add `--angle 20°`",
		`tilt --decimal comma --angle 20°`:            "`tilt` needs one more: add `--reading \"0,20 mm\"` or `--limits \"0,15 to 0,25 mm\"`",
		`size 25 q6`:                                  "`25 q6`: no deviation is known for this letter with this grade; take the limits from the standard",
	} {
		got, err := run(words(line)...)
		if got != want+"\n" || !wrongUse(err) {
			t.Errorf("%s: %v\n%swant %s", line, err, got, want)
		}
	}
}

// asked returns every question of the script.
func asked(t testing.TB) [][]string {
	script, err := os.ReadFile("../../../../testdata/script/calc.txtar")
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for _, m := range regexp.MustCompile(`(?m)^!? ?exec benchwright calc (.*)$`).FindAllStringSubmatch(string(script), -1) {
		out = append(out, strings.Fields(m[1]))
	}
	return out
}

var digits = regexp.MustCompile(`[0-9]+\.?[0-9]*`)

// Whatever numbers are put into a question, the steps of its answer add up.
func TestStepsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	answers, sums := 0, 0
	for _, question := range asked(t) {
		for range 30 {
			args := slices.Clone(question)
			for i := 1; i < len(args); i++ {
				// The name of a thread and its class stay what they are.
				if args[i-1] == "--thread" || args[i-1] == "--class" || r.IntN(2) == 0 {
					continue
				}
				args[i] = digits.ReplaceAllStringFunc(args[i], func(n string) string {
					x, _ := strconv.ParseFloat(n, 64)
					_, after, _ := strings.Cut(n, ".")
					return strconv.FormatFloat(x*math.Exp(r.NormFloat64()/2), 'f', len(after), 64)
				})
			}
			text, err := run(args...)
			if wrongUse(err) {
				continue
			}
			answers++
			sums += addsUp(t, text)
			narrow(t, text)
			if t.Failed() {
				t.Fatalf("%q\n%s", args, text)
			}
		}
	}
	if answers < 500 || sums < 1000 {
		t.Errorf("%d answers with %d sums", answers, sums)
	}
}

// A number that cannot be gets a sentence, or an answer that can be printed.
func TestAbsurd(t *testing.T) {
	for _, question := range asked(t) {
		for i := 1; i < len(question); i++ {
			if !digits.MatchString(question[i]) {
				continue
			}
			for _, n := range []string{"0", "-1", "−0.000000000001", "999999999999", "1/999999999999", "1e400", "9999999999999", "0x10", "½", "NaN", "-", "\x00", "\xff"} {
				args := slices.Clone(question)
				args[i] = digits.ReplaceAllLiteralString(args[i], n)
				text, err := run(args...)
				if wrongUse(err) && strings.Count(text, "\n") != 1 || text == "" {
					t.Errorf("%q: %s", args, text)
				}
				for _, line := range strings.Split(text, "\n") {
					if strings.IndexFunc(line, func(r rune) bool { return !unicode.IsPrint(r) }) >= 0 {
						t.Errorf("%q: unprintable: %q", args, line)
					}
				}
			}
		}
	}
}

// FuzzWork types anything at all: there is an answer or a sentence, at once.
func FuzzWork(f *testing.F) {
	for _, w := range computations() {
		f.Add(w.name + " " + w.example)
		for _, q := range w.options {
			f.Add(w.name + " " + w.example + " " + q.label())
		}
	}
	for _, question := range asked(f) {
		f.Add(strings.Join(question, " "))
	}
	f.Add("shim --make 999999999999 mm --stock 0.000000000001 0.1 999999999999 mm --within 0 mm --at-most 10 --safe-side more")
	f.Add("adapter --torque 1/999999999999 N·m --length 999999999999 m --adapter 0.000000000001 µm --angle 999999999999 turns")
	f.Add("hold --vacuum -101.3 kPa --atmosphere 101.3 kPa --allowed 999999999999 MPa --temperature -273.15 °C --marks 1/3 Pa --degrees 20")
	f.Fuzz(func(t *testing.T, line string) {
		begin := time.Now()
		text, err := run(words(line)...)
		if text == "" {
			t.Errorf("nothing is said: %v", err)
		}
		if wrongUse(err) && strings.Count(text, "\n") != 1 {
			t.Errorf("not one sentence: %q", text)
		}
		if took := time.Since(begin); took > 5*time.Second {
			t.Errorf("it took %s", took)
		}
	})
}
