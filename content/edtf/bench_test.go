package edtf

import "testing"

func BenchmarkParse(b *testing.B) {
	for _, text := range []string{"1784", "1784-05-17", "1784~/1789", "[1667,1668,1670..1672]"} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				if _, err := Parse(text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkRead(b *testing.B) {
	for _, text := range []string{"1784", "ca. 1785", "late 18th-early 19th century"} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				if _, err := Read(text, Customs{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkReadRefused(b *testing.B) {
	for b.Loop() {
		if _, err := Read("a jacket of about 1785 in striped silk", Customs{}); err == nil {
			b.Fatal("read")
		}
	}
}
