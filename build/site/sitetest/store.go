package sitetest

import (
	"fmt"
	"os"
	"sync"
	"testing"

	"hussif/build/keep"
)

var storeDir string

var openStore = sync.OnceValues(func() (*keep.Store, error) { return keep.Open(storeDir) })

// Main runs the tests of a package that use [Store].
func Main(m *testing.M) {
	dir, err := os.MkdirTemp("", "hussif-site-test-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	storeDir = dir
	status := m.Run()
	os.RemoveAll(dir)
	os.Exit(status)
}

// Store returns the store that all tests of a package share, so that each picture is
// made once.
func Store(t testing.TB) *keep.Store {
	t.Helper()
	s, err := openStore()
	if err != nil {
		t.Fatal(err)
	}
	return s
}
