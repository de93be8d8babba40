package measure

import (
	"math/rand/v2"
	"testing"
)

func TestSame(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b Foundation
		want bool
	}{
		{"unclothed, written or not", nil, Foundation{}, true},
		{"unclothed in words", Foundation{"nothing"}, nil, true},
		{"in another order", Foundation{"shift", "stays"}, Foundation{"stays", "shift"}, true},
		{"another spelling", Foundation{"Bum-roll"}, Foundation{"bum roll"}, true},
		{"two petticoats are not one", Foundation{"shift", "petticoat", "petticoat"}, Foundation{"shift", "petticoat"}, false},
		{"nor one of two kinds", Foundation{"shift", "shift", "petticoat"}, Foundation{"shift", "petticoat", "petticoat"}, false},
		{"twice, or two", Foundation{"petticoat", "stays", "petticoat"}, Foundation{"stays", "two petticoats"}, true},
		{"two in figures", Foundation{"2 petticoats"}, Foundation{"Two petticoats"}, true},
		{"stays come as a pair", Foundation{"a pair of stays"}, Foundation{"stays"}, true},
		{"two pairs of pockets", Foundation{"two pairs of pockets"}, Foundation{"pockets", "pocket"}, true},
		{"stays are not a corset", Foundation{"shift", "stays"}, Foundation{"shift", "corset"}, false},
		{"a year is no number of layers", Foundation{"1780 stays"}, Foundation{"stays"}, false},
		{"clothed and not", Foundation{"shift"}, nil, false},
	} {
		if got := c.a.Same(c.b); got != c.want {
			t.Errorf("%s: %q same as %q is %v", c.name, c.a, c.b, got)
		}
		if got := c.a.Key() == c.b.Key(); got != c.want {
			t.Errorf("%s: keys %q and %q", c.name, c.a.Key(), c.b.Key())
		}
	}
}

func TestKeyKnowsNoOrder(t *testing.T) {
	layers := Foundation{"shift", "stays", "petticoat", "petticoat", "bum roll", "2 pockets"}
	key := layers.Key()
	rng := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		rng.Shuffle(len(layers), func(i, j int) { layers[i], layers[j] = layers[j], layers[i] })
		if got := layers.Key(); got != key {
			t.Fatalf("%q has key %q, want %q", []string(layers), got, key)
		}
		if layers[1:].Key() == key {
			t.Fatalf("%q has the key of one layer more", []string(layers[1:]))
		}
	}
}

func TestFoundationInWords(t *testing.T) {
	for _, c := range []struct {
		layers Foundation
		want   string
	}{
		{nil, "nothing"},
		{Foundation{"unclothed"}, "nothing"},
		{Foundation{"shift"}, "shift"},
		{Foundation{"shift", "stays"}, "shift and stays"},
		{Foundation{"shift", "stays", "petticoat", "petticoat"}, "shift, stays and two petticoats"},
		{Foundation{"petticoat", "stays", "Petticoats"}, "two petticoats and stays"},
		{Foundation{"3 under petticoats", "a pair of stays"}, "three under petticoats and stays"},
		{Foundation{"sash", "sash", "stays", "stays"}, "two sashes and two stays"},
		{Foundation{"twelve petticoats", "petticoat"}, "13 petticoats"},
		{Foundation{"shift", " - "}, "shift"},
	} {
		if got := c.layers.String(); got != c.want {
			t.Errorf("%q reads %q, want %q", []string(c.layers), got, c.want)
		}
	}
}
