package quantity_test

import (
	"math"
	"testing"

	. "hussif/content/quantity"
)

func TestParseMoney(t *testing.T) {
	accepts(t, with(ParseMoney, ""), []trial[Money]{
		{"80 EUR", Money{8000, "EUR"}}, {"EUR 80", Money{8000, "EUR"}}, {"80EUR", Money{8000, "EUR"}}, {"80 eur", Money{8000, "EUR"}},
		{"€12.50", Money{1250, "EUR"}}, {"12,50 EUR", Money{1250, "EUR"}}, {"12.5 €", Money{1250, "EUR"}}, {"80 euros", Money{8000, "EUR"}}, {".50 EUR", Money{50, "EUR"}},
		{"£3", Money{300, "GBP"}}, {"US$ 5", Money{500, "USD"}}, {"Fr. 5", Money{500, "CHF"}}, {"100 Kč", Money{10000, "CZK"}}, {"3,20 zł", Money{320, "PLN"}},
		{"1200 JPY", Money{1200, "JPY"}}, {"1.234 KWD", Money{1234, "KWD"}}, {"0 EUR", Money{0, "EUR"}},
		{"-5 EUR", Money{-500, "EUR"}}, {"−€5", Money{-500, "EUR"}}, {"EUR -5", Money{-500, "EUR"}}, {"\u00a012.50\u202fEUR ", Money{1250, "EUR"}},
	})
	accepts(t, with(ParseMoney, "CAD"), []trial[Money]{{"$5", Money{500, "CAD"}}, {"5", Money{500, "CAD"}}, {"5 USD", Money{500, "USD"}}, {"5 dollars", Money{500, "CAD"}}})
	accepts(t, with(ParseMoney, "SEK"), []trial[Money]{{"5 kr", Money{500, "SEK"}}, {"£5", Money{500, "GBP"}}})
	accepts(t, with(ParseMoney, "EGP"), []trial[Money]{{"£5", Money{500, "EGP"}}})
	refuses(t, with(ParseMoney, ""), []refusal{
		{"", "", "number is missing", nil},
		{"EUR", "", "number is missing", nil},
		{"80", "", "currency is missing", []string{"80 EUR", "80 GBP", "80 USD"}},
		{"$5", "$5", "cannot tell which", []string{"5 USD", "5 CAD", "5 AUD"}},
		{"-$5", "$5", "cannot tell which", []string{"-5 USD", "-5 CAD", "-5 AUD"}},
		{"5 ¥", "¥", "cannot tell which", []string{"5 JPY", "5 CNY"}},
		{"80 ERU", "ERU", "cannot tell which", []string{"80 ERN", "80 EUR", "80 MRU"}},
		{"80 florins", "florins", "cannot tell which", nil},
		{"€80 EUR", "EUR", "cannot make sense", nil},
		{"12.505 EUR", ".505 EUR", "2 digits after the point", []string{"12.50 EUR", "12505 EUR"}},
		{"12.5 JPY", ".5 JPY", "0 digits after the point", []string{"12 JPY", "125 JPY"}},
		{"1,200 EUR", ",200 EUR", "a thousand or a decimal", []string{"1200 EUR"}},
		{"1 200 EUR", "200 EUR", "cannot make sense", nil},
		{"1/2 EUR", "1/2 EUR", "as a decimal", nil},
		{"NaN EUR", "EUR", "number is missing", nil},
		{"10000000000000000 EUR", "10000000000000000 EUR", "more money", nil},
	})
	refuses(t, with(ParseMoney, "EUR"), []refusal{{"$5", "$5", "cannot tell which", []string{"5 USD", "5 CAD", "5 AUD"}}, {"5 florins", "florins", "cannot tell which", []string{"5 EUR"}}})
	refuses(t, with(ParseMoney, "QQQ"), []refusal{{"5", "", "currency is missing", []string{"5 EUR", "5 GBP", "5 USD"}}})
}

func TestMoney(t *testing.T) {
	for want, m := range map[string]Money{
		"12.50 EUR": {1250, "EUR"}, "0.05 EUR": {5, "EUR"}, "1200 JPY": {1200, "JPY"}, "1.234 KWD": {1234, "KWD"}, "−12.50 EUR": {-1250, "EUR"}, "0": {},
		"−92233720368547758.08 EUR": {math.MinInt64, "EUR"},
	} {
		if got := m.String(); got != want {
			t.Errorf("%#v is shown as %q, want %q", m, got, want)
		}
	}
	if sum, err := (Money{1250, "EUR"}).Add(Money{-250, "EUR"}); err != nil || sum != (Money{1000, "EUR"}) {
		t.Errorf("12.50 EUR less 2.50 EUR = %v, %v", sum, err)
	}
	if sum, err := (Money{}).Add(Money{5, "EUR"}); err != nil || sum != (Money{5, "EUR"}) {
		t.Errorf("nothing and 0.05 EUR = %v, %v", sum, err)
	}
	if sum, err := (Money{5, "EUR"}).Add(Money{}); err != nil || sum != (Money{5, "EUR"}) {
		t.Errorf("0.05 EUR and nothing = %v, %v", sum, err)
	}
	if sum, err := (Money{5, "EUR"}).Add(Money{5, "GBP"}); err == nil {
		t.Errorf("unlike currencies add to %v", sum)
	}
	if sum, err := (Money{math.MaxInt64, "EUR"}).Add(Money{1, "EUR"}); err == nil {
		t.Errorf("too much money adds to %v", sum)
	}
}
