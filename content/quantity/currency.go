package quantity

import (
	"strings"

	"hussif/content/near"
)

// The codes of ISO 4217 by the number of digits after the point (its "minor
// unit"), with some that were withdrawn lately and stand in older notes. Funds,
// metals and testing codes are left out.
const (
	noDigits = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF"

	twoDigits = "AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD " +
		"CAD CDF CHF CNY COP CRC CUC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD " +
		"HKD HNL HRK HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK " +
		"MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR " +
		"SBD SCR SDG SEK SGD SHP SLE SLL SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU " +
		"UZS VED VES WST XCD XCG YER ZAR ZMW ZWG ZWL"

	threeDigits = "BHD IQD JOD KWD LYD OMR TND"
)

// digitsOf returns the number of digits after the point, and whether the code,
// in capitals, is one of ISO 4217.
func digitsOf(code string) (digits int, ok bool) {
	if len(code) != 3 || strings.Contains(code, " ") {
		return 0, false
	}
	switch {
	case strings.Contains(twoDigits, code):
		return 2, true
	case strings.Contains(noDigits, code):
		return 0, true
	case strings.Contains(threeDigits, code):
		return 3, true
	}
	return 0, false
}

// marks lists signs and words and the currencies that write themselves so. A
// mark that is plain means the first wherever the journal does not use another.
var marks = [...]struct {
	mark, codes string
	plain       bool
}{
	{"€", "EUR", true}, {"euro", "EUR", true}, {"euros", "EUR", true},
	{"£", pounds, true}, {"pound", pounds, true}, {"pounds", pounds, true},
	{"$", dollars, false}, {"dollar", dollars, false}, {"dollars", dollars, false},
	{"US$", "USD", true}, {"A$", "AUD", true}, {"C$", "CAD", true}, {"NZ$", "NZD", true},
	{"kr", "SEK NOK DKK ISK", false}, {"¥", "JPY CNY", false}, {"Fr", "CHF", true},
	{"zł", "PLN", true}, {"Kč", "CZK", true}, {"Ft", "HUF", true}, {"₹", "INR", true}, {"₺", "TRY", true}, {"₴", "UAH", true},
}

const (
	pounds  = "GBP EGP FKP GIP LBP SDG SHP SSP SYP"
	dollars = "USD CAD AUD NZD BBD BMD BND BSD BZD FJD GYD HKD JMD KYD LRD NAD SBD SGD SRD TTD TWD XCD"
)

// currency returns the code that a mark or code stands for in a journal whose
// own currency is bare. Where it stands for none, or for several, it returns ""
// and the likely ones.
func currency(mark, bare string) (code string, likely []string) {
	if _, ok := digitsOf(strings.ToUpper(mark)); ok {
		return strings.ToUpper(mark), nil
	}
	for _, m := range marks {
		if !strings.EqualFold(m.mark, mark) {
			continue
		}
		codes := strings.Fields(m.codes)
		for _, code := range codes {
			if code == bare {
				return code, nil
			}
		}
		if m.plain {
			return codes[0], nil
		}
		return "", codes[:min(len(codes), 3)]
	}
	if likely = near.Of(mark, strings.Fields(twoDigits+" "+noDigits+" "+threeDigits)); bare != "" {
		likely = append([]string{bare}, likely...)
	}
	return "", likely
}
