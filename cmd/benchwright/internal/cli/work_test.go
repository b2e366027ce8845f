package cli

import (
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
func TestWorkExamples(t *testing.T) {
	for _, w := range workings() {
		_, help := run(t, ".", "work", w.name, "--help")
		_, shown, found := strings.Cut(help, "\nExample:\n")
		if !found {
			t.Errorf("%s: help has no example", w.name)
			continue
		}
		narrow(t, help)
		args := words(shown)[1:]
		code, text := run(t, ".", args...)
		if code != exitOK {
			t.Errorf("%s: exit code %d:\n%s", w.name, code, text)
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
		if _, again := run(t, ".", args...); again != text {
			t.Errorf("%s: another answer to the same question", w.name)
		}
		for i, a := range args {
			if a != "8.8" {
				args[i] = pointForm.ReplaceAllString(a, "$1,$2")
			}
		}
		code, comma := run(t, ".", append(args, "--decimal", "comma")...)
		if code != exitOK || len(comma) != len(text) {
			t.Errorf("%s with a comma: exit code %d:\n%s", w.name, code, comma)
		}
	}
}

// An example of an option is one that it accepts.
func TestWorkAsks(t *testing.T) {
	for _, w := range workings() {
		for _, q := range w.asks {
			if q.about == "" || q.example == "" {
				t.Errorf("%s --%s says too little", w.name, q.name)
			}
			if q.many || !strings.Contains(w.example, "--"+q.name+" ") || q.name == "" {
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
func TestWorkWords(t *testing.T) {
	_, want := run(t, ".", "work", "adapter", "--torque", "100 in-lb", "--length", "12 in", "--adapter", "6 in", "--angle", "0°")
	for _, line := range []string{
		`work adapter --torque 100 in-lb --length 12 in --adapter 6 in --angle 0°`,
		`work adapter --angle=0° --adapter=6 in --length 12 in --torque=100 in-lb`,
		`work adapter -angle 0 deg -adapter 6 inch --length 12" --torque 100 lbf·in`,
	} {
		if code, got := run(t, ".", strings.Fields(line)...); code != exitOK || got != want {
			t.Errorf("%s:\n%s", line, got)
		}
	}
}

// Wrong use is one sentence, exit code 2.
func TestWorkRefusals(t *testing.T) {
	for line, want := range map[string]string{
		`work adaptor`:                                     "nothing is worked out by the name of `adaptor`: did you mean `benchwright work adapter`?",
		`work fit`:                                         "nothing is worked out by the name of `fit`: did you mean `benchwright work size` or `benchwright work press` or `benchwright work heat`?",
		`work qqq`:                                         "nothing is worked out by the name of `qqq`: `benchwright work` lists what can be worked out",
		`work adapter --torque "100 in-lb"`:                "`adapter` needs more: add `--length \"12 in\"`, `--adapter \"6 in\"` and `--angle 0°`",
		`work tilt --angel 20°`:                            "`tilt` has no option `--angel`: did you mean `--angle`?",
		`work tilt --angle`:                                "`--angle` needs a value, as in `--angle 20°`",
		`work tilt --angle 20° --angle 30°`:                "`--angle` is given twice: give it once",
		`work tilt --angle 20°`:                            "`tilt` needs one more: add `--reading \"0.20 mm\"` or `--limits \"0.15 to 0.25 mm\"`",
		`work tilt 0.2 mm --angle 20°`:                     "`0.2 mm` stands before the first option of `tilt`: name what it is, as in `--reading \"0.20 mm\"`",
		`work tilt --reading 0.2 --angle 20°`:              "`--reading`: the unit is missing: write it after the number, as in `0.2 mm`",
		`work tilt --reading 0.2 kg --angle 20°`:           "`--reading`: kg is a unit of mass, not of length: write it in mm, in, µm, cm, m, ft or thou",
		`work tilt --reading 0,2 mm --angle 20°`:           "`--reading`: the decimal mark of this shop is a point: write `0.2 mm`, or add `--decimal comma`",
		`work tilt --reading 0.2 mm --angle 90°`:           "`--angle`: this angle is from 0° to below 90°: write it as in `20°`",
		`work order --bolts 0`:                             "`--bolts`: `0` is no whole number from 1 to 200",
		`work order --bolts 1e9`:                           "`--bolts`: `1e9` is no whole number from 1 to 200",
		`work convert 5 pint --to L`:                       "`pint` has varieties that differ: US or imperial? write `US pt` or `imp pt`",
		`work convert 5 L --to pint`:                       "`--to`: `pint` has varieties that differ: US or imperial? write `US pt` or `imp pt`",
		`work convert 5 L --to ft-lb`:                      "`--to`: lbf·ft is a unit of torque, not of volume: write it in L, mL, US qt, US pt, US gal, US fl oz, imp qt, imp pt, imp gal or imp fl oz",
		`work lash --decimal coma`:                         "`coma` is no decimal mark: write `--decimal point` or `--decimal comma`",
		`work shim --reading 1 mm --make 1 mm`:             "`--reading` and `--make` exclude each other: give one of them",
		`work shim --make 1 mm --stock 1 2 mm --at-most 2`: "`shim` needs more: add `--within \"0.01 mm\"` and `--safe-side more`",
		`work wrench --limits 60 N·m --marks 1 N·m`:        "`--limits`: one value is no limits: write `60 ±20 N·m`",
		`work tilt --decimal comma`:                        "`tilt` needs more: add `--angle 20°`",
		`work tilt --decimal comma --angle 20°`:            "`tilt` needs one more: add `--reading \"0,20 mm\"` or `--limits \"0,15 to 0,25 mm\"`",
		`work size 25 q6`:                                  "`25 q6`: no deviation is known for this letter with this grade; take the limits from the standard",
	} {
		code, got := run(t, ".", words(line)...)
		if got != "benchwright: "+want+"\n" || code != exitFault {
			t.Errorf("%s: exit code %d\n%swant %s", line, code, got, want)
		}
	}
}

// asked returns every question of the script.
func asked(t testing.TB) [][]string {
	script, err := os.ReadFile(top + "/testdata/script/work.txtar")
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for _, m := range regexp.MustCompile(`(?m)^!? ?exec benchwright (work .*)$`).FindAllStringSubmatch(string(script), -1) {
		out = append(out, strings.Fields(m[1]))
	}
	return out
}

var digits = regexp.MustCompile(`[0-9]+\.?[0-9]*`)

// Whatever numbers are put into a question, the steps of its answer add up.
func TestWorkStepsAddUp(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	answers, sums := 0, 0
	for _, question := range asked(t) {
		for range 30 {
			args := slices.Clone(question)
			for i := 2; i < len(args); i++ {
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
			code, text := run(t, ".", args...)
			if code == exitFault {
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
func TestWorkAbsurd(t *testing.T) {
	for _, question := range asked(t) {
		for i := 2; i < len(question); i++ {
			if !digits.MatchString(question[i]) {
				continue
			}
			for _, n := range []string{"0", "-1", "−0.000000000001", "999999999999", "1/999999999999", "1e400", "9999999999999", "0x10", "½", "NaN", "-", "\x00", "\xff"} {
				args := slices.Clone(question)
				args[i] = digits.ReplaceAllLiteralString(args[i], n)
				code, text := run(t, ".", args...)
				if code == exitFault && strings.Count(text, "\n") != 1 || text == "" {
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
	for _, w := range workings() {
		f.Add(w.name + " " + w.example)
		for _, q := range w.asks {
			f.Add(w.name + " " + w.example + " " + q.label())
		}
	}
	for _, question := range asked(f) {
		f.Add(strings.Join(question[1:], " "))
	}
	f.Add("shim --make 999999999999 mm --stock 0.000000000001 0.1 999999999999 mm --within 0 mm --at-most 10 --safe-side more")
	f.Add("adapter --torque 1/999999999999 N·m --length 999999999999 m --adapter 0.000000000001 µm --angle 999999999999 turns")
	f.Add("hold --vacuum -101.3 kPa --atmosphere 101.3 kPa --allowed 999999999999 MPa --temperature -273.15 °C --marks 1/3 Pa --degrees 20")
	f.Fuzz(func(t *testing.T, line string) {
		begin := time.Now()
		code, text := run(t, ".", append([]string{"work"}, words(line)...)...)
		if code < exitOK || code > exitFault || text == "" {
			t.Errorf("exit code %d: %q", code, text)
		}
		if code == exitFault && strings.Count(text, "\n") != 1 {
			t.Errorf("not one sentence: %q", text)
		}
		if took := time.Since(begin); took > 5*time.Second {
			t.Errorf("it took %s", took)
		}
	})
}
