package quantity_test

import (
	"testing"

	. "hussif/content/quantity"
)

const half, quarter, eighth = Inch / 2, Inch / 4, Inch / 8

func TestParseLength(t *testing.T) {
	long := 37*Inch + half
	accepts(t, spelt(ParseLength), []trial[Length]{
		{"37 1/2 in", long}, {`37½"`, long}, {"37 ½ in", long}, {"37-1/2 in", long}, {"37-½ in", long}, {"37.5 in", long}, {"37,5 in", long},
		{"37\u20101/2 in", long}, {"37 1\u20442 in", long}, {"37 1\u22152 in", long}, {"75/2 in", long},
		{"37 1/2 inches", long}, {"37 1/2 INCHES", long}, {"37 1/2 in.", long}, {"37 1/2”", long}, {"37 1/2″", long}, {"37 1/2''", long}, {"37 1/2’’", long},
		{"5/8in", 5 * eighth}, {"⅝ inch", 5 * eighth}, {".625 in", 5 * eighth}, {"0,625 in", 5 * eighth},
		{"⅛ in", eighth}, {"⅜ in", 3 * eighth}, {"⅞ in", 7 * eighth}, {"¼ in", quarter}, {"¾ in", 3 * quarter},
		{"⅓ yd", Foot}, {"⅔ yd", 2 * Foot}, {"1/3 yd", Foot}, {"⅙ ft", 2 * Inch}, {"⅚ ft", 10 * Inch},
		{"⅕ in", Inch / 5}, {"⅖ in", 2 * Inch / 5}, {"⅗ in", 3 * Inch / 5}, {"⅘ in", 4 * Inch / 5}, {"⅒ in", Inch / 10}, {"⅑ yd", 4 * Inch},
		{"95 cm", 95 * Centimetre}, {"952mm", 952 * Millimetre}, {"95,3 cm", 953 * Millimetre}, {"95.3 cm", 953 * Millimetre},
		{"95.300 cm", 953 * Millimetre}, {"1 metre", Metre}, {"2 meters", 2 * Metre}, {"3 centimetres", 3 * Centimetre}, {"0.000001 mm", Nanometre},
		{"2 1/4 yd", 81 * Inch}, {"2¼ yards", 81 * Inch}, {"1 yard", Yard}, {"2 yds.", 2 * Yard},
		{"1 ft 3 in", 15 * Inch}, {`3' 2"`, 38 * Inch}, {"3’2”", 38 * Inch}, {"3′ 2″", 38 * Inch}, {"1 yd 1 ft 1/2 in", 48*Inch + half}, {"2 feet", 2 * Foot}, {"1 foot", Foot},
		{"1 m 20 cm", 120 * Centimetre}, {"1 m 20 cm 5 mm", 1205 * Millimetre},
		{"-1/4 in", -quarter}, {"−1/4 in", -quarter}, {"- 1/4 in", -quarter}, {"+1/2 in", half}, {"-1 ft 3 in", -15 * Inch}, {"-1-1/2 in", -Inch - half},
		{"0 in", 0}, {"-0 in", 0}, {"0 1/2 in", half},
		{"37\u00a01/2\u202fin", long}, {"\u300037\u20091/2\u3000in\u3000", long}, {"\t95\u2007cm\n", 95 * Centimetre},
		{"1 nail", 2*Inch + quarter}, {"4 nails", 9 * Inch}, {"1 English ell", 45 * Inch}, {"2 flemish  ells", 54 * Inch},
		{"1000000 m", 1_000_000 * Metre},
	})
}

func TestParseLengthBareNumber(t *testing.T) {
	accepts(t, inInches(ParseLength), []trial[Length]{{"37 1/2", 37*Inch + half}, {"-¼", -quarter}, {"95 cm", 95 * Centimetre}})
	accepts(t, with(ParseLength, Centimetres), []trial[Length]{{"95,3", 953 * Millimetre}, {`1"`, Inch}})
}

func TestParseLengthRefuses(t *testing.T) {
	refuses(t, spelt(ParseLength), []refusal{
		{"", "", "number is missing", nil},
		{"  ", "", "number is missing", nil},
		{"wide", "wide", "number is missing", nil},
		{"37", "", "unit is missing", []string{"37 in", "37 cm"}},
		{"37 inhes", "inhes", `no unit of length is called "inhes"`, []string{"37 inches"}},
		{"3 yrad", "yrad", "no unit", []string{"3 yard"}},
		{"3 q", "q", "no unit", []string{"3 in", "3 cm"}},
		{"1 ell", "ell", "no unit", []string{"1 English ell", "1 Flemish ell"}},
		{"1/3 in", "1/3 in", "1/3 in cannot be held exactly", []string{"5/16 in", "8 mm"}},
		{"1 ft 1/7 in", "1/7 in", "exactly", []string{"1 ft 1/8 in", "1 ft 4 mm"}},
		{"1/3 cm", "1/3 cm", "exactly", []string{"3 mm", "1/8 in"}},
		{"0.0000001 mm", "0.0000001 mm", "exactly", nil},
		{"1/0 in", "0 in", "0 below the line", nil},
		{"37 1/0 in", "0 in", "0 below the line", nil},
		{"1/ in", " in", "number below the line", nil},
		{"37 5/4 in", " 5/4 in", "less than 1", []string{"38 1/4 in"}},
		{"1,200 mm", ",200 mm", "a thousand or a decimal", []string{"1200 mm", "1.200 mm"}},
		{"1,250.5 mm", ".5 mm", "one decimal mark", []string{"1250.5 mm"}},
		{"1.250,5 mm", ",5 mm", "one decimal mark", []string{"1250.5 mm"}},
		{"1.250.000 mm", ".000 mm", "one decimal mark", []string{"1250000 mm"}},
		{"99999999999999999999 in", "99999999999999999999 in", "more digits", nil},
		{"1.0000000000000000000001 in", "1.0000000000000000000001 in", "more digits", nil},
		{"9000000000000000000 1/9 in", "9000000000000000000 1/9 in", "more digits", nil},
		{"1/99999999999999999999 in", "1/99999999999999999999 in", "more digits", nil},
		{"1000001 m", "1000001 m", "1000 km", nil},
		{"9000000000000000000 in", "9000000000000000000 in", "1000 km", nil},
		{"1000000 m 1 in", "1000000 m 1 in", "1000 km", nil},
		{"1 ft 3", "", "unit is missing", []string{"1 ft 3 in"}},
		{"1 ft 3 inhces", "inhces", "no unit", []string{"1 ft 3 inches"}},
		{"1 m 20", "", "unit is missing", []string{"1 m 20 cm"}},
		{"3 in 1 ft", "1 ft", "large to small", nil},
		{"1 in 2 in", "2 in", "large to small", nil},
		{"1 to 2 in", "to 2 in", "no unit", nil},
		{"1-2 in", "-2 in", "cannot make sense", nil},
		{"0-1/2 in", "-1/2 in", "cannot make sense", nil},
		{"--1 in", "-1 in", "number is missing", nil},
		{"NaN in", "NaN in", "number is missing", nil},
		{"1e3 mm", "e3 mm", "no unit", nil},
		{"1 in\xff", "\xff", "cannot make sense", nil},
		{"1 in \x00", "\x00", "cannot make sense", nil},
	})
	refuses(t, inInches(ParseLength), []refusal{
		{"37 banana", "banana", "no unit", []string{"37 in", "37 cm"}},
		{"1/7", "1/7", "exactly", []string{"1/8 in", "4 mm"}},
	})
}

// The inch is 25.4 mm and the yard 914.4 mm exactly: international yard and
// pound agreement, 1959; NBS Circular 572, addendum (1960); NIST SP 811,
// appendix B. The nail of 57.15, the Flemish ell of 685.8 and the English ell of
// 1143 mm: sizes.com, and the definitions of GNU units.
func TestUnitsArePublishedLengths(t *testing.T) {
	for unit, tenths := range map[Unit]Length{
		Inches: 254, Feet: 3048, Yards: 9144, Millimetres: 10, Centimetres: 100, Metres: 10_000, FlemishElls: 6858, EnglishElls: 11430,
	} {
		if got, want := unit.Length(), tenths*Millimetre/10; got != want {
			t.Errorf("1 %s = %d nm, want %d", unit, got, want)
		}
	}
	if got, want := Nails.Length(), 5715*Millimetre/100; got != want {
		t.Errorf("1 nail = %d nm, want %d", got, want)
	}
}

func TestParseUnit(t *testing.T) {
	for text, want := range map[string]Unit{
		"in": Inches, "inch": Inches, "Inches": Inches, `"`: Inches, "''": Inches, " in. ": Inches, "cm": Centimetres, "MM": Millimetres,
		"'": Feet, "feet": Feet, "yd": Yards, "m": Metres, "nail": Nails, "English ells": EnglishElls,
		"": NoUnit, "ell": NoUnit, "English": NoUnit, "inn": NoUnit, "in in": NoUnit, "1 in": NoUnit, "parsec": NoUnit,
	} {
		if got, ok := ParseUnit(text); got != want || ok != (want != NoUnit) {
			t.Errorf("ParseUnit(%q) = %v, %v", text, got, ok)
		}
	}
	for unit := Inches; unit <= EnglishElls; unit++ {
		if got, ok := ParseUnit(unit.String()); !ok || got != unit {
			t.Errorf("ParseUnit(%q) = %v, %v", unit.String(), got, ok)
		}
	}
	for _, none := range []Unit{NoUnit, -1, EnglishElls + 1} {
		if none.String() != "" || none.Length() != 0 {
			t.Errorf("Unit(%d) is %q of %d nm", int(none), none.String(), none.Length())
		}
	}
}

func BenchmarkParseLength(b *testing.B) {
	for _, text := range []string{"37 1/2 in", "95,3 cm", "1 ft 3 in", "37½ English ells"} {
		b.Run(text, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := ParseLength(text, NoUnit); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
