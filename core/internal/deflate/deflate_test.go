package deflate

import (
	"bytes"
	"compress/flate"
	"io"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const known = "/k/f/c1/sf-aF-b6-yground/sc-aE-w-h-b5-ybedroom-g/b/lgx16-gx16/gj10-fgs-t-d/ncl-r16-a48-m42-e/lTob18"

// library packs and unpacks by the standard library.
func library(t testing.TB, text string) []byte {
	var out bytes.Buffer
	w, err := flate.NewWriterDict(&out, flate.BestCompression, []byte(known))
	require.NoError(t, err)
	_, _ = w.Write([]byte(text))
	require.NoError(t, w.Close())
	return out.Bytes()
}

func libraryUnpacks(packed []byte, most int) (string, bool) {
	out, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(bytes.NewReader(packed), []byte(known)), int64(most)+1))
	return string(out), err == nil && len(out) <= most
}

// texts are some of every kind: none, short, like links, the same over and over, without any order.
func texts(r *rand.Rand) []string {
	out := []string{"", "a", "aa", "aaa", known, known + known, strings.Repeat("x", 70000), strings.Repeat("ab", 5000), "\x00\xff\x80"}
	pieces := strings.Split(known, "-")
	for range 60 {
		var b strings.Builder
		for range r.IntN(400) {
			switch r.IntN(4) {
			case 0:
				b.WriteByte(byte('0' + r.IntN(10)))
			case 1:
				b.WriteByte(byte(r.IntN(256)))
			default:
				b.WriteString(pieces[r.IntN(len(pieces))])
			}
		}
		out = append(out, b.String())
	}
	noise := make([]byte, 40000)
	for i := range noise {
		noise[i] = byte(r.Uint32())
	}
	// Every symbol half as often as the one before: as deep as a code can get.
	var deep strings.Builder
	for i := range 18 {
		deep.WriteString(strings.Repeat(string(rune('A'+i)), 1))
		for range 1 << i >> 2 {
			deep.WriteByte(byte('A' + i))
			deep.WriteByte(byte(r.IntN(3)))
		}
	}
	return append(out, string(noise), deep.String())
}

func TestWhatOnePacksTheOtherUnpacks(t *testing.T) {
	for _, text := range texts(rand.New(rand.NewPCG(9, 10))) {
		packed := Pack(text, known)
		back, ok := libraryUnpacks(packed, len(text))
		require.True(t, ok, "%.80q", text)
		require.Equal(t, text, back)
		back, ok = Unpack(packed, known, len(text))
		require.True(t, ok, "%.80q", text)
		require.Equal(t, text, back)
		back, ok = Unpack(library(t, text), known, len(text))
		require.True(t, ok, "%.80q", text)
		require.Equal(t, text, back)
		if len(text) > 0 {
			_, ok = Unpack(packed, known, len(text)-1)
			assert.False(t, ok, "one byte too many")
		}
	}
}

func TestPacksAsWellAsTheLibrary(t *testing.T) {
	mine, theirs := 0, 0
	for _, text := range texts(rand.New(rand.NewPCG(11, 12))) {
		if len(text) < 10000 {
			mine += len(Pack(text, known))
			theirs += len(library(t, text))
		}
	}
	assert.LessOrEqual(t, mine, theirs)
}

// same holds what is unpacked, or that it is not, to the standard library.
func same(t *testing.T, packed []byte) {
	t.Helper()
	const most = 1 << 16
	want, fine := libraryUnpacks(packed, most)
	got, ok := Unpack(packed, known, most)
	require.Equal(t, fine, ok, "%x", packed)
	if fine {
		require.Equal(t, want, got, "%x", packed)
	}
}

func TestRefusesWhatTheLibraryRefuses(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	var samples [][]byte
	for _, text := range []string{"", "a", known + "x" + known, strings.Repeat("/lgx16-gx16/b/gw4-fsw-t", 20), "\x00\x01\x02\x03\x04\x05\x06\x07\x08\x09"} {
		var stored bytes.Buffer
		w, _ := flate.NewWriter(&stored, flate.NoCompression)
		_, _ = w.Write([]byte(text))
		_ = w.Flush() // an empty block behind it
		_, _ = w.Write([]byte(text))
		_ = w.Close()
		samples = append(samples, Pack(text, known), library(t, text), stored.Bytes())
	}
	for _, packed := range samples {
		same(t, packed)
		same(t, append(append([]byte(nil), packed...), 1, 2, 3))
		for i := range packed {
			same(t, packed[:i])
		}
		for range 400 {
			damaged := append([]byte(nil), packed...)
			damaged[r.IntN(len(damaged))] ^= 1 << r.IntN(8)
			same(t, damaged)
		}
	}
	for range 20000 {
		noise := make([]byte, r.IntN(40))
		for i := range noise {
			noise[i] = byte(r.Uint32())
		}
		if len(noise) > 0 {
			noise[0] = noise[0]&^7 | 5 // most with codes of their own
		}
		same(t, noise)
	}
}

func FuzzUnpack(f *testing.F) {
	f.Add(Pack(known, known))
	f.Add([]byte{5, 0, 0})
	f.Fuzz(func(t *testing.T, packed []byte) { same(t, packed) })
}

func FuzzPack(f *testing.F) {
	f.Add("a")
	f.Fuzz(func(t *testing.T, text string) {
		back, ok := libraryUnpacks(Pack(text, known), len(text))
		require.True(t, ok)
		require.Equal(t, text, back)
	})
}
