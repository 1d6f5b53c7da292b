"""What the monkey types: lengths, days and names that are sound, and what nobody would write."""

TYPED = (
    "75 cm", "2' 6 1/2\"", "14,6 m", "12 m", "30", "3", "1", "0", "-1", "-3 m", "1e30", "NaN", "inf",
    "1/0 in", "9" * 300 + " m",
    "0 cm", "1e9 m", "12345678 km", "2027-04-09", "9 Apr", "15 May 2027", "2027-02-30", "31 Apr", "0001-01-01",
    "9999-12-31", "next week", "100 %", "85 %", "-5 %", "300 %", "5 °C", "-400 °F", "45°", "720°", "leek", "Kale",
    "40 heads", "250 seeds", "50 m", "3 / m", "2 per head", "20 cm, 30 cm", "20, 30, 40, 50 cm", "10 cm, 9 km",
    ",,,", ";",
    "", " ", "\t", "<b>x</b>", "<img src=x>", "{0}%s", "%n%n", "=1+1", "\u202eabc", "\u200b", "שלום", "日本語",
    "e\u0301",
    "x" * 3000, "&amp;", "&&", "None", "true", "[]", "../../x", "a/b\\c", "\ud800", "½ m", "7″", "3′ 4⅜″", "B1", "b1",
    "spring", "*", "\U0001f955", "1 m x 2 m", "0 m, 0 m; 3 m, 0 m; 3 m, 1 m; 0 m, 1 m", "0,0 3,0 3,3 0,3",
)  # fmt: skip
"""Texts for any field."""
SOUND = (
    "75 cm", "2' 6\"", "1.5 m", "12 m", "30", "60", "3", "2", "1", "20 cm", "25 cm", "8 in", "9 Apr", "15 May 2027",
    "1 Jun", "20 Aug", "85 %", "leek", "40 heads", "4 m", "90 cm", "100", "250 seeds", "10 cm, 40 cm, 70 cm", "",
)  # fmt: skip
"""Texts that some field takes."""
FILES = ("", "", "plan.gardenplot", "other.gardenplot", "no/such/folder/x.gardenplot", ".", "x" * 300 + ".gardenplot",
         "noending", "broken.gardenplot", "sheet.pdf", "drawing.svg", "drawing.dxf", "drawing.png", "drawing.xyz",
         "list.csv", "days.ics")  # fmt: skip
"""What is answered when a file is asked for, below a folder of the monkey's own."""
