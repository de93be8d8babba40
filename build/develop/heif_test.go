package develop

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/gen2brain/heic"
)

// The module is that of the version that go.mod names; a newer version is taken over
// by copying its lib/heif.wasm.gz and the licences beside it.
func TestModuleIsTheLibrarys(t *testing.T) {
	out, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/gen2brain/heic").Output()
	dir := strings.TrimSpace(string(out))
	if err != nil || dir == "" {
		t.Skip("the library's source is not here: ", err)
	}
	for _, name := range []string{"heif.wasm.gz", "LICENSE.libheif", "LICENSE.libde265"} {
		ours, err := os.ReadFile(filepath.Join("heif", name))
		if err != nil {
			t.Fatal(err)
		}
		theirs, err := os.ReadFile(filepath.Join(dir, "lib", name))
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(ours, theirs) {
			t.Errorf("%s is another than in %s", name, dir)
		}
	}
}

// Pixel for pixel what the library's own Go code makes of the picture, which reads it
// by the same module or by the system's libheif.
func TestDecodeLikeTheLibrary(t *testing.T) {
	for angle := range byte(4) {
		file := turned(t, phone(t), angle)
		want, err := heic.Decode(bytes.NewReader(file))
		if err != nil {
			t.Fatal(err)
		}
		got, err := decodeHEIC(t.Context(), file)
		if err != nil {
			t.Fatal(err)
		}
		if d := difference(t, got, want); d > 0.5 {
			t.Errorf("turned by %d: %.2f steps apart", angle, d)
		}
	}
}

// Nothing that the program is made of loads libraries of the system: a journal's
// folder, in which it is started, may hold one under a name that is looked for.
func TestProgramLoadsNoLibraries(t *testing.T) {
	for _, system := range []string{"linux", "windows", "darwin"} {
		list := exec.Command("go", "list", "-deps", "hussif/cmd/hussif")
		list.Env = append(os.Environ(), "GOOS="+system, "CGO_ENABLED=0")
		out, err := list.Output()
		if err != nil {
			t.Fatal(err)
		}
		packages := strings.Fields(string(out))
		if len(packages) < 100 {
			t.Fatalf("%s: only %d packages", system, len(packages))
		}
		for _, name := range packages {
			if strings.HasPrefix(name, "github.com/ebitengine/purego") || name == "github.com/gen2brain/heic" || name == "plugin" {
				t.Errorf("on %s the program has %s in it", system, name)
			}
		}
	}
}
