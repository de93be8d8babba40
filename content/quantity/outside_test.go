package quantity_test

import (
	"fmt"
	"math/big"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/text/currency"

	. "hussif/content/quantity"
)

// outside runs a program that knows the answers independently. Where it is
// missing the test is skipped, or fails where HUSSIF_OUTSIDE is "required".
func outside(t *testing.T, stdin, program string, args ...string) []string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil && os.Getenv("HUSSIF_OUTSIDE") == "required" {
		t.Fatalf("the program %s is required and missing", program)
	}
	if err != nil {
		t.Skipf("the program %s is missing; set HUSSIF_OUTSIDE=required to make this a failure", program)
	}
	command := exec.Command(path, args...)
	command.Stdin = strings.NewReader(stdin)
	command.Stderr = os.Stderr
	out, err := command.Output()
	if err != nil {
		t.Fatalf("%s: %v", program, err)
	}
	return strings.Split(strings.TrimSpace(string(out)), "\n")
}

// A conversion is a length as a maker writes it and as GNU units reads it.
type conversion struct {
	text, expression string
	to               Unit
}

func conversions() []conversion {
	var all []conversion
	for n := range 160 {
		den := []int{2, 4, 8, 16, 32, 64}[n%6]
		whole, num := n*7%53+1, n%(den-1)+1
		unit := []Unit{Inches, Feet, Yards}[n%3]
		to := []Unit{Millimetres, Centimetres, Metres, Inches}[n%4]
		all = append(all, conversion{fmt.Sprintf("%d %d/%d %s", whole, num, den, unit), fmt.Sprintf("(%d+%d|%d) %s", whole, num, den, unit), to})
	}
	for n := range 160 {
		unit := []Unit{Millimetres, Centimetres, Metres, Inches}[n%4]
		to := []Unit{Inches, Feet, Yards}[n%3]
		decimal := fmt.Sprintf("%d.%03d", n*11%97, n*37%1000)
		all = append(all, conversion{decimal + " " + unit.String(), decimal + " " + unit.String(), to})
	}
	for n := range 80 {
		all = append(all, conversion{fmt.Sprintf("%d ft %d 3/8 in", n+1, n%12), fmt.Sprintf("%d ft + (%d+3|8) in", n+1, n%12), Millimetres})
	}
	return all
}

// The reference is GNU units with its own table of units; one process does all.
// It reckons in binary floating point and is asked for 12 digits.
func TestLengthsAgainstGNUUnits(t *testing.T) {
	all := conversions()
	var asked strings.Builder
	for _, c := range all {
		fmt.Fprintf(&asked, "%s\n%s\n", c.expression, c.to)
	}
	answers := outside(t, asked.String(), "units", "--terse", "--output-format", "%.12g")
	if len(answers) != len(all) {
		t.Fatalf("%d answers to %d conversions", len(answers), len(all))
	}
	half := big.NewRat(5, 1_000_000_000_000) // at most half a step of the twelfth digit, relative
	for i, c := range all {
		length, err := ParseLength(c.text, NoUnit)
		if err != nil {
			t.Errorf("%q: %v", c.text, err)
			continue
		}
		answer, ok := new(big.Rat).SetString(strings.TrimSpace(answers[i]))
		if !ok {
			t.Fatalf("%q: answer %q is no number", c.expression, answers[i])
		}
		ours := big.NewRat(int64(length), int64(c.to.Length()))
		difference := new(big.Rat).Sub(ours, answer)
		if difference.Abs(difference).Cmp(new(big.Rat).Mul(half, ours)) > 0 {
			t.Errorf("%q is %s %s, GNU units says %s", c.text, ours.FloatString(12), c.to, answers[i])
		}
	}
}

const javaCurrencies = `import java.util.Currency;
class Currencies {
	public static void main(String[] args) {
		for (Currency c : Currency.getAvailableCurrencies())
			System.out.println(c.getCurrencyCode() + " " + c.getDefaultFractionDigits());
	}
}
`

// The reference is the class java.util.Currency, which represents ISO 4217 with
// its digits after the point, withdrawn currencies included.
func TestCurrencyDigitsAgainstJava(t *testing.T) {
	program := filepath.Join(t.TempDir(), "Currencies.java")
	if err := os.WriteFile(program, []byte(javaCurrencies), 0o600); err != nil {
		t.Fatal(err)
	}
	var known int
	for _, line := range outside(t, "", "java", program) {
		var code string
		var digits int
		if _, err := fmt.Sscan(line, &code, &digits); err != nil {
			t.Fatalf("%q: %v", line, err)
		}
		m, err := ParseMoney("1 "+code, "")
		if err != nil {
			continue // withdrawn long ago, a fund or a metal
		}
		known++
		minor := int64(1)
		for range digits {
			minor *= 10
		}
		if m.Minor != minor {
			t.Errorf("1 %s is %d minor units, Java says it has %d digits", code, m.Minor, digits)
		}
	}
	if known < 150 {
		t.Errorf("only %d currencies are known to both", known)
	}
}

// The reference is golang.org/x/text/currency, which has the legal tenders of
// 2017 (CLDR 32).
func TestCurrenciesAgainstLegalTenders(t *testing.T) {
	since := map[string]bool{"MRO": true, "STD": true, "VEF": true} // replaced in 2018
	var tenders int
	for tender := currency.Query(); tender.Next(); tenders++ {
		code := tender.Unit().String()
		if _, err := ParseMoney("1 "+code, ""); err != nil && !since[code] {
			t.Errorf("%s, legal tender in %s: %v", code, tender.Region(), err)
		}
	}
	if tenders < 200 {
		t.Errorf("only %d legal tenders", tenders)
	}
}
