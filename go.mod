module twoleaf

go 1.26
