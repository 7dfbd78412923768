package transmission

import (
	"testing"

	"twoleaf/core/assembly"
	"twoleaf/core/band"
)

func benchmark(b *testing.B, build assembly.BuildUp, o Options) {
	tables := NewTables()
	loss(b, build, o, tables)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := LossOf(build, o, tables); err != nil {
			b.Fatal(err)
		}
	}
}

// The 21 bands from 50 Hz at ranking accuracy, tables warm: what a search pays for one build-up.
var searched = Options{From: band.First50, To: band.Count}

func BenchmarkLossTwoLeaf(b *testing.B) {
	x := leafOf(b, "na_gyp_typeX_16")
	benchmark(b, two(x, filled(b, gapOf(b, "wood_38x89", 0.4064), 0.08), leafOf(b, "na_gyp_reg_13", "na_ply_soft_15")), searched)
}

func BenchmarkLossTwoLeafBass(b *testing.B) {
	x := leafOf(b, "na_gyp_typeX_16")
	benchmark(b, two(x, filled(b, gapOf(b, "wood_38x89", 0.4064), 0.08), leafOf(b, "na_gyp_reg_13", "na_ply_soft_15")), Options{}.Bass())
}

func BenchmarkLossThreeLeaf(b *testing.B) { benchmark(b, zoo(b)["three leaves"], searched) }

func BenchmarkLossFourLeaf(b *testing.B) { benchmark(b, zoo(b)["four leaves"], searched) }

// BenchmarkLossCold is a first call, everything worked out anew.
func BenchmarkLossCold(b *testing.B) {
	x := leafOf(b, "na_gyp_typeX_16")
	build := two(x, filled(b, gapOf(b, "wood_38x89", 0.4064), 0.08), leafOf(b, "na_gyp_reg_13", "na_ply_soft_15"))
	for b.Loop() {
		loss(b, build, Options{}, nil)
	}
}
