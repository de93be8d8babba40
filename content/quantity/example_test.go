package quantity_test

import (
	"errors"
	"fmt"

	"hussif/content/quantity"
)

func ExampleParseLength() {
	inches := quantity.Format{Unit: quantity.Inches}
	for _, text := range []string{`37½"`, "1 ft 3 in", "95,3 cm", "-1/4"} {
		length, err := quantity.ParseLength(text, quantity.Inches)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(inches.Length(length), "or", inches.Other(length))
	}
	// Output:
	// 37 1/2 in or 95.3 cm
	// 15 in or 38.1 cm
	// 37 1/2 in or 95.3 cm
	// −1/4 in or −0.6 cm
}

func ExampleError() {
	_, err := quantity.ParseLength("1 yard 3 inhces", quantity.NoUnit)
	var refused *quantity.Error
	if errors.As(err, &refused) {
		fmt.Println(refused.Reason)
		fmt.Println("from:", refused.Text[refused.Offset:])
		fmt.Println("instead:", refused.Instead[0])
	}
	// Output:
	// no unit of length is called "inhces"
	// from: inhces
	// instead: 1 yard 3 inches
}

func ExampleParseEdges() {
	_, err := quantity.ParseEdges("3/8 in", quantity.NoUnit)
	fmt.Println(err)
	// Output:
	// this could be either: say each edge, each seam, or all round; did you mean "3/8 in each edge" or "3/8 in each seam" or "3/8 in all round"?
}

func ExampleAmount_Sub() {
	bought, _ := quantity.ParseAmount("3 skeins", quantity.NoUnit)
	used, _ := quantity.ParseAmount("1 1/2 skeins", quantity.NoUnit)
	rest, err := bought.Sub(used)
	fmt.Println(quantity.Format{}.Amount(rest), err)
	// Output:
	// 1 1/2 skeins <nil>
}
