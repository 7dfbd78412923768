package material

import "testing"

// The tables are read once; this is what the first call pays.
func BenchmarkReadTables(b *testing.B) {
	for b.Loop() {
		newTable(boardsCSV, func(r row) Board { return Board{} })
		records(pricesCSV)
	}
}

func BenchmarkByID(b *testing.B) {
	ByID("na_gyp_typeX_16")
	for b.Loop() {
		ByID("na_gyp_typeX_16")
	}
}

func BenchmarkSearch(b *testing.B) {
	for b.Loop() {
		Search("5/8 ply", "US")
	}
}
